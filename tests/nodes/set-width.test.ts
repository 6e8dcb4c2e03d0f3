import { expect, it } from 'vitest';
import setWidth from '../../nodes/set-width.ts';
import { pathLength, regionArea, regionBounds } from '../../src/geometry/index.ts';
import { outcomeOf, outputsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

// Tube area w L + pi w^2 / 4, closed w L: H. Weyl, Amer. J. Math. 61 (1939) 461-472; H. Hotelling, same volume, 440-460.
it('gives a straight stroke the area of its tube', () => {
  const { region } = outputsOf(setWidth, { strokes: [{ path: line([0, 0], [200, 0]) }] }, { width: 10 });
  expect(regionArea(region) / 2078.54).toBeCloseTo(1, 3);
});

it('gives a closed stroke a ring of width times length', () => {
  const { region } = outputsOf(setWidth, { strokes: [{ path: circle(0, 0, 40) }] }, { width: 10 });
  expect(regionArea(region) / 2513.27).toBeCloseTo(1, 3);
  expect(region.loops).toHaveLength(2);
});

it('carries width, depth and centre lines with the region', () => {
  const { channel, region } = outputsOf(setWidth, { strokes: [{ path: line([0, 0], [200, 0]), width: 3 }] }, { width: 8, depth: 4.5 });
  expect(channel).toMatchObject({ width: 8, depth: 4.5, centreLines: [line([0, 0], [200, 0])] });
  expect(channel.region).toEqual(region);
});

it('lengthens and shortens free ends, not closed strokes', () => {
  const lengths = (longerEnds: number) => outputsOf(setWidth, { strokes: [{ path: line([0, 0], [100, 0]) }, { path: circle(0, 99, 20) }] }, { longerEnds }).channel.centreLines.map(pathLength);
  expect(lengths(7)).toEqual([expect.closeTo(114, 9), expect.closeTo(40 * Math.PI, 6)]);
  expect(lengths(-7)).toEqual([expect.closeTo(86, 9), expect.closeTo(40 * Math.PI, 6)]);
});

it('tells of strokes that were too short to be shortened', () => {
  const outcome = outcomeOf(setWidth, { strokes: [{ path: line([0, 0], [9, 0]) }, { path: line([0, 50], [90, 50]) }] }, { longerEnds: -5 });
  expect(outcome).toMatchObject({ ok: true, cautions: [{ place: 'longerEnds', found: expect.stringContaining('1 too short') as string }] });
});

it('makes a disc of a single point', () => {
  const box = regionBounds(outputsOf(setWidth, { strokes: [{ path: { start: { x: 5, y: 5 }, segments: [], closed: false } }] }, { width: 10 }).region)!;
  expect([box.minX, box.maxX, box.minY, box.maxY].map((v) => Math.round(v * 100) / 100)).toEqual([0, 10, 0, 10]);
});
