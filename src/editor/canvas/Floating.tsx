import { useStore } from 'zustand';
import { useEditor } from '../state/editor.ts';
import { removeWire } from './actions.ts';
import { currentGraph } from './follow.ts';
import { useLie } from './lie.ts';
import { insertInto } from './menu-entries.ts';
import { bench, useBench, viewport } from './state.ts';
import { carries } from './WireLine.tsx';
import { middleOf } from './wire-path.ts';
import { placeInView } from './commands.ts';

/** While a wire is pulled over a port that does not take it: why, beside the pointer. */
export function Refusal() {
  const pull = useBench((state) => state.pull);
  const says = pull?.refusal;
  if (pull === undefined || says === undefined) return null;
  const right = pull.pointer[0] > innerWidth - 340;
  return <p className={right ? 'bench-refusal bench-refusal-left' : 'bench-refusal'} role="alert" style={{ left: pull.pointer[0], top: pull.pointer[1] }}><span aria-hidden="true">✕ </span>{says}</p>;
}

/** At the middle of the chosen wire: what it carries and what can be done with it. */
export function WireTools() {
  const key = useBench((state) => state.chosenWire);
  useEditor((state) => state.history.document);
  const turns = useLie((state) => state.turns.get(key ?? ''));
  const { x, y, k } = useStore(viewport);
  const wire = currentGraph().wires.get(key ?? '')?.wire;
  if (key === undefined || wire === undefined || turns === undefined) return null;
  const [mx, my] = middleOf(turns);
  return (
    <div className="bench-wire-tools bench-scrolls" role="group" aria-label={`Wire: ${carries(key)}`} style={{ transform: `translate(${mx * k + x}px, ${my * k + y}px) translate(-50%, 10px)` }}>
      <p>{carries(key)}</p>
      <span className="button-row">
        <button type="button" className="button" onClick={() => insertInto(key)}>Insert a step</button>
        <button type="button" className="button" onClick={() => removeWire(wire)}>Take away</button>
      </span>
    </div>
  );
}

/** An empty bench says what to do. */
export function EmptyBench() {
  const empty = useEditor(({ history }) => history.document.nodes.length === 0);
  if (!empty) return null;
  return (
    <div className="bench-empty">
      <p><strong>Nothing is on the bench yet.</strong></p>
      <p>Add a first step, open a recipe, or drop a drawing (SVG) anywhere on the page.</p>
      <button type="button" className="button-first" onClick={() => bench.setState({ adding: { at: placeInView() } })}>Add a step</button>
    </div>
  );
}
