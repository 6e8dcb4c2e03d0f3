import { useId, useRef, useState } from 'react';
import { type NumberParam, type Span, checkValue } from '../../runtime/index.ts';
import { newGesture } from '../form/gesture.ts';
import { useNumberEntry } from '../form/NumberEntry.tsx';
import { amount, shownUnit } from '../form/units.ts';
import { mayBeNamed } from '../model/inputs.ts';
import { present } from '../state/editor.ts';

interface WordFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly long?: boolean;
  readonly onWord: (text: string, gesture: string) => void;
}

/** Text taken as it is typed; what is typed in one visit is one step of undo. An emptied label is kept until something stands in it again. */
export function WordField({ id, label, value, long = false, onWord }: WordFieldProps) {
  const visit = useRef(newGesture(id));
  const [typed, setTyped] = useState<string>();
  const shared = {
    id, className: 'field form-text', value: typed ?? value,
    onFocus: () => { visit.current = newGesture(id); },
    onBlur: () => { setTyped(undefined); },
    onChange: ({ target }: { readonly target: { readonly value: string } }) => { setTyped(target.value); onWord(target.value, visit.current); },
  };
  return (
    <>
      <label htmlFor={id}>{label}</label>
      {long ? <textarea rows={2} {...shared} /> : <input type="text" {...shared} />}
    </>
  );
}

/** The name that the command line and tables of rows call it by, taken when it is left. */
export function NameField({ id, value, onName }: { readonly id: string; readonly value: string; readonly onName: (to: string) => void }) {
  const [typed, setTyped] = useState<string>();
  const text = typed ?? value;
  const refused = typed !== undefined && !mayBeNamed(present(), value, typed);
  const leave = () => {
    if (typed !== undefined && !refused && typed !== value) onName(typed);
    setTyped(undefined);
  };
  return (
    <>
      <label htmlFor={id}>Name</label>
      <span>
        <input id={id} type="text" className="field form-text" value={text} spellCheck={false} aria-invalid={refused} aria-describedby={`${id}d`} onChange={({ target }) => { setTyped(target.value); }} onBlur={leave} />
        <span id={`${id}d`} className={refused ? 'field-refused' : 'field-says'}>
          {refused ? 'A name begins with a small letter, goes on with letters and digits, and is no other input’s.' : 'For the command line and tables of rows.'}
        </span>
      </span>
    </>
  );
}

interface SpanFieldProps {
  readonly label: string;
  readonly says: string;
  readonly param: NumberParam;
  readonly span: Span | undefined;
  readonly onSpan: (span: Span | undefined) => void;
}

/** Two numbers, least and greatest; those of the parameter itself while none are given. */
export function SpanField({ label, says, param, span, onSpan }: SpanFieldProps) {
  const [least, greatest] = span ?? [param.min, param.max];
  return (
    <>
      <span>{label}</span>
      <span className="recipe-span" role="group" aria-label={label}>
        <End label={`${label}, least`} value={least} param={{ ...param, max: greatest }} onCommit={(value) => { onSpan([value, greatest]); }} />
        <span>to</span>
        <End label={`${label}, greatest`} value={greatest} param={{ ...param, min: least }} onCommit={(value) => { onSpan([least, value]); }} />
        <span className="form-unit">{shownUnit(param.unit)}</span>
        {span !== undefined && <button type="button" className="button-quiet" onClick={() => { onSpan(undefined); }}>Take away</button>}
        <span className="field-says">{span === undefined ? `${says} Not stated: the step takes ${amount(param.min, param.unit)} to ${amount(param.max, param.unit)}.` : says}</span>
      </span>
    </>
  );
}

function End({ label, value, param, onCommit }: { readonly label: string; readonly value: number; readonly param: NumberParam; readonly onCommit: (value: number) => void }) {
  const id = useId();
  const entry = useNumberEntry({ value, unit: param.unit, check: (next) => checkValue({ ...param, unit: param.unit === 'count' ? 'ratio' : param.unit }, next), onCommit });
  return (
    <span>
      <input id={id} type="text" className="field number form-entry" aria-label={label} autoComplete="off" spellCheck={false} aria-describedby={`${id}e`} {...entry.field} />
      <span id={`${id}e`} className="form-refusal field-refused">{entry.refusal}</span>
    </span>
  );
}
