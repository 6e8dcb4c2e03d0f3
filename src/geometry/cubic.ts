import { rootsBetween } from './polynomial.ts';
import { add, cross, length, lerp, normalize, type Point, scale, subtract, type Vector } from './point.ts';

/** Start, two control points, end. */
export type Cubic = readonly [Point, Point, Point, Point];

export function cubicPoint([p0, p1, p2, p3]: Cubic, t: number): Point {
  const s = 1 - t;
  const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return { x: a * p0.x + b * p1.x + c * p2.x + d * p3.x, y: a * p0.y + b * p1.y + c * p2.y + d * p3.y };
}

/** dB/dt. */
export function cubicDerivative([p0, p1, p2, p3]: Cubic, t: number): Vector {
  const s = 1 - t;
  const [a, b, c] = [3 * s * s, 6 * s * t, 3 * t * t];
  return {
    x: a * (p1.x - p0.x) + b * (p2.x - p1.x) + c * (p3.x - p2.x),
    y: a * (p1.y - p0.y) + b * (p2.y - p1.y) + c * (p3.y - p2.y),
  };
}

/** The second derivative of B by t. */
export function cubicSecondDerivative([p0, p1, p2, p3]: Cubic, t: number): Vector {
  const [a, b] = [6 * (1 - t), 6 * t];
  return { x: a * (p2.x - 2 * p1.x + p0.x) + b * (p3.x - 2 * p2.x + p1.x), y: a * (p2.y - 2 * p1.y + p0.y) + b * (p3.y - 2 * p2.y + p1.y) };
}

/** Unit tangent; where the derivative vanishes (handles of no length, cusps) the limit from inside the curve. Zero only for a single point. */
export function cubicTangent(cubic: Cubic, t: number): Vector {
  const first = cubicDerivative(cubic, t);
  const size = controlSize(cubic);
  if (length(first) > 1e-9 * size) return normalize(first);
  const second = scale(cubicSecondDerivative(cubic, t), t < 1 ? 1 : -1);
  if (length(second) > 1e-9 * size) return normalize(second);
  return normalize(subtract(cubic[3], cubic[0]));
}

const controlSize = ([p0, p1, p2, p3]: Cubic) => length(subtract(p1, p0)) + length(subtract(p2, p1)) + length(subtract(p3, p2));

/** Signed curvature in 1/mm, positive where the curve turns left; infinite at a cusp, 0 on a straight line or point. */
export function cubicCurvature(cubic: Cubic, t: number): number {
  const first = cubicDerivative(cubic, t);
  const turn = cross(first, cubicSecondDerivative(cubic, t));
  const speed = length(first);
  return turn === 0 ? 0 : turn / speed ** 3;
}

/** The cubic cut at `t`, by de Casteljau's construction. */
export function splitCubic([p0, p1, p2, p3]: Cubic, t: number): readonly [Cubic, Cubic] {
  const [a, b, c] = [lerp(p0, p1, t), lerp(p1, p2, t), lerp(p2, p3, t)];
  const [d, e] = [lerp(a, b, t), lerp(b, c, t)];
  const middle = lerp(d, e, t);
  return [[p0, a, d, middle], [middle, e, c, p3]];
}

/** The part of the cubic from `t0` to `t1`. */
export function cubicPiece(cubic: Cubic, t0: number, t1: number): Cubic {
  const [, after] = splitCubic(cubic, t0);
  return t1 >= 1 ? after : splitCubic(after, (t1 - t0) / (1 - t0))[0];
}

/** Parameters strictly inside (0, 1) where x or y is greatest or least. */
export function cubicExtrema([p0, p1, p2, p3]: Cubic): number[] {
  const along = (a: number, b: number, c: number, d: number) => rootsBetween([b - a, 2 * (c - 2 * b + a), d - 3 * c + 3 * b - a], 0, 1);
  return [...along(p0.x, p1.x, p2.x, p3.x), ...along(p0.y, p1.y, p2.y, p3.y)].filter((t) => t > 0 && t < 1);
}

