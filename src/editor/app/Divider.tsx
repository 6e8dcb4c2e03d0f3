import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import { type Range, within } from './layout.ts';

interface DividerProps {
  /** What it divides, for those who do not see it. */
  readonly label: string;
  /** The element it makes larger, by id. */
  readonly controls: string;
  /** `rows`: one place above the other, the divider moves up and down. */
  readonly divides: 'rows' | 'columns';
  readonly value: number;
  readonly range: Range;
  /** Where a double click puts it. */
  readonly even: number;
  /** How far a key moves it. */
  readonly step: number;
  /** How the value is said: "55 percent". */
  readonly says: (value: number) => string;
  /** The value that puts the divider under a pointer at `x`, `y` of the window, in CSS pixels. */
  readonly valueAt: (x: number, y: number, divider: Element) => number;
  readonly onChange: (value: number) => void;
  /** -1 where moving right or down makes the value smaller. */
  readonly sense?: 1 | -1;
}

/** A line between two places that moves by pointer and by keys. */
export function Divider(props: DividerProps) {
  const { label, controls, divides, value, range, even, says, onChange } = props;
  const drag = useDrag(props);
  return (
    // A separator that can be focused is a control: its value is how the window is divided.
    <div
      role="separator" tabIndex={0} className={`app-divider app-divider-${divides}`}
      aria-label={label} aria-controls={controls} aria-orientation={divides === 'rows' ? 'horizontal' : 'vertical'}
      aria-valuenow={Math.round(value)} aria-valuemin={range.min} aria-valuemax={range.max} aria-valuetext={says(value)}
      title={`${label}: drag, or use the arrow keys; double click for ${says(even)}.`}
      data-dragged={drag.on}
      onKeyDown={(event) => onKey(event, props)} onDoubleClick={() => onChange(even)}
      onPointerDown={drag.down} onPointerMove={drag.move} onPointerUp={drag.up} onPointerCancel={drag.up}
    />
  );
}

function useDrag({ range, valueAt, onChange }: DividerProps) {
  const [on, setOn] = useState(false);
  const up = () => setOn(false);
  const down = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setOn(true);
  };
  const move = (event: PointerEvent<HTMLDivElement>) => {
    if (on) onChange(within(valueAt(event.clientX, event.clientY, event.currentTarget), range));
  };
  return { on, down, move, up };
}

/** The value after a key, or undefined when the key is none of the divider's. */
export function valueAfterKey(key: string, { divides, value, range, step, sense = 1 }: Pick<DividerProps, 'divides' | 'value' | 'range' | 'step' | 'sense'>): number | undefined {
  const [less, more] = divides === 'rows' ? ['ArrowUp', 'ArrowDown'] : ['ArrowLeft', 'ArrowRight'];
  const moves: Readonly<Record<string, number>> = { [less]: -step * sense, [more]: step * sense, PageUp: -4 * step * sense, PageDown: 4 * step * sense };
  if (key === 'Home') return sense === 1 ? range.min : range.max;
  if (key === 'End') return sense === 1 ? range.max : range.min;
  const by = moves[key];
  return by === undefined ? undefined : within(value + by, range);
}

function onKey(event: KeyboardEvent, props: DividerProps): void {
  const next = event.ctrlKey || event.altKey || event.metaKey ? undefined : valueAfterKey(event.key, props);
  if (next === undefined) return;
  event.preventDefault();
  props.onChange(next);
}
