import { describe, expect, it } from 'vitest';
import {
  emptyRegion, loopArea, makeRegionIndex, offsetPath, outerContour, type Point, pointInRegion, polylinePath, type Region,
  subtractRegion, unionRegions,
} from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { points, rectangle, scribble, solid, turned } from './region-shapes.ts';

const plate = solid(rectangle(0, 0, 100, 50));
const frame = subtractRegion(plate, solid(rectangle(20, 15, 60, 20)));

const edgesOf = ({ loops }: Region): [Point, Point][] => loops.flatMap((loop) => loop.map((a, i): [Point, Point] => [a, loop[(i + 1) % loop.length]!]));

function plainDistance(region: Region, p: Point): number {
  return Math.min(...edgesOf(region).map(([a, b]) => {
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
  }));
}

function plainRay(region: Region, p: Point, d: Point): number {
  const hits = edgesOf(region).map(([a, b]) => {
    const [ex, ey, wx, wy] = [b.x - a.x, b.y - a.y, a.x - p.x, a.y - p.y];
    const det = d.x * ey - d.y * ex;
    const u = (wx * d.y - wy * d.x) / det;
    return u >= 0 && u <= 1 ? (wx * ey - wy * ex) / det : Infinity;
  });
  return Math.min(...hits.filter((t) => t > 1e-4), Infinity);
}

describe('pointInRegion', () => {
  it.each([
    [10, 10, 'inside'], [50, 25, 'outside'], [-1, 25, 'outside'], [50, 60, 'outside'], [0, 25, 'on'], [100, 50, 'on'],
    [20, 20, 'on'], [80, 15, 'on'], [0.00004, 25, 'on'], [0.0001, 25, 'inside'], [10, 50, 'on'], [-5, 0, 'outside'], [-5, 15, 'outside'],
  ] as const)('puts (%s, %s) %s a frame', (x, y, location) => {
    expect(pointInRegion(frame, { x, y })).toBe(location);
  });

  it('has nothing inside the empty region', () => {
    expect(pointInRegion(emptyRegion, { x: 0, y: 0 })).toBe('outside');
  });
});

describe('an index', () => {
  const random = seeded(8);
  const tangle = offsetPath(polylinePath(scribble(random, 60, 200), false), 1.5, { cap: 'round', join: 'round', tolerance: 0.01 });
  const regions: [string, Region][] = [
    ['a frame', frame], ['a tangle', tangle], ['a tangle turned and scaled', { loops: tangle.loops.map((loop) => turned(loop, 33, 0.01)) }],
    ['a strip a thousand times as long as wide', solid(rectangle(-500, 3, 1000, 1))], ['a triangle', solid(points([0, 0], [30, 1], [4, 17]))],
    ['a square on whole numbers', solid(rectangle(0, 0, 16, 16))], ['islands far apart', unionRegions([plate, solid(rectangle(1500, 900, 4, 4))])],
  ];

  it.each(regions)('agrees with looking at every edge: %s', (_, region) => {
    const index = makeRegionIndex(region);
    const all = region.loops.flat();
    const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
    const [x0, y0] = [Math.min(...xs), Math.min(...ys)];
    const [w, h] = [Math.max(...xs) - x0, Math.max(...ys) - y0];
    for (let k = 0; k < 1500; k += 1) {
      const p = { x: x0 + (random() * 1.6 - 0.3) * w, y: y0 + (random() * 1.6 - 0.3) * h };
      // Every third one on whole numbers, where rays meet corners and run along edges.
      const at = k % 3 === 0 ? { x: Math.round(p.x), y: Math.round(p.y) } : p;
      const location = pointInRegion(region, at);
      if (location !== 'on') expect(index.contains(at)).toBe(location === 'inside');
      if (k % 10 !== 1) continue;
      expect(Math.abs(index.distanceToBoundary(p) - plainDistance(region, p))).toBeLessThan(1e-9 * (1 + w));
      const nearest = index.nearestBoundaryPoint(p)!;
      expect(plainDistance(region, nearest)).toBeLessThan(1e-9 * (1 + w));
      const direction = { x: Math.cos(k), y: Math.sin(k) };
      const [found, plain] = [index.castRay(p, { x: direction.x * 7, y: direction.y * 7 }), plainRay(region, p, direction)];
      expect(found === plain || Math.abs(found - plain) < 1e-9 * (1 + w)).toBe(true);
    }
  });

  it('measures along rays to walls, corners and edges in line, not to where it starts', () => {
    const index = makeRegionIndex(frame);
    expect(index.castRay({ x: 50, y: 25 }, { x: 0, y: 1 })).toBeCloseTo(10, 9);
    expect(index.castRay({ x: 50, y: 25 }, { x: -3, y: 0 })).toBeCloseTo(30, 9);
    expect(index.castRay({ x: 50, y: 35 }, { x: 0, y: 1 })).toBeCloseTo(15, 9);
    expect(index.castRay({ x: -10, y: 0 }, { x: 1, y: 0 })).toBeCloseTo(10, 9);
    expect(index.castRay({ x: 10, y: 5 }, { x: 1, y: 1 })).toBeCloseTo(Math.SQRT2 * 10, 9);
    expect(index.castRay({ x: -10, y: 25 }, { x: -1, y: 0 })).toBe(Infinity);
    expect(index.castRay({ x: -10, y: 200 }, { x: 1, y: 0 })).toBe(Infinity);
    expect(() => index.castRay({ x: 0, y: 0 }, { x: 0, y: 0 })).toThrow(RangeError);
  });

  it('knows no boundary of the empty region', () => {
    const index = makeRegionIndex(emptyRegion);
    expect(index.contains({ x: 0, y: 0 })).toBe(false);
    expect(index.distanceToBoundary({ x: 0, y: 0 })).toBe(Infinity);
    expect(index.nearestBoundaryPoint({ x: 0, y: 0 })).toBeUndefined();
    expect(index.castRay({ x: 0, y: 0 }, { x: 1, y: 0 })).toBe(Infinity);
  });

  it('finds a distant boundary from far outside', () => {
    const index = makeRegionIndex(plate);
    expect(index.distanceToBoundary({ x: -3000, y: -4000 })).toBeCloseTo(5000, 6);
    expect(index.contains({ x: -3000, y: -4000 })).toBe(false);
  });
});

describe('outerContour', () => {
  it('fills holes and drops what lies in them', () => {
    const nest = unionRegions([frame, solid(rectangle(40, 20, 10, 10)), solid(rectangle(200, 0, 5, 5))]);
    expect(outerContour(nest).loops.map(loopArea)).toEqual([5000, 25]);
    expect(outerContour(emptyRegion)).toEqual(emptyRegion);
  });
});
