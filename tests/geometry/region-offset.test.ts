import { describe, expect, it } from 'vitest';
import {
  components, emptyRegion, makeRegionIndex, offsetPath, type OffsetCap, offsetPaths, type OffsetJoin, offsetRegion, type Path,
  type PathOffsetOptions, type Point, polylinePath, regionArea, regionPerimeter, subtractRegion, UNITS_PER_MM,
} from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { circle } from '../support/shapes.ts';
import { around, points, polyline, rectangle, scribble, solid, turned } from './region-shapes.ts';

const round: PathOffsetOptions = { cap: 'round', join: 'round', tolerance: 0.01 };
const fine: PathOffsetOptions = { ...round, tolerance: 0.001 };

const halfCircle = (radius: number): Path =>
  ({ start: { x: radius, y: 0 }, segments: [{ kind: 'arc', end: { x: -radius, y: 0 }, centre: { x: 0, y: 0 }, clockwise: false }], closed: false });

const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

describe('the tube of a curve (H. Weyl and H. Hotelling, Amer. J. Math. 61, 1939: area w L + pi w^2 / 4, closed w L)', () => {
  const tube = (length: number, width: number): number => width * length + (Math.PI * width ** 2) / 4;

  it.each([
    ['a straight line of 200 mm', polyline([0, 0], [200, 0]), tube(200, 10)],
    ['a half circle of radius 40', halfCircle(40), tube(Math.PI * 40, 10)],
    ['a circle of radius 40', circle(0, 0, 40), 2 * Math.PI * 40 * 10],
    ['a circle of radius 50, as an annulus of radii 55 and 45', circle(7, -3, 50), Math.PI * (55 ** 2 - 45 ** 2)],
  ])('has its area within 1.2e-4 at a tolerance of 0.01 mm: %s', (_, path, area) => {
    expect(relative(regionArea(offsetPath(path, 5, round)), area)).toBeLessThan(1.2e-4);
    expect(relative(regionArea(offsetPath(path, 5, fine)), area)).toBeLessThan(1.5e-5);
  });

  it('converges with the tolerance', () => {
    const area = tube(Math.PI * 40, 10);
    const errors = [0.1, 0.01, 0.001].map((tolerance) => relative(regionArea(offsetPath(halfCircle(40), 5, { ...round, tolerance })), area));
    expect(errors[1]).toBeLessThan(errors[0]!);
    expect(errors[2]).toBeLessThan(errors[1]!);
  });

  it.each([[90, 2073.2], [60, 2077.2]])('of two legs of 100 mm turning by %s degrees is %s mm2 with round joins', (degrees, area) => {
    // Elementary, from the tube formula: each corner adds (w/2)^2 (phi/2 - tan(phi/2)).
    const phi = (degrees * Math.PI) / 180;
    const exact = tube(200, 10) + 25 * (phi / 2 - Math.tan(phi / 2));
    expect(Math.abs(exact - area)).toBeLessThan(0.05);
    const path = polyline([-100, 0], [0, 0], [100 * Math.cos(phi), 100 * Math.sin(phi)]);
    expect(relative(regionArea(offsetPath(path, 5, fine)), exact)).toBeLessThan(1e-5);
  });

  it('tighter than half its width is the whole disc, without a hole', () => {
    for (const radius of [4.9, 4, 1, 0.01]) {
      const found = offsetPath(circle(0, 0, radius), 5, round);
      expect(found.loops.length).toBe(1);
      expect(relative(regionArea(found), Math.PI * (5 + radius) ** 2)).toBeLessThan(2e-3);
    }
  });

  it('of a noisy circle tighter than half its width is a disc too', () => {
    const random = seeded(4);
    const noisy = around(1500, (t) => [(4 + 0.02 * random()) * Math.cos(t), (4 + 0.02 * random()) * Math.sin(t)]);
    const found = offsetPath(polylinePath(noisy, true), 5, round);
    expect(found.loops.length).toBe(1);
    expect(relative(regionArea(found), Math.PI * 81)).toBeLessThan(6e-3);
  });

  it('is the same whether the path runs forward or backward, and turned', () => {
    const random = seeded(9);
    for (let k = 0; k < 15; k += 1) {
      const line = scribble(random, 12, 60);
      const areas = [line, [...line].reverse(), turned(line, 37 + k)]
        .map((chain) => regionArea(offsetPath(polylinePath(chain, k % 2 === 1), 3, round)));
      expect(relative(areas[1]!, areas[0]!)).toBeLessThan(2e-4);
      expect(relative(areas[2]!, areas[0]!)).toBeLessThan(2e-4);
    }
  });
});

