import type { AnyParamValues } from '../../runtime/index.ts';
import { shortText } from './short-text.ts';

/** The values of a step whose type this version does not know: kept and shown, not changed. */
export function Untyped({ params }: { readonly params: AnyParamValues }) {
  const values = Object.entries(params);
  return (
    <>
      <p className="field-says">This version does not know this type of step. Its values are kept as they are.</p>
      <dl className="form-values">
        {values.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{shortText(value)}</dd></div>)}
      </dl>
    </>
  );
}

interface UnknownProps {
  readonly name: string;
  readonly value: unknown;
  readonly onRemove: () => void;
}

/** A value under a name that the step's type does not have. */
export function Unknown({ name, value, onRemove }: UnknownProps) {
  return (
    <div className="form-field">
      <div className="form-head"><span className="form-label">{name}</span></div>
      <p className="form-misfit">{shortText(value)}</p>
      <p className="is-caution"><strong>! Caution. </strong>Not known to this version: the step does without it.</p>
      <div className="form-ways"><button type="button" className="button-quiet" aria-label={`Remove it: ${name}`} onClick={onRemove}>Remove it</button></div>
    </div>
  );
}
