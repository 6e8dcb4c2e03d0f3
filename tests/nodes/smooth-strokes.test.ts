import { expect, it } from 'vitest';
import smoothStrokes from '../../nodes/smooth-strokes.ts';
import { pathBounds, polylinePath } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

const shaky = { path: polylinePath(Array.from({ length: 301 }, (_, i) => ({ x: 0.4 * i, y: 0.2 * Math.cos(Math.PI * i / 5) })), false) };

it('evens out a wobble of 4 mm, and tells by how much the stroke departs and where', () => {
  const { strokes, checks, quantities } = outputsOf(smoothStrokes, { strokes: [shaky] });
  const { minY, maxY } = pathBounds(strokes[0]!.path);
  expect(maxY - minY).toBeLessThan(0.3);
  expect(checks[0]).toMatchObject({ check: 'smoothing-departure', status: 'pass', limit: 0.5 });
  expect(Math.abs(checks[0]!.value - 0.2)).toBeLessThan(0.05);
  expect(checks[0]!.at![0]).toBeGreaterThan(0);
  expect(quantities).toEqual({ smoothedStrokes: { value: 1, unit: 'count' } });
});

it('keeps within the most departure that is stated', () => {
  const { checks: [check] } = outputsOf(smoothStrokes, { strokes: [shaky] }, { most: 0.05 });
  expect(check).toMatchObject({ status: 'pass', limit: 0.05 });
  expect(check!.value).toBeGreaterThan(0.02);
});

it('leaves a line, a circle, and nothing at all as they are', () => {
  const strokes = [{ path: line([0, 0], [50, 20]) }, { path: circle(0, 0, 8) }];
  expect(outputsOf(smoothStrokes, { strokes })).toMatchObject({ strokes, checks: [{ value: 0, status: 'pass' }], quantities: { smoothedStrokes: { value: 0 } } });
  expect(outputsOf(smoothStrokes, { strokes: [] }).strokes).toEqual([]);
});
