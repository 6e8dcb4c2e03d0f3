import { type ClipboardEvent, useState } from 'react';
import type { PointsParam } from '../../runtime/index.ts';
import type { FieldProps } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';
import { PointsAsText } from './PointsAsText.tsx';
import { PointsTable } from './PointsTable.tsx';
import { type Points, pastedPoints, reordered } from './points-text.ts';

type PointsProps = FieldProps<PointsParam> & { readonly value: Points };

/** A list of places: a table to type in, or a text to paste into. */
export function PointsField(props: PointsProps) {
  const { param, value, label, onEdit } = props;
  const [asText, setAsText] = useState(false);
  const [chosen, setChosen] = useState(0);
  const at = Math.min(chosen, value.length - 1);
  const put = (points: Points, next: number) => {
    setChosen(Math.max(0, next));
    onEdit(points);
  };
  const onPaste = (event: ClipboardEvent) => {
    const points = pastedPoints(param, event.clipboardData.getData('text'));
    if (points === undefined) return;
    event.preventDefault();
    put(value.toSpliced(at + 1, 0, ...points), at + points.length);
  };
  return (
    <FieldFrame {...props} single={false} rule="X to the right and y up, in mm." beside={() => <span className="form-says">{counted(value.length)}</span>}>
      {() => asText ? <PointsAsText param={param} value={value} label={label} onEdit={onEdit} onClose={() => setAsText(false)} /> : (
        <div className="form-points" onPaste={onPaste}>
          {value.length > 0 && <PointsTable points={value} at={at} label={label} onChoose={setChosen} onSet={(points) => onEdit(points)} />}
          <Tools points={value} at={at} onPut={put} onText={() => setAsText(true)} />
        </div>
      )}
    </FieldFrame>
  );
}

const counted = (points: number): string => (points === 1 ? '1 point' : `${points === 0 ? 'no' : points} points`);

interface ToolsProps {
  readonly points: Points;
  readonly at: number;
  /** Sets the list and chooses one of its points. */
  readonly onPut: (points: Points, next: number) => void;
  readonly onText: () => void;
}

/** What is done to the chosen point or the list. */
function Tools({ points, at, onPut, onText }: ToolsProps) {
  const number = at + 1;
  const added = points[at] ?? { x: 0, y: 0 };
  // Said to be disabled rather than made so, that the focus is not lost when a point arrives at an end.
  const move = (by: number) => {
    if (points[at + by] !== undefined) onPut(reordered(points, at, at + by), at + by);
  };
  return (
    <div className="form-ways">
      <button type="button" className="button" onClick={() => onPut(points.toSpliced(number, 0, added), number)}>Add a point</button>
      {points.length > 0 && <button type="button" className="button-quiet" onClick={() => onPut(points.toSpliced(at, 1), Math.min(at, points.length - 2))}>{`Remove ${number}`}</button>}
      {points.length > 1 && <button type="button" className="button-quiet" aria-disabled={at === 0} onClick={() => move(-1)}>{`Move ${number} up`}</button>}
      {points.length > 1 && <button type="button" className="button-quiet" aria-disabled={at === points.length - 1} onClick={() => move(1)}>{`Move ${number} down`}</button>}
      <button type="button" className="button-quiet" onClick={onText}>As text</button>
    </div>
  );
}
