import { expect, it } from 'vitest';
import joinStrokes from '../../nodes/join-strokes.ts';
import { outcomeOf, outputsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

const strokes = (...list: ReturnType<typeof line>[]) => list.map((path) => ({ path }));

it('joins what meets and runs on, counts it, and leaves the rest as it was', () => {
  const alone = circle(200, 0, 20);
  const outputs = outputsOf(joinStrokes, { strokes: strokes(line([0, 0], [40, 0]), alone, line([80, 0], [41, 0])) });
  expect(outputs.strokes.map(({ path }) => path)).toEqual([line([0, 0], [80, 0]), alone]);
  expect(outputs.quantities).toMatchObject({ joins: { value: 1 }, joinedStrokes: { value: 2 } });
  expect(outputs.checks).toMatchObject([{ check: 'join-departure', status: 'pass', value: 0 }]);
});

it('cautions where a bridge leaves the drawn ends, and says where', () => {
  const bent = strokes(line([0, 0], [40, 0]), line([40, 1.5], [80, 1.5]));
  const { checks } = outputsOf(joinStrokes, { strokes: bent }, { departure: 0.5 });
  expect(checks[0]).toMatchObject({ status: 'caution', at: [40, 0.75] });
  expect(checks[0]!.value).toBeCloseTo(0.75, 1);
});

it('names the place where two partners are alike', () => {
  const outcome = outcomeOf(joinStrokes, { strokes: strokes(line([0, 0], [40, 0]), line([40, 0], [80, 10]), line([40, 0], [80, -10])) });
  expect(outcome).toMatchObject({ ok: true, cautions: [{ found: 'two nearly alike at (40.0, 0.0) mm' }] });
});

it('has nothing to say of no strokes', () => {
  expect(outputsOf(joinStrokes, { strokes: [] })).toMatchObject({ strokes: [], checks: [] });
});
