import { type KeyboardEvent, useState } from 'react';
import { edit, useEditor } from '../state/editor.ts';

const LONGEST = 200;

/** The document's title, to be changed where it stands. Enter or leaving takes it, Escape gives the old one back. */
export function TitleField() {
  const title = useEditor(({ history }) => history.document.title);
  const [typed, setTyped] = useState<string>();
  const take = () => {
    const wanted = typed?.trim();
    setTyped(undefined);
    if (wanted !== undefined && wanted !== '' && wanted !== title) edit(`call the recipe “${wanted}”`, (draft) => { draft.title = wanted; });
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') event.currentTarget.blur();
    else if (event.key === 'Escape') setTyped(undefined);
  };
  const shown = typed ?? title;
  return (
    <h1 className="files-title">
      <span className="files-title-size" aria-hidden="true">{shown === '' ? ' ' : shown}</span>
      <input aria-label="Title of the recipe" value={shown} maxLength={LONGEST} spellCheck={false} onChange={({ target }) => { setTyped(target.value); }} onBlur={take} onKeyDown={onKeyDown} />
    </h1>
  );
}