describe('the boundary of a tube with round joins', () => {
  const unit = 1 / UNITS_PER_MM;
  const waves = (at: (t: number) => readonly [number, number]): Path => polylinePath(around(4000, at).slice(0, 3000), false);

  /** Distance from a point to the dense centre line. */
  const distanceTo = (path: Path): ((point: Point) => number) => {
    const chain = [path.start, ...path.segments.map(({ end }) => end)];
    // There and back, a chain of edges is a boundary to the index.
    return makeRegionIndex({ loops: [[...chain, ...[...chain].reverse().slice(1, -1)]] }).distanceToBoundary;
  };

  it.each([
    ['a gentle wave', waves((t) => [t * 30, 20 * Math.sin(2 * t)])],
    ['a wave tighter than the tube', waves((t) => [t * 8, 20 * Math.sin(3 * t)])],
    ['a curve that crosses itself', waves((t) => [40 * Math.cos(t), 30 * Math.sin(2 * t)])],
    ['a curve with a cusp', waves((t) => [20 * Math.cos(t) ** 3, 20 * Math.sin(t) ** 3])],
  ])('is within tolerance and one unit of the true one everywhere: %s', (_, path) => {
    for (const tolerance of [0.05, 0.01, 0.002]) {
      const distance = distanceTo(path);
      const found = offsetPath(path, 5, { ...round, tolerance });
      const corners = found.loops.flatMap((loop) => loop.flatMap((a, i) => {
        const b = loop[(i + 1) % loop.length]!;
        return [a, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }];
      }));
      const errors = corners.map((corner) => Math.abs(distance(corner) - 5));
      expect(Math.max(...errors)).toBeLessThan(tolerance + unit);
    }
  });

  it('takes few vertices: no more than twice what chords of the tolerance need', () => {
    const found = offsetPath(circle(0, 0, 50), 5, round);
    const chords = (radius: number): number => Math.PI / Math.acos(1 - 0.01 / radius);
    const vertices = found.loops.reduce((sum, loop) => sum + loop.length, 0);
    expect(vertices).toBeLessThan(2 * (chords(55) + chords(45)));
  });
});

describe('caps, as SVG 2 says of stroke-linecap', () => {
  const disc = 25 * Math.PI;

  it.each<[string, OffsetCap, Path, number]>([
    ['round', 'round', polyline([0, 0], [30, 0]), 300 + disc],
    ['butt', 'butt', polyline([0, 0], [30, 0]), 300],
    ['square', 'square', polyline([0, 0], [30, 0]), 400],
    ['a disc for a point under round', 'round', polyline([3, 3]), disc],
    ['nothing for a point under butt', 'butt', polyline([3, 3]), 0],
    ['a square for a point under square', 'square', polyline([3, 3]), 100],
    ['a disc for no length under round', 'round', polyline([3, 3], [3, 3], [3, 3]), disc],
    ['nothing for no length under butt', 'butt', polyline([3, 3], [3, 3]), 0],
    ['a square for no length under square', 'square', polyline([3, 3], [3, 3]), 100],
  ])('are %s', (_, cap, path, area) => {
    expect(Math.abs(regionArea(offsetPath(path, 5, { ...fine, cap })) - area)).toBeLessThan(0.02);
  });

  it('stay square to the end where the drawing stutters', () => {
    const stutter = polylinePath(points([0, 0], [0.0002, 0.0003], [15, 0], [29.9999, 0], [29.9998, 0.0004], [30, 0]), false);
    expect(relative(regionArea(offsetPath(stutter, 5, { ...round, cap: 'square' })), 400)).toBeLessThan(1e-3);
  });

  it('of a stroke made piece by piece are at its two ends only', () => {
    const random = seeded(2);
    // A tangle so tight that it is made piece by piece, with a straight tail at each end.
    const tangle = Array.from({ length: 700 }, () => ({ x: random() * 2, y: random() * 2 }));
    const tailed = polylinePath([{ x: -40, y: 1 }, ...tangle, { x: 40, y: 1 }], false);
    const areas = (['butt', 'square'] as const).map((cap) => regionArea(offsetPath(tailed, 5, { ...round, cap })));
    expect(Math.abs(areas[1]! - areas[0]! - 100)).toBeLessThan(0.5);
    expect(areas[0]).toBeGreaterThan(800);
    expect(areas[0]).toBeLessThan(840);
  });
});

