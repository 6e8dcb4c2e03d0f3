import { describe, expect, it } from 'vitest';
import {
  type Cubic, type Path, type Point, applyToPath, cubicCurvature, distance, flattenPath, leastRadius, lengthenPath, pathBounds, pathFromCubics, pathLength, polylinePath, rotation, samplePath, ellipticalArcToCubics,
} from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { distanceToPolyline } from './curve-shapes.ts';

const arcPath = (radius: number, degrees: number, clockwise = false): Path => {
  const angle = ((clockwise ? -1 : 1) * degrees * Math.PI) / 180;
  const end = degrees === 360 ? { x: radius, y: 0 } : { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  return { start: { x: radius, y: 0 }, segments: [{ kind: 'arc', end, centre: { x: 0, y: 0 }, clockwise }], closed: degrees === 360 };
};

const ellipse = (a: number, b: number): Path => {
  const [right, left] = [{ x: a, y: 0 }, { x: -a, y: 0 }];
  const half = (start: Point, end: Point) => ellipticalArcToCubics(start, { radiusX: a, radiusY: b, rotation: 0, large: false, sweep: true, end }, 1e-6);
  return pathFromCubics(right, [...half(right, left), ...half(left, right)].map(([, c, d, e]) => [c, d, e]), true);
};

const arch: Path = {
  start: { x: 0, y: 0 },
  segments: [{ kind: 'line', end: { x: 0, y: 30 } }, { kind: 'arc', end: { x: 40, y: 30 }, centre: { x: 20, y: 30 }, clockwise: true }, { kind: 'cubic', control1: { x: 40, y: 10 }, control2: { x: 60, y: 0 }, end: { x: 90, y: 0 } }],
  closed: false,
};

describe('the length of a path', () => {
  // s = r phi (Machinery's Handbook, segments of circles; from memory).
  it.each([[40, 135, 94.248], [50, 360, 314.159]])('of an arc of radius %d over %d degrees is %d', (radius, degrees, length) => {
    expect(pathLength(arcPath(radius, degrees))).toBeCloseTo(length, 3);
    expect(Math.abs(pathLength(arcPath(radius, degrees)) / ((radius * degrees * Math.PI) / 180) - 1)).toBeLessThan(1e-12);
  });

  // Perimeter of the ellipse 50, 20: 230.13 (complete elliptic integral, text-book).
  it('of the ellipse with half axes 50 and 20 is 230.13', () => {
    expect(pathLength(ellipse(50, 20))).toBeCloseTo(230.13, 2);
  });

  it('is zero for a point', () => {
    expect(pathLength({ start: { x: 1, y: 1 }, segments: [], closed: true })).toBe(0);
  });
});

describe('the box around a path', () => {
  it('touches the curve, not its control points', () => {
    expect(pathBounds(arch)).toEqual({ minX: 0, minY: 0, maxX: 90, maxY: 50 });
    expect(pathBounds(arcPath(50, 360))).toEqual({ minX: -50, minY: -50, maxX: 50, maxY: 50 });
    expect(pathBounds(arcPath(50, 100, true))).toEqual({ minX: expect.closeTo(-8.6824, 4), minY: expect.closeTo(-50, 9), maxX: 50, maxY: 0 });
    const box = pathBounds(ellipse(50, 20));
    expect([box.minX, box.maxX, box.minY, box.maxY]).toEqual([-50, 50, -20, 20].map((v) => expect.closeTo(v, 5)));
  });

  it('contains a fine polyline along the path, and nothing more, however it is turned', () => {
    for (let degrees = 0; degrees < 360; degrees += 17) {
      const turned = applyToPath(rotation(degrees), arch);
      const box = pathBounds(turned);
      const xs = flattenPath(turned, 1e-4).map(({ x }) => x);
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(box.minX - 1e-9);
      expect(Math.max(...xs)).toBeLessThanOrEqual(box.maxX + 1e-9);
      expect(Math.max(...xs)).toBeGreaterThan(box.maxX - 2e-4);
    }
  });

  it('of a point is that point', () => {
    expect(pathBounds({ start: { x: 1, y: 2 }, segments: [], closed: false })).toEqual({ minX: 1, minY: 2, maxX: 1, maxY: 2 });
  });
});

describe('samples along a path', () => {
  it('lie on it at even distances, both ends included', () => {
    const samples = samplePath(arch, 1);
    const fine = flattenPath(arch, 1e-5);
    const total = pathLength(arch);
    expect(samples).toHaveLength(Math.ceil(total) + 1);
    expect(samples[0]!.point).toEqual(arch.start);
    expect(distance(samples.at(-1)!.point, { x: 90, y: 0 })).toBeLessThan(1e-9);
    samples.forEach(({ point, distance: along }, i) => {
      expect(along).toBeCloseTo((i * total) / (samples.length - 1), 9);
      expect(distanceToPolyline(point, fine)).toBeLessThan(2e-5);
    });
  });

  it('are as far apart along the curve as they say', () => {
    const samples = samplePath({ ...arch, start: { x: 40, y: 30 }, segments: arch.segments.slice(2) }, 0.01);
    for (let i = 1; i < samples.length; i++) expect(distance(samples[i]!.point, samples[i - 1]!.point)).toBeCloseTo(samples[1]!.distance, 7);
  });

  it('carry the tangent and the signed curvature', () => {
    for (const { point, tangent, curvature } of samplePath(arcPath(25, 200), 3)) {
      expect(point.x * tangent.x + point.y * tangent.y).toBeCloseTo(0, 9);
      expect(Math.hypot(tangent.x, tangent.y)).toBeCloseTo(1, 12);
      expect(curvature).toBeCloseTo(1 / 25, 12);
    }
    expect(samplePath(arcPath(25, 200, true), 3)[5]!.curvature).toBeCloseTo(-1 / 25, 12);
  });

  it('of a closed path leave out its end, which is its start', () => {
    expect(samplePath(arcPath(50, 360), pathLength(arcPath(50, 360)) / 8)).toHaveLength(8);
    expect(samplePath(polylinePath([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }], true), 100)).toHaveLength(1);
  });

  it('of a point are that point once', () => {
    expect(samplePath({ start: { x: 1, y: 1 }, segments: [], closed: false }, 1)).toEqual([{ point: { x: 1, y: 1 }, tangent: { x: 0, y: 0 }, curvature: 0, distance: 0 }]);
  });

  it('are refused for a spacing that is not positive or absurdly small', () => {
    for (const spacing of [0, -1, NaN, 1e-9]) expect(() => samplePath(arch, spacing)).toThrow(RangeError);
  });
});

