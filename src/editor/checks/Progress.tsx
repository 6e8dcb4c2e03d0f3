import { useEffect, useState } from 'react';
import { titleAt } from '../model/graph.ts';
import { useEditor } from '../state/editor.ts';
import { cancel, recompute } from '../worker/client.ts';

/** What takes less is not worth telling, milliseconds. */
const WORTH_TELLING = 300;
const TICK = 250;

/** What is being computed, how far it is and for how long, with a way to stop. Takes the same room whatever it says. */
export function Progress() {
  const state = useEditor(({ running }) => running.state);
  const elapsed = useElapsed(state === 'computing');
  return (
    <div className="checks-progress">
      {state === 'cancelled' && <Stopped />}
      {state === 'computing' && elapsed >= WORTH_TELLING ? <Computing elapsed={elapsed} /> : state !== 'cancelled' && <Computed />}
    </div>
  );
}

/** Whether a computation is long enough under way, or was stopped, so that a person should be told wherever they look. */
export function useWorthTelling(): boolean {
  const state = useEditor(({ running }) => running.state);
  const elapsed = useElapsed(state === 'computing');
  return state === 'cancelled' || (state === 'computing' && elapsed >= WORTH_TELLING);
}

function Computing({ elapsed }: { readonly elapsed: number }) {
  const done = useEditor(({ running }) => running.done);
  const title = useEditor(({ running: { node }, shapes, history }) => (node === undefined ? 'Beginning' : titleAt(shapes, history.document, node)));
  const percent = Math.round(Math.min(1, Math.max(0, done)) * 100);
  return (
    <>
      <progress className="checks-bar" max={100} value={percent} aria-label={`Computing ${title}`} />
      <span className="checks-progress-says"><span className="checks-progress-title">{title}</span> <span className="number">{percent} % · {secondsText(elapsed)}</span></span>
      <button type="button" className="button" onClick={cancel}>Stop</button>
    </>
  );
}

function Stopped() {
  return (
    <>
      <span className="checks-progress-says" role="status">Stopped: what is shown may be old.</span>
      <button type="button" className="button" onClick={recompute}>Compute again</button>
    </>
  );
}

function Computed() {
  const milliseconds = useEditor(({ running }) => running.milliseconds);
  return milliseconds > 0 ? <span className="checks-progress-says number">Computed in {secondsText(milliseconds)}</span> : null;
}

/** Milliseconds since this began; 0 while it does not run. */
function useElapsed(runs: boolean): number {
  const [elapsed, setElapsed] = useState(0);
  useEffect(() => {
    if (!runs) return undefined;
    const begun = performance.now();
    const timer = setInterval(() => setElapsed(performance.now() - begun), TICK);
    return () => {
      clearInterval(timer);
      setElapsed(0);
    };
  }, [runs]);
  return elapsed;
}

/** A duration as one reads it from a clock: "0.4 s", "2 min 5 s". */
export function secondsText(milliseconds: number): string {
  const seconds = milliseconds / 1000;
  if (seconds < 59.95) return `${seconds < 0.1 ? seconds.toFixed(2) : seconds.toFixed(1)} s`;
  const whole = Math.round(seconds);
  return `${String(Math.floor(whole / 60))} min ${String(whole % 60)} s`;
}
