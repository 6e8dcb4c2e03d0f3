import { describe, expect, it } from 'vitest';
import {
  type Path, type Point, closePath, cubicPoint, flattenPath, flattenSegment, isPointPath, pathEnd, pathLength, polylinePath, reversePath, arcAngles, arcPoint,
} from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { distanceToPolyline } from './curve-shapes.ts';

const circle = (r: number): Path => ({ start: { x: r, y: 0 }, segments: [{ kind: 'arc', end: { x: r, y: 0 }, centre: { x: 0, y: 0 }, clockwise: false }], closed: true });

describe('flattening an arc', () => {
  // Sagitta: e = r (1 - cos(th / 2)), segments n = ceil(2 pi / th) (Machinery's Handbook, segments of circles; from memory).
  it('takes 158 chords for a circle of radius 50 at 0.01, each 0.0098835 inside', () => {
    const points = flattenPath(circle(50), 0.01);
    expect(points).toHaveLength(158);
    expect(50 - Math.hypot((points[0]!.x + points[1]!.x) / 2, (points[0]!.y + points[1]!.y) / 2)).toBeCloseTo(0.0098835, 7);
  });

  it('keeps a shape for an arc smaller than the tolerance', () => {
    expect(flattenPath(circle(0.001), 0.01)).toHaveLength(4);
  });

  it('ends exactly at the arc\'s end, even when rounding made its radii differ', () => {
    const end = { x: 0.0004, y: 10.0003 };
    const points = flattenSegment({ x: 10, y: 0 }, { kind: 'arc', end, centre: { x: 0, y: 0 }, clockwise: true }, 0.01);
    expect(points.at(-1)).toEqual(end);
    expect(points.length).toBeGreaterThan(50);
  });
});

describe('flattening a cubic', () => {
  const random = seeded(9);
  const point = (): Point => ({ x: random() * 200, y: random() * 200 });

  it.each([1, 0.1, 0.01])('stays within %d mm, with points on the curve', (tolerance) => {
    for (let i = 0; i < 20; i++) {
      const [start, control1, control2, end] = [point(), point(), point(), point()];
      const line = [start, ...flattenSegment(start, { kind: 'cubic', control1, control2, end }, tolerance)];
      expect(line.at(-1)).toEqual(end);
      for (let t = 0; t <= 1; t += 1 / 97) expect(distanceToPolyline(cubicPoint([start, control1, control2, end], t), line)).toBeLessThanOrEqual(tolerance);
    }
  });

  it('uses few more chords than it must', () => {
    // A parabola's chords over even steps all stray alike, so the count is the least possible.
    const parabola = flattenSegment({ x: 0, y: 0 }, { kind: 'cubic', control1: { x: 20, y: 0 }, control2: { x: 40, y: 20 }, end: { x: 60, y: 60 } }, 0.01);
    const offset = 60 / 4 / parabola.length ** 2;
    expect(offset).toBeLessThanOrEqual(0.01);
    expect(60 / 4 / (parabola.length - 1) ** 2).toBeGreaterThan(0.01);
  });
});

describe('flattening a path', () => {
  const path: Path = { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 5, y: 0 } }, { kind: 'line', end: { x: 5, y: 0 } }, { kind: 'line', end: { x: 5, y: 5 } }, { kind: 'line', end: { x: 0, y: 0 } }], closed: true };

  it('repeats no point, not even the first one of a closed path', () => {
    expect(flattenPath(path, 0.1)).toEqual([{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 5, y: 5 }]);
  });

  it('of a single point is that point', () => {
    const p = { x: 1, y: 2 };
    for (const closed of [true, false]) {
      expect(flattenPath({ start: p, segments: [], closed }, 0.1)).toEqual([p]);
      expect(flattenPath({ start: p, segments: [{ kind: 'cubic', control1: p, control2: p, end: p }], closed }, 0.1)).toEqual([p]);
    }
  });

  it('refuses a tolerance that is not positive', () => {
    for (const tolerance of [0, -1, NaN]) expect(() => flattenPath(path, tolerance)).toThrow(RangeError);
  });

  it('ends in a bounded number of finite points whatever the size', () => {
    const huge = 1e300;
    const points = flattenPath({ start: { x: -huge, y: 0 }, segments: [{ kind: 'cubic', control1: { x: 0, y: huge }, control2: { x: huge, y: -huge }, end: { x: 1, y: 1 } }], closed: false }, 0.001);
    expect(points.length).toBeLessThanOrEqual(65_537);
    expect(points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
  });
});

describe('paths', () => {
  const arch: Path = {
    start: { x: 0, y: 0 },
    segments: [{ kind: 'line', end: { x: 0, y: 30 } }, { kind: 'arc', end: { x: 40, y: 30 }, centre: { x: 20, y: 30 }, clockwise: true }, { kind: 'cubic', control1: { x: 40, y: 10 }, control2: { x: 60, y: 0 }, end: { x: 90, y: 0 } }],
    closed: false,
  };

  it('run backwards over the same places', () => {
    const back = reversePath(arch);
    expect(flattenPath(back, 0.01).reverse().every((p) => distanceToPolyline(p, flattenPath(arch, 0.01)) < 1e-9)).toBe(true);
    expect(reversePath(back)).toEqual(arch);
    expect(pathLength(back)).toBeCloseTo(pathLength(arch), 9);
  });

  it('turn an arc the same way round its middle when reversed', () => {
    const [start, segment] = [{ x: 0, y: 30 }, arch.segments[1]!];
    if (segment.kind !== 'arc') throw new Error('the second segment is an arc');
    const top = arcPoint(arcAngles(start, segment), 0.5);
    expect(top.x).toBeCloseTo(20, 9);
    expect(top.y).toBeCloseTo(50, 9);
  });

  it('close by a line only where needed', () => {
    const square = [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }];
    expect(polylinePath(square, true).segments).toHaveLength(3);
    expect(polylinePath([...square, square[0]!], true).segments).toHaveLength(3);
    expect(polylinePath(square, false).segments).toHaveLength(2);
    expect(pathEnd(closePath(arch))).toEqual(arch.start);
    expect(closePath(closePath(arch))).toEqual(closePath(arch));
  });

  it('are a point only without any length', () => {
    const p = { x: 3, y: 3 };
    expect(isPointPath({ start: p, segments: [], closed: false })).toBe(true);
    expect(isPointPath({ start: p, segments: [{ kind: 'line', end: p }], closed: false })).toBe(true);
    expect(isPointPath({ start: p, segments: [{ kind: 'arc', end: p, centre: { x: 4, y: 3 }, clockwise: true }], closed: true })).toBe(false);
  });
});
