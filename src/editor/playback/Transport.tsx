import { programAt, startOf } from './moments.ts';
import { SPEEDS, change, closed, paused, soughtTo, started, stepped, usePlayback } from './state.ts';
import { programName } from './words.ts';

/** What is done with the playback, in words. */
export function Transport() {
  const { playing, relief } = usePlayback((state) => state);
  const ready = usePlayback((state) => state.programs.length > 0);
  return (
    <div className="playback-transport">
      <button type="button" className="button playback-play" disabled={!ready} onClick={() => change(playing ? paused : started)}>{playing ? 'Pause' : 'Play'}</button>
      <Steps ready={ready} />
      <Speeds />
      <Programs />
      <label className="playback-relief">
        <input type="checkbox" checked={relief} onChange={({ target }) => change((state) => ({ ...state, relief: target.checked }))} />
        Show relief
      </label>
      <button type="button" className="button playback-close" onClick={() => change(closed)}>Close</button>
    </div>
  );
}

const STEPS = [['pass', -1, 'Previous pass'], ['move', -1, 'Previous move'], ['move', 1, 'Next move'], ['pass', 1, 'Next pass']] as const;

function Steps({ ready }: { readonly ready: boolean }) {
  return (
    <div className="button-set" role="group" aria-label="Step">
      {STEPS.map(([by, way, label]) => (
        <button key={label} type="button" className="button" disabled={!ready} onClick={() => change(stepped(by, way))}>{label}</button>
      ))}
    </div>
  );
}

function Speeds() {
  const chosen = usePlayback((state) => state.speed);
  return (
    <div className="button-set" role="group" aria-label="Speed against the machine's own">
      {SPEEDS.map((speed) => (
        <button key={speed} type="button" className="button number" aria-pressed={speed === chosen} onClick={() => change((state) => ({ ...state, speed }))}>
          {speed} ×
        </button>
      ))}
    </div>
  );
}

/** Goes to the beginning of a program, where there are several. */
function Programs() {
  const programs = usePlayback((state) => state.programs);
  const current = usePlayback((state) => programAt(state.programs, state.seconds).program);
  if (programs.length < 2) return null;
  return (
    <select className="field" aria-label="Program" value={current} onChange={({ target }) => change(soughtTo(startOf(programs, Number(target.value))))}>
      {programs.map((program, index) => <option key={program.file} value={index}>{`${String(index + 1)} of ${String(programs.length)}: ${programName(program)}`}</option>)}
    </select>
  );
}