/**
 * Parameters in [0, 1] where the curvature may be greatest or least: the ends, its stationary points, and cusps.
 * They are the zeros of k' = (B' x B''') |B'|^2 - 3 (B' x B'') (B' . B'').
 */
export function curvatureExtrema(cubic: Cubic): number[] {
  const first = derivativeCoefficients(cubic);
  const turn = crossCoefficients(first);
  const speed = sum(product(first.x, first.x), product(first.y, first.y));
  // (B' x B'')' = B' x B''' and (|B'|^2)' = 2 B' . B''.
  const stationary = sum(product(derived(turn), speed), product(turn, derived(speed)).map((c) => -1.5 * c));
  return [0, ...rootsBetween(stationary, 0, 1), ...rootsBetween(derived(speed), 0, 1), 1];
}

interface Coefficients {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** B' as polynomials in t, lowest power first. */
function derivativeCoefficients([p0, p1, p2, p3]: Cubic): Coefficients {
  const along = (a: number, b: number, c: number, d: number) => [3 * (b - a), 6 * (c - 2 * b + a), 3 * (d - 3 * c + 3 * b - a)];
  return { x: along(p0.x, p1.x, p2.x, p3.x), y: along(p0.y, p1.y, p2.y, p3.y) };
}

const crossCoefficients = ({ x, y }: Coefficients) => sum(product(x, derived(y)), product(y, derived(x)).map((c) => -c));
const derived = (p: readonly number[]) => p.slice(1).map((c, i) => c * (i + 1));
const sum = (p: readonly number[], q: readonly number[]) => Array.from({ length: Math.max(p.length, q.length) }, (_, i) => (p[i] ?? 0) + (q[i] ?? 0));

function product(p: readonly number[], q: readonly number[]): number[] {
  const result = new Array<number>(p.length + q.length - 1).fill(0);
  p.forEach((a, i) => q.forEach((b, j) => (result[i + j]! += a * b)));
  return result;
}

/** Arc length in mm from parameter `t0` to `t1`, to about 1e-11 of the cubic's size. */
export function cubicLength(cubic: Cubic, t0 = 0, t1 = 1): number {
  const size = controlSize(cubic);
  return size === 0 ? 0 : refinedLength(cubic, [t0, t1], gaussLength(cubic, t0, t1), 1e-12 * size, 0);
}

/** Halves until two halves agree with the whole. 24 halvings end the search beside a cusp, where what is left is nothing. */
function refinedLength(cubic: Cubic, [t0, t1]: readonly [number, number], whole: number, error: number, depth: number): number {
  const middle = (t0 + t1) / 2;
  const [left, right] = [gaussLength(cubic, t0, middle), gaussLength(cubic, middle, t1)];
  if (Math.abs(left + right - whole) <= error || depth >= 24) return left + right;
  return refinedLength(cubic, [t0, middle], left, error, depth + 1) + refinedLength(cubic, [middle, t1], right, error, depth + 1);
}

/** Abscissae and weights of Gauss-Legendre quadrature with 8 points on [-1, 1] (Abramowitz and Stegun, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.1834346424956498, 0.3626837833783620],
  [0.5255324099163290, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
];

function gaussLength(cubic: Cubic, t0: number, t1: number): number {
  const [middle, half] = [(t0 + t1) / 2, (t1 - t0) / 2];
  let total = 0;
  for (const [abscissa, weight] of GAUSS) {
    total += weight * (length(cubicDerivative(cubic, middle - half * abscissa)) + length(cubicDerivative(cubic, middle + half * abscissa)));
  }
  return total * half;
}

/** The straight cubic from `start` to `end`, with even speed. */
export const straightCubic = (start: Point, end: Point): Cubic => [
  start,
  add(start, scale(subtract(end, start), 1 / 3)),
  add(end, scale(subtract(start, end), 1 / 3)),
  end,
];
