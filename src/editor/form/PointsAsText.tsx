import { useId, useState } from 'react';
import type { PointsParam, Problem } from '../../runtime/index.ts';
import { sentence } from './field.ts';
import { type Points, pointsText, readPoints } from './points-text.ts';

interface AsTextProps {
  readonly param: PointsParam;
  readonly value: Points;
  readonly label: string;
  readonly onEdit: (points: Points) => void;
  readonly onClose: () => void;
}

/** The whole list as a text that can be pasted into. */
export function PointsAsText({ param, value, label, onEdit, onClose }: AsTextProps) {
  const id = useId();
  const [text, setText] = useState(() => pointsText(value));
  const [problem, setProblem] = useState<Problem>();
  const take = () => {
    const read = readPoints(param, text);
    if (!read.ok) return setProblem(read.problem);
    onEdit(read.value as Points);
    onClose();
  };
  return (
    <div className="form-points">
      <label htmlFor={id} className="field-says">{`${label}: a line for each point, x,y in mm`}</label>
      <textarea id={id} className="field form-text" rows={6} value={text} spellCheck={false} aria-invalid={problem !== undefined} aria-describedby={`${id}e`} onChange={({ target }) => setText(target.value)} />
      <div id={`${id}e`} className="field-refused">{problem && <p role="alert">{sentence(problem)}</p>}</div>
      <div className="form-ways">
        <button type="button" className="button" onClick={take}>Take these points</button>
        <button type="button" className="button-quiet" onClick={onClose}>Leave them as they were</button>
      </div>
    </div>
  );
}