describe('joins', () => {
  const corner = (degrees: number): Path => {
    const a = (degrees * Math.PI) / 180;
    return polyline([50, 0], [0, 0], [50 * Math.cos(a), 50 * Math.sin(a)]);
  };
  const area = (path: Path, join: OffsetJoin, miterLimit = 4): number =>
    regionArea(offsetPath(path, 5, { cap: 'butt', join, miterLimit, tolerance: 0.001 }));

  it.each([[90, 1.4142], [60, 2]])('of a corner of %s degrees reach out %s half-widths under miter (SVG 2: 1 / sin(theta/2))', (degrees, ratio) => {
    const found = offsetPath(corner(degrees), 5, { cap: 'butt', join: 'miter', miterLimit: 4, tolerance: 0.001 });
    const reach = Math.max(...found.loops.flat().map(({ x, y }) => Math.hypot(x, y)).filter((r) => r < 30));
    expect(Math.abs(reach / 5 - ratio)).toBeLessThan(1e-3);
  });

  it('turn from miter to bevel at the limit, 28.955 degrees for 4 (SVG 2)', () => {
    expect(area(corner(28.8), 'miter')).toBeCloseTo(area(corner(28.8), 'bevel'), 6);
    expect(area(corner(29.1), 'miter')).toBeGreaterThan(area(corner(29.1), 'bevel') + 20);
  });

  it('grow from bevel over round to miter by what trigonometry says', () => {
    const bevel = area(corner(90), 'bevel');
    expect(area(corner(90), 'round') - bevel).toBeCloseTo(25 * Math.PI / 4 - 12.5, 1);
    expect(area(corner(90), 'miter') - bevel).toBeCloseTo(12.5, 3);
  });

  it('of a reversal add a half disc under round and nothing under bevel', () => {
    const back = polyline([0, 0], [30, 0], [5, 0]);
    expect(area(back, 'round')).toBeCloseTo(300 + 12.5 * Math.PI, 1);
    expect(area(back, 'bevel')).toBeCloseTo(300, 3);
  });
});

describe('strokes with faults', () => {
  const clean = polyline([0, 0], [20, 0], [20, 20], [40, 20]);

  it.each([
    ['repeated points', polyline([0, 0], [0, 0], [20, 0], [20, 0], [20, 20], [40, 20], [40, 20])],
    ['points on straight runs', polyline([0, 0], [3, 0], [7, 0], [20, 0], [20, 11], [20, 20], [21, 20], [40, 20])],
    ['a spike within the stroke', polyline([0, 0], [20, 0], [20, 20], [20, 16], [20, 20], [40, 20])],
    ['a stretch drawn three times', polyline([0, 0], [20, 0], [5, 0], [20, 0], [20, 20], [40, 20])],
    ['a hair of noise', polyline([0, 0], [10, 0.0001], [10.0001, 0], [20, 0], [20, 20], [40, 20])],
  ])('give the same tube: %s', (_, path) => {
    expect(regionArea(offsetPath(path, 3, round))).toBeCloseTo(regionArea(offsetPath(clean, 3, round)), 1);
    expect(offsetPath(path, 3, round).loops.length).toBe(1);
  });

  it('closed ones are rings to both sides, whichever way they run', () => {
    const loop = rectangle(0, 0, 60, 40);
    for (const chain of [loop, [...loop].reverse()]) {
      const ring = offsetPath(polylinePath(chain, true), 5, { ...fine, join: 'miter' });
      expect(ring.loops.length).toBe(2);
      expect(regionArea(ring)).toBeCloseTo(70 * 50 - 50 * 30, 6);
    }
  });

  it('a figure of eight keeps its two holes', () => {
    const eight = polylinePath(around(400, (t) => [40 * Math.sin(t), 25 * Math.sin(2 * t)]), true);
    expect(offsetPath(eight, 4, round).loops.length).toBe(3);
  });

  it('many strokes together are the union of each', () => {
    const cross = offsetPaths([polyline([-50, 0], [50, 0]), polyline([0, -50], [0, 50])], 5, { ...fine, cap: 'butt' });
    expect(regionArea(cross)).toBeCloseTo(1900, 6);
    expect(offsetPaths([], 5, round)).toEqual(emptyRegion);
  });
});

