import type { KeyboardEvent } from 'react';
import { programAt, totalSeconds } from './moments.ts';
import { type Change, change, soughtTo, stepped, usePlayback } from './state.ts';
import { clock, programName } from './words.ts';

/** Arrows go by seconds, with Shift by moves; page keys by passes. */
function keyed({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>): Change | undefined {
  const by = shiftKey ? 'move' : 'second';
  switch (key) {
    case 'ArrowRight': case 'ArrowUp': return stepped(by, 1);
    case 'ArrowLeft': case 'ArrowDown': return stepped(by, -1);
    case 'PageUp': return stepped('pass', 1);
    case 'PageDown': return stepped('pass', -1);
    case 'Home': return soughtTo(0);
    case 'End': return (state) => soughtTo(totalSeconds(state.programs))(state);
    default: return undefined;
  }
}

/** The time of all programs as one slider. */
export function Scrubber() {
  const programs = usePlayback((state) => state.programs);
  const seconds = usePlayback((state) => state.seconds);
  const total = totalSeconds(programs);
  const program = programs[programAt(programs, seconds).program];
  const onKeyDown = (event: KeyboardEvent) => {
    const next = event.ctrlKey || event.metaKey || event.altKey ? undefined : keyed(event);
    if (next === undefined) return;
    event.preventDefault();
    change(next);
  };
  return (
    <input
      type="range" className="playback-scrubber" aria-label="Time" min={0} max={total} step="any" value={seconds}
      aria-valuetext={`${clock(seconds)} of ${clock(total)}, ${program ? programName(program) : ''}`}
      onChange={({ target }) => change(soughtTo(target.valueAsNumber))} onKeyDown={onKeyDown}
    />
  );
}
