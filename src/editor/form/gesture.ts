import { useEffect, useRef } from 'react';

let last = 0;

/** A name for a new gesture: all edits that carry it are one step to undo. */
export function newGesture(what: string): string {
  last += 1;
  return `${what} ${last}`;
}

/** How long after a key press another one still belongs to the same run. */
const RUN_MILLISECONDS = 1000;

/** Names the gesture of a key press: presses that follow one another quickly share one. `now` is a time in ms. */
export function useKeyRun(what: string): (now: number) => string {
  const run = useRef({ gesture: '', until: -Infinity });
  return (now) => {
    const gesture = now <= run.current.until ? run.current.gesture : newGesture(what);
    run.current = { gesture, until: now + RUN_MILLISECONDS };
    return gesture;
  };
}

interface Hold {
  readonly begin: () => void;
  readonly end: () => void;
  /** The gesture under way, if any. */
  readonly current: () => string | undefined;
}

/** A gesture that lasts while something is held. It ends at the latest when the component goes. `tell` hears of its begin and end. */
export function useHold(what: string, tell: (active: boolean) => void): Hold {
  const held = useRef<string | undefined>(undefined);
  const told = useRef(tell);
  useEffect(() => {
    told.current = tell;
  });
  const end = () => {
    if (held.current === undefined) return;
    held.current = undefined;
    told.current(false);
  };
  const begin = () => {
    end();
    held.current = newGesture(what);
    told.current(true);
  };
  useEffect(() => () => {
    if (held.current !== undefined) told.current(false);
    held.current = undefined;
  }, []);
  return { begin, end, current: () => held.current };
}
