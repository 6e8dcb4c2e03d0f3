import { turnBetween } from './biarc.ts';
import { add, dot, leftNormal, length, normalize, type Point, rotate, scale, subtract, type Vector } from './point.ts';

/** A place for pieces to meet: near a point of the polyline, with the direction of the curve there. */
export interface Gate {
  readonly point: Point;
  /** Unit vector in the direction of travel. */
  readonly tangent: Vector;
}

/** What a gate may reckon with, mm. */
interface Limits {
  readonly noise: number;
  readonly tolerance: number;
}

/** Half widths, in points, of the windows tried for the direction at a point. */
const WINDOWS = [2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64];

/** What the local curve may miss its points by, as a share of the tolerance: above rounding, below what the fit needs. */
const WINDOW_SHARE = 0.2;

/** On a rougher polyline, as a multiple of its noise. */
const WINDOW_NOISE = 1.5;

/** The change of curvature counts when its part in the local curve is so many times what that curve misses points by. */
const SIGNIFICANT = 4;

/** Directions are turned as for this share of the room there is: turned for all of it, shorter arcs would not fit. */
const ROOM_SHARE = 0.8;

/** A gate lies at most this share of the tolerance from its point, so that a straight line between two gates always fits. */
const MOST_OFFSET = 0.5;

/** Neighbours on each side whose misfit to a cubic is called noise; up to so many places are asked. */
const NOISE_REACH = 6;
const NOISE_PLACES = 64;

/** How far the polyline's points stray from smooth, mm: the median over some places of the worst misfit there. */
export function noiseOf(at: (index: number) => Point, count: number, tolerance: number): number {
  const step = Math.max(1, Math.floor((count - 2 * NOISE_REACH) / NOISE_PLACES));
  const misfits: number[] = [];
  for (let i = NOISE_REACH; i < count - NOISE_REACH; i += step) {
    const fit = windowFit(at, i, [i - NOISE_REACH, i + NOISE_REACH]);
    if (fit !== undefined) misfits.push(fit.worst);
  }
  const median = misfits.sort((a, b) => a - b)[misfits.length >> 1] ?? 0;
  return Math.min(median, tolerance / 2);
}

/**
 * The curve's place and direction at point `index`, from a cubic through as wide a window of points between `low` and
 * `high` as one cubic follows. The place moves along the normal only, so that the polyline's point stays abreast of it: onto
 * the curve, and by half a chord's sagitta to its inner side, midway between the points and the chords. The direction is turned for arcs, see `turnedForArcs`.
 */
export function gateAt(at: (index: number) => Point, index: number, [low, high]: readonly [number, number], limits: Limits): Gate {
  const most = Math.max(WINDOW_SHARE * limits.tolerance, WINDOW_NOISE * limits.noise);
  let fitted: WindowFit | undefined;
  for (const reach of WINDOWS) {
    const window = [Math.max(low, index - reach), Math.min(high, index + reach)] as const;
    const wider = windowFit(at, index, window);
    if (wider === undefined || wider.worst > most) break;
    fitted = wider;
    if (window[0] === low && window[1] === high) break;
  }
  const chords = chordsAt(at, index, low, high);
  if (fitted === undefined) return { point: at(index), tangent: nearLongerChord(circleTangent(chords), chords, limits) };
  const tangent = nearLongerChord(normalize(add(fitted.axis, scale(leftNormal(fitted.axis), fitted.slope))), chords, limits);
  const sagitta = (fitted.curvature * Math.min(...chords.map(length).filter((size) => size > 0)) ** 2) / 8;
  const offset = fitted.offset / Math.hypot(1, fitted.slope) + sagitta / 2;
  const farthest = MOST_OFFSET * limits.tolerance;
  const point = add(at(index), scale(leftNormal(tangent), Math.max(-farthest, Math.min(farthest, offset))));
  const room = limits.tolerance - limits.noise - Math.abs(sagitta) / 2;
  return { point, tangent: turnedForArcs(tangent, fitted.curvatureChange, ROOM_SHARE * Math.max(room, limits.tolerance / 4)) };
}

/** The chords before and after the point; one is zero at the end of the window. */
const chordsAt = (at: (index: number) => Point, index: number, low: number, high: number): readonly [Vector, Vector] => [
  subtract(at(index), at(Math.max(low, index - 1))),
  subtract(at(Math.min(high, index + 1)), at(index)),
];

/** The direction of the circle through the point and its neighbours: each chord weighs with the square of the other's length. */
function circleTangent([before, after]: readonly [Vector, Vector]): Vector {
  const [a, b] = [dot(before, before), dot(after, after)];
  if (a === 0 || b === 0) return normalize(add(before, after));
  return normalize(add(scale(before, b), scale(after, a)));
}

/**
 * The direction, kept as near to the longer chord beside the point as a chord that stands off its curve by at most half
 * the tolerance has to be: 4 x sagitta / length. Where a straight edge joins a finely divided arc, circles through
 * neighbouring points know nothing of it.
 */
function nearLongerChord(tangent: Vector, [before, after]: readonly [Vector, Vector], limits: Limits): Vector {
  const longer = length(before) > length(after) ? before : after;
  const most = (2 * (limits.tolerance + limits.noise)) / length(longer);
  const turn = turnBetween(normalize(longer), tangent);
  return Math.abs(turn) <= most ? tangent : rotate(normalize(longer), (Math.sign(turn) * most * 180) / Math.PI);
}

/**
 * Arcs tangent to each other follow a curve of steadily changing curvature k best when all their joints lie on the curve
 * with directions turned from its own by k' h^2 / 12, h being the arcs' length: the difference is then Bernoulli's
 * polynomial of degree 3, k' h^3 / 6 B3(s / h), of greatest value sqrt(3) / 36, a third of what arcs in the curve's own
 * directions at every second joint leave. h is the length at which that value is `room` mm.
 */
function turnedForArcs(tangent: Vector, change: number, room: number): Vector {
  if (change === 0) return tangent;
  const h = Math.cbrt((room * 6 * 36) / (Math.sqrt(3) * Math.abs(change)));
  return normalize(add(tangent, scale(leftNormal(tangent), (-change * h * h) / 12)));
}

/** A polynomial through a window of points, over the axis from its first to its last point. */
interface WindowFit {
  readonly axis: Vector;
  /** Height over the axis direction, slope and change of curvature at the point itself. */
  readonly offset: number;
  readonly slope: number;
  /** 1/mm, left positive. */
  readonly curvature: number;
  /** By arc length, 1/mm2; 0 when it does not stand out from the misfit. */
  readonly curvatureChange: number;
  /** Greatest misfit, mm. */
  readonly worst: number;
}

function windowFit(at: (index: number) => Point, index: number, [from, to]: readonly [number, number]): WindowFit | undefined {
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
  const fit = polynomialFit(along.map((x) => x / width), across, along.length >= 7 ? 4 : 3);
  if (fit === undefined) return undefined;
  const [offset, first, second, third = 0] = fit.coefficients as [number, number, number, number?];
  const slope = first / width;
  const change = Math.abs(third) > SIGNIFICANT * fit.worst ? curvatureChange(slope, (2 * second) / width ** 2, (6 * third) / width ** 3) : 0;
  const curvature = (2 * second) / width ** 2 / Math.hypot(1, slope) ** 3;
  return { axis, offset, slope, curvature, curvatureChange: change, worst: fit.worst };
}

/** dk/ds of a graph with the given first, second and third derivatives. */
const curvatureChange = (first: number, second: number, third: number) => {
  const speed = 1 + first * first;
  return (third * speed - 3 * first * second * second) / speed ** 3;
};

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
