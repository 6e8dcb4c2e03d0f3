import { type ChangeEvent, type KeyboardEvent, useRef, useState } from 'react';
import { type TextParam, checkValue } from '../../runtime/index.ts';
import { type FieldProps, sentence } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';
import { newGesture } from './gesture.ts';

/** Longer texts get several lines. */
const ONE_LINE = 200;
/** The count shows once so much of what a text may have is used. */
const NEAR_LIMIT = 0.8;

/** Text, taken as it is typed: all that is typed in one visit is one step to undo. */
export function TextField(props: FieldProps<TextParam> & { readonly value: string }) {
  const { param, value, label, onEdit } = props;
  const visit = useRef(newGesture(label));
  const [kept, setDraft] = useState<{ readonly text: string; readonly over: string }>();
  const draft = kept?.over === value ? kept.text : undefined;
  if (kept !== undefined && draft === undefined) setDraft(undefined);
  const text = draft ?? value;
  const fault = draft === undefined ? undefined : checkValue(param, draft);
  const onChange = (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => {
    const next = event.target.value;
    const fits = checkValue(param, next) === undefined;
    setDraft(fits ? undefined : { text: next, over: value });
    if (fits) onEdit(next, visit.current);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || draft === undefined) return;
    event.stopPropagation();
    setDraft(undefined);
  };
  const enter = () => {
    visit.current = newGesture(label);
  };
  const shared = { value: text, 'aria-invalid': fault !== undefined, onChange, onFocus: enter, onKeyDown };
  return (
    <FieldFrame {...props} rule={`At most ${param.maxLength} characters.`} refusal={fault && <p role="alert">{`${sentence(fault)} The longer text is not taken.`}</p>}>
      {({ control, describedBy }) => (
        <>
          {param.maxLength > ONE_LINE
            ? <textarea id={control} className="field form-text" rows={4} aria-describedby={describedBy} {...shared} />
            : <input id={control} type="text" className="field form-text" autoComplete="off" aria-describedby={describedBy} {...shared} />}
          {text.length >= NEAR_LIMIT * param.maxLength && <p className="form-count field-says">{`${text.length} of ${param.maxLength} characters`}</p>}
        </>
      )}
    </FieldFrame>
  );
}
