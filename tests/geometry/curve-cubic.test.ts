import { describe, expect, it } from 'vitest';
import {
  type Cubic, cubicCurvature, cubicDerivative, cubicExtrema, cubicLength, cubicPiece, cubicPoint, cubicSecondDerivative, cubicTangent, curvatureExtrema, distance, splitCubic,
} from '../../src/geometry/index.ts';
import { rootsBetween } from '../../src/geometry/polynomial.ts';
import { seeded } from '../support/random.ts';

const random = seeded(12);
const point = () => ({ x: random() * 100 - 50, y: random() * 100 - 50 });
const randomCubic = (): Cubic => [point(), point(), point(), point()];
const cubics = Array.from({ length: 60 }, randomCubic);

/** A parabola y = x^2 / (2 p) from 0 to x, raised to a cubic. */
const parabola = (p: number, x: number): Cubic => {
  const [c, e] = [{ x: x / 2, y: 0 }, { x, y: (x * x) / (2 * p) }];
  return [{ x: 0, y: 0 }, { x: (2 * c.x) / 3, y: 0 }, { x: (e.x + 2 * c.x) / 3, y: e.y / 3 }, e];
};

describe('a cubic', () => {
  it('starts and ends at its outer control points, along its handles', () => {
    for (const cubic of cubics) {
      expect([cubicPoint(cubic, 0), cubicPoint(cubic, 1)]).toEqual([cubic[0], cubic[3]]);
      const d = cubicDerivative(cubic, 0);
      expect(d.x).toBeCloseTo(3 * (cubic[1].x - cubic[0].x), 9);
    }
  });

  it('has the derivatives that small differences show', () => {
    for (const cubic of cubics) {
      const [t, h] = [random() * 0.9 + 0.05, 1e-5];
      const slope = (cubicPoint(cubic, t + h).x - cubicPoint(cubic, t - h).x) / (2 * h);
      expect(cubicDerivative(cubic, t).x).toBeCloseTo(slope, 4);
      const bend = (cubicDerivative(cubic, t + h).y - cubicDerivative(cubic, t - h).y) / (2 * h);
      expect(cubicSecondDerivative(cubic, t).y).toBeCloseTo(bend, 3);
    }
  });

  it('is unchanged by splitting', () => {
    for (const cubic of cubics) {
      const [before, after] = splitCubic(cubic, 0.3);
      expect(distance(cubicPoint(before, 0.5), cubicPoint(cubic, 0.15))).toBeLessThan(1e-12);
      expect(distance(cubicPoint(after, 0.5), cubicPoint(cubic, 0.65))).toBeLessThan(1e-12);
      expect(distance(cubicPoint(cubicPiece(cubic, 0.2, 0.7), 0.5), cubicPoint(cubic, 0.45))).toBeLessThan(1e-12);
    }
  });

  it('has its extremes where no other place goes farther', () => {
    for (const cubic of cubics) {
      const places = [0, 1, ...cubicExtrema(cubic)].map((t) => cubicPoint(cubic, t));
      const tried = Array.from({ length: 501 }, (_, i) => cubicPoint(cubic, i / 500));
      expect(Math.max(...tried.map(({ x }) => x))).toBeLessThanOrEqual(Math.max(...places.map(({ x }) => x)) + 1e-12);
      expect(Math.min(...tried.map(({ y }) => y))).toBeGreaterThanOrEqual(Math.min(...places.map(({ y }) => y)) - 1e-12);
    }
  });

  it('has its greatest curvature among the places named', () => {
    for (const cubic of cubics) {
      const named = Math.max(...curvatureExtrema(cubic).map((t) => Math.abs(cubicCurvature(cubic, t))));
      const tried = Math.max(...Array.from({ length: 999 }, (_, i) => Math.abs(cubicCurvature(cubic, (i + 1) / 1000))));
      expect(tried).toBeLessThanOrEqual(named * (1 + 1e-9));
      expect(named).toBeLessThan(Math.max(tried * 2, 1));
    }
  });

  it('has a tangent where a handle has no length, and at a cusp', () => {
    const p = { x: 0, y: 0 };
    expect(cubicTangent([p, p, { x: 1, y: 1 }, { x: 2, y: 0 }], 0).x).toBeCloseTo(Math.SQRT1_2, 12);
    expect(cubicTangent([p, { x: 1, y: 1 }, { x: 2, y: 0 }, { x: 2, y: 0 }], 1)).toEqual({ x: expect.closeTo(Math.SQRT1_2, 12), y: expect.closeTo(-Math.SQRT1_2, 12) });
    expect(cubicTangent([p, p, { x: 0, y: 5 }, { x: 0, y: 5 }], 0)).toEqual({ x: 0, y: 1 });
    expect(cubicTangent([p, p, p, p], 0)).toEqual({ x: 0, y: 0 });
  });
});

describe('the length of a cubic', () => {
  // The length of a parabola has a closed form: x/2 sqrt(1 + u^2) + p/2 asinh(u), u = x / p (text-book).
  it.each([[10, 30], [1, 100], [500, 3], [0.01, 50]])('agrees with the closed form for a parabola with p %d up to x %d', (p, x) => {
    const u = x / p;
    const exact = (x / 2) * Math.sqrt(1 + u * u) + (p / 2) * Math.asinh(u);
    expect(Math.abs(cubicLength(parabola(p, x)) / exact - 1)).toBeLessThan(1e-9);
  });

  it('is right across a cusp', () => {
    // (0,0) (1,1) (0,1) (1,0) has a cusp at its middle; length from 200 000 chords.
    const cusp: Cubic = [{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }, { x: 1, y: 0 }];
    let chords = 0;
    for (let i = 0; i < 200_000; i++) chords += distance(cubicPoint(cusp, i / 200_000), cubicPoint(cusp, (i + 1) / 200_000));
    expect(Math.abs(cubicLength(cusp) - chords)).toBeLessThan(1e-8);
  });

  it('of parts adds up, and of a point is zero', () => {
    for (const cubic of cubics.slice(0, 20)) expect(cubicLength(cubic, 0, 0.37) + cubicLength(cubic, 0.37, 1)).toBeCloseTo(cubicLength(cubic), 9);
    const p = { x: 4, y: 2 };
    expect(cubicLength([p, p, p, p])).toBe(0);
  });
});

describe('roots of a polynomial', () => {
  it('are all found, in order', () => {
    // (x - 0.1)(x - 0.2)(x - 0.5)(x - 0.9)
    const found = rootsBetween([0.009, -0.163, 0.89, -1.7, 1], 0, 1);
    expect(found).toHaveLength(4);
    found.forEach((root, i) => expect(root).toBeCloseTo([0.1, 0.2, 0.5, 0.9][i]!, 9));
  });

  it('count once where the polynomial only touches zero, and not outside the interval', () => {
    expect(rootsBetween([0.25, -1, 1], 0, 1)).toEqual([expect.closeTo(0.5, 7)]);
    expect(rootsBetween([2, 1], 0, 1)).toEqual([]);
    expect(rootsBetween([0, 0, 0], 0, 1)).toEqual([]);
    expect(rootsBetween([7], 0, 1)).toEqual([]);
  });
});