describe('the least radius', () => {
  // Ellipse: least radius b^2 / a at the ends of the long axis (text-book; Farouki and Neff, CAGD 7, 1990, 83-99, use it for offsets).
  it('of the ellipse 50, 20 is 8, at the end of the long axis', () => {
    const { radius, at, distance: along } = leastRadius(ellipse(50, 20));
    expect(Math.abs(radius - 8)).toBeLessThan(0.02);
    expect(Math.abs(at.x)).toBeGreaterThan(49.9);
    expect(Math.abs(along - Math.round(along / (230.13 / 2)) * (230.13 / 2))).toBeLessThan(2.5);
  });

  it('of an arc is its radius, of straight lines infinite', () => {
    expect(leastRadius(arcPath(25, 80)).radius).toBeCloseTo(25, 9);
    expect(leastRadius(polylinePath([{ x: 0, y: 0 }, { x: 5, y: 5 }, { x: 9, y: 9 }], false)).radius).toBe(Infinity);
    expect(leastRadius({ start: { x: 0, y: 0 }, segments: [], closed: false }).radius).toBe(Infinity);
  });

  it('is zero at a corner over one degree, also where a closed path closes', () => {
    const bent = (degrees: number) => polylinePath([{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10 + 10 * Math.cos((degrees * Math.PI) / 180), y: 10 * Math.sin((degrees * Math.PI) / 180) }], false);
    expect(leastRadius(bent(2))).toEqual({ radius: 0, at: { x: 10, y: 0 }, distance: 10 });
    expect(leastRadius(bent(0.5)).radius).toBe(Infinity);
    const drop: Path = { start: { x: 0, y: 0 }, segments: [{ kind: 'cubic', control1: { x: 40, y: 40 }, control2: { x: -40, y: 40 }, end: { x: 0, y: 0 } }], closed: true };
    expect(leastRadius(drop).radius).toBe(0);
    expect(leastRadius({ ...drop, closed: false }).radius).toBeGreaterThan(1);
  });

  it('is zero at a cusp', () => {
    expect(leastRadius(pathFromCubics({ x: 0, y: 0 }, [[{ x: 1, y: 1 }, { x: 0, y: 1 }, { x: 1, y: 0 }]], false)).radius).toBeLessThan(1e-6);
  });

  it('passes over the first degree beside a handle of no length', () => {
    const soft = pathFromCubics({ x: 0, y: 0 }, [[{ x: 0, y: 0 }, { x: 60, y: 0 }, { x: 100, y: 40 }]], false);
    const turned = samplePath(soft, 0.005).find(({ tangent }) => Math.atan2(tangent.y, tangent.x) >= Math.PI / 180)!;
    expect(leastRadius(soft).radius * turned.curvature).toBeCloseTo(1, 2);
    expect(leastRadius(soft).distance).toBeCloseTo(turned.distance, 1);
    expect(leastRadius(pathFromCubics({ x: 0, y: 0 }, [[{ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 9, y: 0 }]], false)).radius).toBe(Infinity);
  });

  it('is found in a random cubic as well as by trying everywhere', () => {
    const random = seeded(31);
    const point = () => ({ x: random() * 100, y: random() * 100 });
    for (let i = 0; i < 15; i++) {
      const cubic: Cubic = [point(), point(), point(), point()];
      const { radius } = leastRadius(pathFromCubics(cubic[0], [[cubic[1], cubic[2], cubic[3]]], false));
      let tried = Infinity;
      for (let k = 0; k <= 10_000; k++) tried = Math.min(tried, 1 / Math.abs(cubicCurvature(cubic, k / 10_000)));
      expect(radius).toBeLessThanOrEqual(tried * (1 + 1e-9));
      expect(radius).toBeGreaterThan(tried * 0.95);
    }
  });
});

describe('lengthening a path', () => {
  it('adds straight lines along its ends', () => {
    const longer = lengthenPath(arch, 5);
    expect(longer.start).toEqual({ x: 0, y: -5 });
    expect(pathLength(longer)).toBeCloseTo(pathLength(arch) + 10, 9);
    expect(leastRadius(longer).radius).toBeCloseTo(leastRadius(arch).radius, 9);
  });

  it('leaves points, closed paths and an amount of zero alone', () => {
    const point: Path = { start: { x: 0, y: 0 }, segments: [], closed: false };
    expect([lengthenPath(point, 5), lengthenPath(arcPath(5, 360), 5), lengthenPath(arch, 0)]).toEqual([point, arcPath(5, 360), arch]);
    expect(() => lengthenPath(arch, -1)).toThrow(RangeError);
  });
});
