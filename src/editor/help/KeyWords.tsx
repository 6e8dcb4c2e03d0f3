import { Fragment } from 'react';
import { shownKeys } from '../app/keys.ts';

/** The keys of a command, each drawn as a key: `Ctrl` `Z` or `F1`. */
export function KeyWords({ keys }: { readonly keys: readonly string[] }) {
  return (
    <span className="help-keys">
      {keys.map((text, at) => (
        <Fragment key={text}>
          {at > 0 && <span> or </span>}
          {shownKeys(text).map((key) => <kbd key={key} className="key">{key}</kbd>)}
        </Fragment>
      ))}
    </span>
  );
}
