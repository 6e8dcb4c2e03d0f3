import { useId, useState } from 'react';
import type { ParamValue, ParsedParam, Problem } from '../../runtime/index.ts';
import { sentence } from './field.ts';

interface AsTextProps {
  /** What the text is, and how it is written. */
  readonly says: string;
  /** What the list is of: "points". */
  readonly things: string;
  /** The text to begin with. */
  readonly text: string;
  readonly read: (text: string) => ParsedParam;
  readonly onTake: (value: ParamValue) => void;
  readonly onClose: () => void;
}

/** A whole list as a text that can be pasted into. */
export function ListAsText({ says, things, text: begun, read, onTake, onClose }: AsTextProps) {
  const id = useId();
  const [text, setText] = useState(begun);
  const [problem, setProblem] = useState<Problem>();
  const take = () => {
    const found = read(text);
    if (!found.ok) return setProblem(found.problem);
    onTake(found.value);
    onClose();
  };
  return (
    <div className="form-points">
      <label htmlFor={id} className="field-says">{says}</label>
      <textarea id={id} className="field form-text" rows={6} value={text} spellCheck={false} aria-invalid={problem !== undefined} aria-describedby={`${id}e`} onChange={({ target }) => setText(target.value)} />
      <div id={`${id}e`} className="field-refused">{problem && <p role="alert">{sentence(problem)}</p>}</div>
      <div className="form-ways">
        <button type="button" className="button" onClick={take}>{`Take these ${things}`}</button>
        <button type="button" className="button-quiet" onClick={onClose}>Leave them as they were</button>
      </div>
    </div>
  );
}
