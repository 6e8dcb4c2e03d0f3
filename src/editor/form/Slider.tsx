import { type CSSProperties, type KeyboardEvent, useEffect, useEffectEvent, useRef } from 'react';
import type { NumberParam } from '../../runtime/index.ts';
import { useHold, useKeyRun } from './gesture.ts';
import { scaleOf, stepped } from './scale.ts';
import { amount, shownText } from './units.ts';

interface SliderProps {
  readonly param: NumberParam;
  readonly value: number;
  readonly label: string;
  readonly describedBy: string;
  readonly onSlide: (value: number, gesture: string) => void;
  readonly onGesture: (active: boolean) => void;
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10, Home: -Infinity, End: Infinity,
};

/** Slides a value between its limits: one gesture from press to release, or for a run of keys. */
export function Slider({ param, value, label, describedBy, onSlide, onGesture }: SliderProps) {
  const scale = scaleOf(param);
  const hold = useHold('slide', onGesture);
  const keyRun = useKeyRun('keys');
  const input = usePressed(hold.begin, hold.end);
  const slide = (next: number, gesture: string) => {
    if (next !== value) onSlide(next, gesture);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const steps = STEPS[event.key];
    if (steps === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    slide(stepped(value, steps, param), keyRun(event.timeStamp));
  };
  const position = scale.positionOf(value);
  const filled = { '--filled': (position - scale.low) / (scale.high - scale.low) } as CSSProperties;
  return (
    <div className="form-slide">
      <span className="form-limit" aria-hidden="true">{shownText(param.min)}</span>
      <input
        ref={input} type="range" className="form-slider" style={filled} min={scale.low} max={scale.high} step="any" value={position}
        aria-label={label} aria-describedby={describedBy} aria-valuetext={amount(value, param.unit)}
        onChange={(event) => slide(scale.valueAt(event.target.valueAsNumber), hold.current() ?? keyRun(event.timeStamp))}
        onKeyDown={onKeyDown} onBlur={hold.end}
      />
      <span className="form-limit" aria-hidden="true">{shownText(param.max)}</span>
    </div>
  );
}

/**
 * Tells of a press on an element and of its release, wherever that is. The listener is a native one: the form keeps presses
 * from the card around it, and React would hear of them only after that.
 */
function usePressed(begin: () => void, end: () => void) {
  const ref = useRef<HTMLInputElement>(null);
  const begun = useEffectEvent(begin);
  const ended = useEffectEvent(end);
  useEffect(() => {
    const element = ref.current!;
    const view = element.ownerDocument.defaultView!;
    const press = () => begun();
    const release = () => ended();
    const releases = ['pointerup', 'pointercancel', 'blur'];
    element.addEventListener('pointerdown', press);
    for (const kind of releases) view.addEventListener(kind, release, true);
    return () => {
      element.removeEventListener('pointerdown', press);
      for (const kind of releases) view.removeEventListener(kind, release, true);
    };
  }, []);
  return ref;
}
