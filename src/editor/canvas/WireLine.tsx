import { memo } from 'react';
import { editor, useEditor } from '../state/editor.ts';
import { type BenchGraph, benchGraph } from './bench-graph.ts';
import { useLie } from './lie.ts';
import { bench, useBench } from './state.ts';
import { drawWire } from './wire-path.ts';

/** One wire: an ink line, and a wide unseen one over it that is easy to hit. */
export const WireLine = memo(function WireLine({ id }: { readonly id: string }) {
  const wire = useEditor(({ history, shapes }) => benchGraph(history.document, shapes).wires.get(id));
  const turns = useLie((lie) => lie.turns.get(id));
  const chosen = useBench((state) => state.chosenWire === id);
  const target = useBench((state) => state.target === id);
  const source = wire?.wire.from.split('.')[0] ?? '';
  const mood = useEditor(({ reports, running, chosen: cards }) => {
    const report = reports.get(source);
    const computing = running.state === 'computing' && (running.node === source || report === undefined);
    const near = wire !== undefined && (cards.includes(wire.source) || cards.includes(wire.target));
    return `${computing ? 'computing' : report === undefined || report.state === 'ready' ? 'carrying' : 'broken'}${near ? ' near' : ''}`;
  });
  if (wire === undefined || turns === undefined) return null;
  const d = drawWire(turns);
  const classes = ['bench-wire', ...mood.split(' ').map((word) => `bench-wire-${word}`), chosen && 'bench-wire-chosen', target && 'bench-wire-target'];
  return (
    <svg className={classes.filter(Boolean).join(' ')} width="1" height="1" aria-hidden="true" focusable="false">
      <path className="bench-wire-line" d={d} pathLength={mood.startsWith('broken') ? 100 : undefined} />
      <path className="bench-wire-hit" d={d} data-wire={id}><title>{carries(id)}</title></path>
    </svg>
  );
});

/** What a wire carries, in words: "3 strokes: Groove to Board". */
export function carries(id: string): string {
  const { history, shapes, reports } = editor.getState();
  const graph: BenchGraph = benchGraph(history.document, shapes);
  const wire = graph.wires.get(id);
  if (wire === undefined) return '';
  const [source, target] = [graph.cards.get(wire.source)!, graph.cards.get(wire.target)!];
  const port = source.outputs[wire.out]!;
  const says = reports.get(port.end.node)?.says;
  return `${port.label}${port.type !== undefined && port.type !== port.label ? ` (${port.type})` : ''}: ${source.title} to ${target.title}${says === undefined || says === '' ? '' : `. ${says}`}`;
}

/** The wire that is chosen, where there is one. */
export const chosenWire = () => {
  const { history, shapes } = editor.getState();
  return benchGraph(history.document, shapes).wires.get(bench.getState().chosenWire ?? '')?.wire;
};
