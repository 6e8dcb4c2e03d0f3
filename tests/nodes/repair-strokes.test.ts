import { expect, it } from 'vitest';
import repairStrokes from '../../nodes/repair-strokes.ts';
import type { Stroke } from '../../src/artwork/index.ts';
import { polylinePath } from '../../src/geometry/index.ts';
import { outcomeOf, outputsOf } from '../support/run-node.ts';

const line = (...points: (readonly [number, number])[]): Stroke => ({ path: polylinePath(points.map(([x, y]) => ({ x, y })), false), width: 8 });
const cross = [line([0, 50], [100, 50]), line([50, 0], [50, 100])];

it('leaves strokes as they are without edits, and tells where they meet', () => {
  const { strokes, junctions } = outputsOf(repairStrokes, { strokes: cross });
  expect(strokes).toEqual(cross);
  expect(junctions.frame).toEqual({ origin: { x: 0, y: 0 }, size: 100 });
  expect(junctions.junctions).toMatchObject([{ at: { x: 50, y: 50 }, pairs: [[0, 2], [1, 3]] }]);
  expect(junctions.ends).toHaveLength(4);
});

it('counts places from the strokes that come in, also after an edit that changes their box', () => {
  const { strokes, junctions } = outputsOf(repairStrokes, { strokes: cross }, { edits: [{ act: 'delete', places: [{ x: 0.2, y: 0.5 }] }, { act: 'delete', places: [{ x: 0.5, y: 0.1 }] }] });
  expect(strokes.map(({ path }) => [path.start, path.segments.at(-1)!.end])).toEqual([[{ x: 50, y: 50 }, { x: 100, y: 50 }], [{ x: 50, y: 50 }, { x: 50, y: 100 }]]);
  expect(junctions.frame).toEqual({ origin: { x: 0, y: 0 }, size: 100 });
});

it('tells an edit that found nothing by its number, act and place, and does the others', () => {
  const outcome = outcomeOf(repairStrokes, { strokes: cross }, { edits: [{ act: 'split', places: [{ x: 0.9, y: 0.9 }] }, { act: 'split', places: [{ x: 0.25, y: 0.5 }] }] });
  if (!outcome.ok) throw new Error('expected a result');
  expect(outcome.cautions).toMatchObject([{ place: 'edits 1', found: 'edit 1, split, found no stroke near (90.0, 90.0) mm' }]);
  expect(outcome.outputs.quantities).toEqual({ editsDone: { value: 1, unit: 'count' }, editsWithoutPlace: { value: 1, unit: 'count' } });
  expect(outcome.outputs.strokes).toHaveLength(3);
});

it('takes edits on no strokes at all', () => {
  const outcome = outcomeOf(repairStrokes, { strokes: [] }, { edits: [{ act: 'split', places: [{ x: 0.5, y: 0.5 }] }] });
  expect(outcome).toMatchObject({ ok: true, outputs: { strokes: [] }, cautions: [{}] });
});
