import { describe, expect, it } from 'vitest';
import { distance, makeRegionIndex, offsetPath, pathLength, polylinePath, regionArea, samplePath, subtractRegion, unionRegions } from '../../../src/geometry/index.ts';
import { drawnRegion } from '../../../src/lettering/compare/drawn.ts';
import { circle, line } from '../../support/shapes.ts';
import { arc } from '../edit/common.ts';

const even = (width: number) => [{ along: 0, width }];

it('draws a stadium: straight length times width and one disc', () => {
  expect(regionArea(drawnRegion(line([0, 0], [100, 0]), even(40), 0.01)) / (4000 + 400 * Math.PI)).toBeCloseTo(1, 4);
});

it('draws a ring, and a disc for a single place', () => {
  expect(regionArea(drawnRegion(circle(0, 0, 45), even(10), 0.01)) / (2 * Math.PI * 45 * 10)).toBeCloseTo(1, 4);
  expect(regionArea(drawnRegion({ start: { x: 3, y: 4 }, segments: [], closed: false }, even(10), 0.01)) / (25 * Math.PI)).toBeCloseTo(1, 4);
});

it('draws a taper: a trapezoid along the common tangents and the two discs\' ends', () => {
  // Discs of radii R and r a length L apart; their tangents lean by asin((R - r) / L).
  const [L, R, r] = [80, 10, 4];
  const lean = Math.asin((R - r) / L);
  const area = (R + r) * L * Math.cos(lean) + R * R * (Math.PI / 2 + lean) + r * r * (Math.PI / 2 - lean);
  expect(regionArea(drawnRegion(line([0, 0], [L, 0]), [{ along: 0, width: 2 * R }, { along: L, width: 2 * r }], 0.01)) / area).toBeCloseTo(1, 3);
});

describe('is what the offset of the path is, where the width does not change', () => {
  it.each([
    ['a corner', line([0, 0], [60, 0], [20, 30])],
    ['a corner that turns back', line([0, 0], [60, 0], [5, 2])],
    ['a bend tighter than the pen', arc({ x: 0, y: 0 }, 3, 0, 250)],
    ['a closed zigzag', polylinePath([{ x: 0, y: 0 }, { x: 50, y: 0 }, { x: 25, y: 40 }], true)],
    ['a spiral', polylinePath(Array.from({ length: 300 }, (_, i) => ({ x: (5 + i / 8) * Math.cos(i / 15), y: (5 + i / 8) * Math.sin(i / 15) })), false)],
  ])('%s', (_, path) => {
    const drawn = drawnRegion(path, even(12), 0.01);
    const offset = offsetPath(path, 6, { cap: 'round', join: 'round', tolerance: 0.005 });
    const differing = regionArea(subtractRegion(drawn, offset)) + regionArea(subtractRegion(offset, drawn));
    expect(differing / regionArea(offset)).toBeLessThan(2e-3);
  });
});

it('reaches half the stated width to either side all along a bend, and no farther', () => {
  const path = arc({ x: 0, y: 0 }, 40, 0, 200);
  const length = pathLength(path);
  const widths = Array.from({ length: 41 }, (_, i) => ({ along: (i * length) / 40, width: 8 + 3 * Math.sin(i / 5) }));
  const index = makeRegionIndex(drawnRegion(path, widths, 0.005));
  for (const { point, distance: along } of samplePath(path, 1.3)) {
    if (along < 8 || along > length - 8) continue;
    const r = (8 + 3 * Math.sin((along / length) * 8)) / 2;
    expect(Math.abs(index.distanceToBoundary(point) - r)).toBeLessThan(0.02);
  }
});

it('is what is drawn run the other way', () => {
  const path = arc({ x: 0, y: 0 }, 40, 0, 200);
  const back = arc({ x: 0, y: 0 }, 40, 200, 0);
  expect(distance(back.start, path.segments[1]!.end)).toBeLessThan(1e-9);
  const length = pathLength(path);
  const [a, b] = [drawnRegion(path, [{ along: 0, width: 4 }, { along: length, width: 16 }], 0.01), drawnRegion(back, [{ along: 0, width: 16 }, { along: length, width: 4 }], 0.01)];
  expect(regionArea(unionRegions([a, b])) / regionArea(a)).toBeLessThan(1.001);
  expect(regionArea(b) / regionArea(a)).toBeCloseTo(1, 4);
});

it('draws nothing without a width', () => {
  expect(drawnRegion(line([0, 0], [10, 0]), [], 0.01)).toEqual({ loops: [] });
});