describe('regions moved outward and inward', () => {
  const plate = solid(rectangle(0, 0, 100, 50));
  const ellipse = solid(around(20_000, (t) => [50 * Math.cos(t), 20 * Math.sin(t)]));

  it('grow by the Steiner formula: A + P d + pi d^2 and P + 2 pi d', () => {
    // J. Steiner, Ueber parallele Flaechen, Monatsber. Preuss. Akad. Berlin 1840.
    const grown = offsetRegion(plate, 5, fine);
    expect(relative(regionArea(grown), 6578.5)).toBeLessThan(1e-4);
    expect(relative(regionPerimeter(grown), 331.42)).toBeLessThan(1e-4);
  });

  it('keep sharp corners inward and, under miter, outward', () => {
    const shrunk = offsetRegion(plate, -5, round);
    expect(regionArea(shrunk)).toBe(3600);
    expect(regionPerimeter(shrunk)).toBe(260);
    expect(regionArea(offsetRegion(plate, 5, { ...round, join: 'miter' }))).toBe(6600);
  });

  it('shrink a smooth convex one by A - P d + pi d^2 and P - 2 pi d', () => {
    // Ellipse 50, 20 with least radius 8: regular at 5 (R. Farouki and C. Neff, CAGD 7, 1990).
    const shrunk = offsetRegion(ellipse, -5, fine);
    expect(relative(regionArea(shrunk), 2069.5)).toBeLessThan(1e-4);
    expect(relative(regionPerimeter(shrunk), 198.72)).toBeLessThan(1e-4);
  });

  it('shrink an ellipse past its least radius of 8 to one with two corners, and past 20 to nothing', () => {
    const shrunk = offsetRegion(ellipse, -10, { ...round, tolerance: 0.001 });
    expect(shrunk.loops.length).toBe(1);
    // The inner parallel of an ellipse meets the long axis where sqrt((a^2 - b^2)(b^2 - d^2)) / b says (elementary).
    const tip = Math.sqrt((50 ** 2 - 20 ** 2) * (20 ** 2 - 10 ** 2)) / 20;
    expect(Math.max(...shrunk.loops[0]!.map(({ x }) => x))).toBeCloseTo(tip, 2);
    expect(offsetRegion(ellipse, -20.001, round)).toEqual(emptyRegion);
  });

  it('treat holes the other way round, and close or drop what becomes too narrow', () => {
    const frame = subtractRegion(plate, solid(rectangle(20, 15, 60, 20)));
    expect(regionArea(offsetRegion(frame, -5, { ...round, join: 'miter' }))).toBe(90 * 40 - 70 * 30);
    expect(regionArea(offsetRegion(frame, 5, { ...round, join: 'miter' }))).toBe(110 * 60 - 50 * 10);
    expect(offsetRegion(frame, 10, { ...round, join: 'miter' }).loops.length).toBe(1);
    expect(components(offsetRegion(frame, -7.4999, round)).length).toBe(1);
    expect(components(offsetRegion(frame, -7.5001, round)).length).toBe(2);
    expect(offsetRegion(frame, -12, round).loops.length).toBe(0);
  });

  it('part where a neck gives way, and join where a gap closes', () => {
    const dumbbell = solid(rectangle(0, 0, 30, 30), rectangle(25, 12, 40, 6), rectangle(60, 0, 30, 30));
    expect(components(offsetRegion(dumbbell, -4, round)).length).toBe(2);
    const pair = solid(rectangle(0, 0, 30, 30), rectangle(36, 0, 30, 30));
    expect(components(offsetRegion(pair, 2.9, round)).length).toBe(2);
    expect(components(offsetRegion(pair, 3.1, round)).length).toBe(1);
  });

  it('leave a region as it is at distance 0, and the empty one empty', () => {
    expect(offsetRegion(plate, 0, round)).toBe(plate);
    expect(offsetRegion(emptyRegion, 5, round)).toEqual(emptyRegion);
    expect(offsetPath(polyline([0, 0], [9, 0]), 0, round)).toEqual(emptyRegion);
  });

  it('come back to where they were: out and in again leaves a convex one alone', () => {
    const random = seeded(3);
    for (let k = 0; k < 10; k += 1) {
      const hull = solid(around(5 + k, (t) => [(20 + k) * Math.cos(t + 1), (10 + random()) * Math.sin(t + 1)]));
      const back = offsetRegion(offsetRegion(hull, 4, { ...fine, join: 'miter', miterLimit: 100 }), -4, fine);
      expect(regionArea(back)).toBeCloseTo(regionArea(hull), 1);
    }
  });
});

describe('a wrong call', () => {
  const line = polyline([0, 0], [10, 0]);

  it.each([
    ['distance', Number.NaN, round], ['distance', Infinity, round], ['tolerance', 5, { ...round, tolerance: 0 }],
    ['tolerance', 5, { ...round, tolerance: Number.NaN }], ['miter limit', 5, { ...round, miterLimit: 0.5 }],
  ])('is refused by naming the %s', (what, distance, options) => {
    expect(() => offsetPath(line, distance, options)).toThrow(RangeError);
    expect(() => offsetPath(line, distance, options)).toThrow(what);
    expect(() => offsetRegion(solid(rectangle(0, 0, 9, 9)), distance, options)).toThrow(what);
  });

  it('is refused for coordinates that are no numbers', () => {
    expect(() => offsetPath(polyline([0, 0], [Number.NaN, 5]), 5, round)).toThrow(RangeError);
    expect(() => offsetPath(polyline([0, 0], [Infinity, 5]), 5, round)).toThrow(RangeError);
    expect(() => offsetPath(polyline([Number.NaN, 0]), 5, round)).toThrow(RangeError);
    expect(() => offsetPath(polyline([0, 0], [1e308, 5]), 5, round)).toThrow(RangeError);
  });
});
