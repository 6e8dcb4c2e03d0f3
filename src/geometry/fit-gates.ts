import { dot, leftNormal, normalize, type Point, scale, add, subtract, type Vector } from './point.ts';

/** A place for pieces to meet: near a point of the polyline, with the direction of the curve there. */
export interface Gate {
  readonly point: Point;
  /** Unit vector in the direction of travel. */
  readonly tangent: Vector;
}

/** Half widths, in points, of the windows tried for the direction at a point. */
const WINDOWS = [2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64];

/** What the local curve may miss its points by, as a share of the tolerance: above rounding, below what the fit needs. */
const WINDOW_SHARE = 0.2;

/**
 * The curve's place and direction at point `index`, from a cubic through as wide a window of points between `low` and
 * `high` as one cubic follows. The place moves along the normal only, so that the polyline's point stays abreast of it.
 */
export function gateAt(at: (index: number) => Point, index: number, [low, high]: readonly [number, number], tolerance: number): Gate {
  let gate = chordGate(at, index, low, high);
  for (const reach of WINDOWS) {
    const window = [Math.max(low, index - reach), Math.min(high, index + reach)] as const;
    const fitted = windowGate(at, index, window, WINDOW_SHARE * tolerance);
    if (fitted === undefined) break;
    gate = fitted;
    if (window[0] === low && window[1] === high) break;
  }
  return gate;
}

/** The direction of the circle through the point and its neighbours: each chord weighs with the other's length. */
function chordGate(at: (index: number) => Point, index: number, low: number, high: number): Gate {
  const point = at(index);
  const before = subtract(point, at(Math.max(low, index - 1)));
  const after = subtract(at(Math.min(high, index + 1)), point);
  const [a, b] = [dot(before, before), dot(after, after)];
  return { point, tangent: normalize(add(scale(before, b), scale(after, a))) };
}

function windowGate(at: (index: number) => Point, index: number, [from, to]: readonly [number, number], most: number): Gate | undefined {
  const origin = at(index);
  const axis = normalize(subtract(at(to), at(from)));
  const normal = leftNormal(axis);
  const across: number[] = [];
  const along: number[] = [];
  for (let i = from; i <= to; i++) {
    const v = subtract(at(i), origin);
    along.push(dot(v, axis));
    across.push(dot(v, normal));
    // A window that doubles back is no function over its chord.
    if (i > from && along.at(-1)! <= along.at(-2)!) return undefined;
  }
  const width = Math.max(-along[0]!, along.at(-1)!);
  const scaled = along.map((x) => x / width);
  const fit = polynomialFit(scaled, across, along.length >= 7 ? 4 : 3);
  if (fit === undefined || fit.worst > most) return undefined;
  const slope = fit.coefficients[1]! / width;
  const tangent = normalize(add(axis, scale(normal, slope)));
  return { point: add(origin, scale(leftNormal(tangent), fit.coefficients[0]! / Math.hypot(1, slope))), tangent };
}

/** Least squares polynomial with `terms` coefficients, lowest power first, and its greatest residual. */
function polynomialFit(xs: readonly number[], ys: readonly number[], terms: number): { coefficients: number[]; worst: number } | undefined {
  if (xs.length < terms) return undefined;
  const moments = new Array<number>(2 * terms - 1).fill(0);
  const right = new Array<number>(terms).fill(0);
  xs.forEach((x, i) => {
    let power = 1;
    for (let k = 0; k < moments.length; k++, power *= x) {
      moments[k]! += power;
      if (k < terms) right[k]! += power * ys[i]!;
    }
  });
  const coefficients = solved(Array.from({ length: terms }, (_, r) => [...moments.slice(r, r + terms), right[r]!]));
  if (coefficients === undefined) return undefined;
  const worst = xs.reduce((most, x, i) => Math.max(most, Math.abs(coefficients.reduceRight((sum, c) => sum * x + c, 0) - ys[i]!)), 0);
  return { coefficients, worst };
}

/** Gaussian elimination of the augmented rows; undefined when the system is singular. */
function solved(rows: number[][]): number[] | undefined {
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let r = k + 1; r < size; r++) if (Math.abs(rows[r]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = r;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    const head = rows[k]!;
    if (Math.abs(head[k]!) < 1e-10) return undefined;
    for (const row of rows) {
      if (row === head) continue;
      const factor = row[k]! / head[k]!;
      for (let c = k; c <= size; c++) row[c]! -= factor * head[c]!;
    }
  }
  return rows.map((row, k) => row[size]! / row[k]!);
}
