import { expect, it } from 'vitest';
import dotsToBars from '../../nodes/dots-to-bars.ts';
import traceCentreLines from '../../nodes/trace-centre-lines.ts';
import type { Outline } from '../../src/artwork/index.ts';
import { pathLength, polylinePath } from '../../src/geometry/index.ts';
import { outcomeOf, outputsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

it('makes a bar of one module of a dot over a stem', () => {
  const { strokes, quantities, checks } = outputsOf(dotsToBars, { strokes: [{ path: line([0, 0], [0, 60]) }, { path: line([0, 90], [0, 92]) }], outlines: undefined });
  expect(pathLength(strokes[1]!.path)).toBeCloseTo(16.7, 9);
  expect(quantities.bars!.value).toBe(1);
  expect(checks).toMatchObject([{ check: 'bar-clearance', status: 'pass', limit: 14, at: [0, 60] }]);
});

it('cautions, with the place, where a bar comes too near another stroke', () => {
  const outcome = outcomeOf(dotsToBars, { strokes: [{ path: line([0, 0], [0, 60]) }, { path: line([10, 50], [12, 50]) }], outlines: undefined });
  expect(outcome).toMatchObject({ ok: true, outputs: { checks: [{ status: 'caution' }] }, cautions: [{ found: 'the bar at (11.0, 50.0) mm only 2.7 mm from one' }] });
});

it('makes bars of the dots a tracing found or left, and leaves what is large', () => {
  const stem: Outline = { paths: [polylinePath([{ x: 0, y: 0 }, { x: 8, y: 0 }, { x: 8, y: 80 }, { x: 0, y: 80 }], true)], fillRule: 'nonzero' };
  const disc = (x: number, y: number, radius: number): Outline => ({ paths: [circle(x, y, radius)], fillRule: 'nonzero' });
  const traced = outputsOf(traceCentreLines, { outlines: [stem, disc(4, 100, 6), disc(200, 0, 60)] });
  expect(traced.strokes).toHaveLength(2);
  const { strokes, rest, quantities } = outputsOf(dotsToBars, { strokes: traced.strokes, outlines: traced.rest });
  expect(quantities.bars!.value).toBe(1);
  expect(rest).toEqual(traced.rest);
  const bar = strokes.find(({ path }) => Math.abs(pathLength(path) - 16.7) < 1e-6)!;
  // A round dot has no direction of its own: it stands like the stem.
  expect(Math.abs(bar.path.start.x - 4)).toBeLessThan(0.05);
  expect(Math.abs(bar.widths![0]!.width - 12)).toBeLessThan(0.1);
});

it('has nothing to say of no strokes', () => {
  expect(outputsOf(dotsToBars, { strokes: [], outlines: undefined })).toEqual({ strokes: [], rest: [], checks: [], quantities: { bars: { value: 0, unit: 'count' } } });
});
