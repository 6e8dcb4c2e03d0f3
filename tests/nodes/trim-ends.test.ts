import { expect, it } from 'vitest';
import trimEnds from '../../nodes/trim-ends.ts';
import { outcomeOf, outputsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

const T = [{ path: line([0, 0], [100, 0]) }, { path: line([50, 0], [50, -60]) }, { path: circle(0, 200, 10) }];

it('lengthens free ends, leaves the one that lies on a stroke, and closed strokes', () => {
  const { strokes, quantities } = outputsOf(trimEnds, { strokes: T }, { length: 10 });
  expect(strokes.map(({ path }) => path)).toEqual([line([-10, 0], [110, 0]), line([50, 0], [50, -70]), T[2]!.path]);
  expect(quantities.changedEnds!.value).toBe(3);
});

it('names a stroke that would vanish, and what became of it', () => {
  const short = { path: line([300, 7], [304, 7]) };
  expect(outcomeOf(trimEnds, { strokes: [...T, short] }, { length: -3 })).toMatchObject({ ok: true, cautions: [{ place: 'length', found: 'stroke 4 at (300.0, 7.0) mm too short, which was kept as it was' }] });
  expect(outputsOf(trimEnds, { strokes: [...T, short] }, { length: -3, vanishing: 'drop' }).strokes).toHaveLength(3);
});

it('leaves all as it is by default', () => {
  expect(outputsOf(trimEnds, { strokes: T }).strokes).toEqual(T);
});
