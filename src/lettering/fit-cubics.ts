import { add, type Cubic, cubicDerivative, cubicPoint, cubicSecondDerivative, dot, normalize, type Path, pathFromCubics, type Point, scale, subtract, type Vector } from '../geometry/index.ts';

/** Rounds of moving each point's parameter to its foot on the curve and solving again. */
const ROUNDS = 4;

/**
 * Cubics along points of a smooth curve, tangent-continuous, none of the points farther than `tolerance` mm from its cubic.
 * Points should be so close that the curve turns by less than 20 degrees from one to the next.
 */
export function fitCubics(points: readonly Point[], closed: boolean, tolerance: number): Path {
  const list = closed ? [...points, points[0]!] : points;
  if (list.length < 2) return { start: list[0]!, segments: [], closed };
  const tangents = unevenTangents(points, closed);
  if (closed) tangents.push(tangents[0]!);
  const cubics: Cubic[] = [];
  let [from, guess] = [0, 8];
  while (from < list.length - 1) {
    const { to, cubic } = farthestCubic({ list, tangents, tolerance }, from, guess);
    cubics.push(cubic);
    guess = to - from;
    from = to;
  }
  return pathFromCubics(list[0]!, cubics.map(([, c1, c2, end]) => [c1, c2, end] as const), closed);
}

/** Unit tangents from the two points on either side of each: exact for curves of fourth degree evenly sampled. */
export function tangentsOf(points: readonly Point[], closed: boolean): Vector[] {
  const n = points.length;
  const at = (i: number) => (closed ? points[((i % n) + n) % n]! : points[i]!);
  return points.map((_, i) => {
    if (closed || (i > 1 && i < n - 2)) return normalize(subtract(scale(subtract(at(i + 1), at(i - 1)), 8), subtract(at(i + 2), at(i - 2))));
    if (i > 0 && i < n - 1) return normalize(subtract(at(i + 1), at(i - 1)));
    const [a, b, c] = i === 0 ? [at(0), at(1), at(Math.min(2, n - 1))] : [at(n - 1), at(n - 2), at(Math.max(0, n - 3))];
    const out = n > 2 ? subtract(scale(subtract(b, a), 4), subtract(c, a)) : subtract(b, a);
    return normalize(i === 0 ? out : scale(out, -1));
  });
}

/** Unit tangents of the curve of fourth degree through five points about each, however they are spaced. */
export function unevenTangents(points: readonly Point[], closed: boolean): Vector[] {
  const n = points.length;
  const around = closed ? Math.min(2, (n - 1) >> 1) : 2;
  return points.map((_, i) => {
    const first = closed ? i - around : Math.max(0, Math.min(i - 2, n - 5));
    const last = closed ? i + around : Math.min(n - 1, first + 4);
    return tangentThrough(Array.from({ length: last - first + 1 }, (_, k) => points[(((first + k) % n) + n) % n]!), i - first);
  });
}

/** Direction at one of some points of the polynomial through them by chord lengths (Lagrange). */
function tangentThrough(points: readonly Point[], at: number): Vector {
  const along = [0];
  for (let i = 1; i < points.length; i++) along.push(along[i - 1]! + Math.max(1e-12, Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y)));
  const here = along[at]!;
  let [x, y] = [0, 0];
  points.forEach((point, j) => {
    if (j === at) return;
    const weight = along.reduce((product, u, m) => (m === j || m === at ? product : (product * (here - u)) / (along[j]! - u)), 1 / (along[j]! - here));
    x += weight * (point.x - points[at]!.x);
    y += weight * (point.y - points[at]!.y);
  });
  return normalize({ x, y });
}

interface Course {
  readonly list: readonly Point[];
  readonly tangents: readonly Vector[];
  readonly tolerance: number;
}

interface Reach {
  readonly to: number;
  readonly cubic: Cubic;
}

/** The cubic that gets farthest: spans doubled while they succeed, then the gap to the first failure halved. */
function farthestCubic(course: Course, from: number, guess: number): Reach {
  const last = course.list.length - 1;
  let best: Reach = { to: from + 1, cubic: fitted(course, from, from + 1).cubic };
  let [step, failed] = [Math.max(2, guess), last + 1];
  for (;;) {
    const to = Math.min(last, failed > last ? from + step : (best.to + failed) >> 1);
    if (to <= best.to) return best;
    const { cubic, worst } = fitted(course, from, to);
    if (worst <= course.tolerance) best = { to, cubic };
    else failed = to;
    if (best.to === last || failed - best.to <= 1) return best;
    step = 2 * (best.to - from);
  }
}

/** The best cubic found over a span with its end tangents, and the greatest distance of a point from its place on it. */
function fitted({ list, tangents, tolerance }: Course, from: number, to: number): { cubic: Cubic; worst: number } {
  const points = list.slice(from, to + 1);
  const [t1, t2] = [tangents[from]!, scale(tangents[to]!, -1)];
  let params = chordParams(points);
  let cubic = solved(points, params, t1, t2);
  let worst = worstOf(cubic, points, params);
  for (let round = 0; round < ROUNDS && worst > tolerance && worst < 60 * tolerance; round++) {
    params = params.map((t, i) => footParam(cubic, points[i]!, t));
    cubic = solved(points, params, t1, t2);
    worst = worstOf(cubic, points, params.map((t, i) => footParam(cubic, points[i]!, t)));
  }
  return { cubic, worst };
}

function chordParams(points: readonly Point[]): number[] {
  const along = [0];
  for (let i = 1; i < points.length; i++) along.push(along[i - 1]! + Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y));
  const total = along.at(-1)! || 1;
  return along.map((a) => a / total);
}

const worstOf = (cubic: Cubic, points: readonly Point[], params: readonly number[]) =>
  points.reduce((most, point, i) => {
    const at = cubicPoint(cubic, params[i]!);
    return Math.max(most, Math.hypot(at.x - point.x, at.y - point.y));
  }, 0);

/** One Newton step towards the foot of the perpendicular. */
function footParam(cubic: Cubic, point: Point, t: number): number {
  const off = subtract(cubicPoint(cubic, t), point);
  const [first, second] = [cubicDerivative(cubic, t), cubicSecondDerivative(cubic, t)];
  const slope = dot(first, first) + dot(off, second);
  return slope <= 0 ? t : Math.min(1, Math.max(0, t - dot(off, first) / slope));
}

/**
 * Least squares for the two handle lengths (P. Schneider, Graphics Gems, 1990); a third of the chord where that has no good answer. Few points on
 * a nearly straight piece hardly tell the two apart: handles that pass each other along the chord, where the curve would run back, are none.
 */
function solved(points: readonly Point[], params: readonly number[], t1: Vector, t2: Vector): Cubic {
  const [start, end] = [points[0]!, points.at(-1)!];
  let [a11, a12, a22, b1, b2] = [0, 0, 0, 0, 0];
  params.forEach((t, i) => {
    const s = 1 - t;
    const [w1, w2] = [3 * s * s * t, 3 * s * t * t];
    const [u, v] = [scale(t1, w1), scale(t2, w2)];
    const base = add(scale(start, s * s * s + w1), scale(end, t * t * t + w2));
    const gap = subtract(points[i]!, base);
    a11 += dot(u, u); a12 += dot(u, v); a22 += dot(v, v);
    b1 += dot(u, gap); b2 += dot(v, gap);
  });
  const det = a11 * a22 - a12 * a12;
  const across = subtract(end, start);
  const chord = Math.hypot(across.x, across.y);
  let [h1, h2] = det > 1e-12 * a11 * a22 ? [(b1 * a22 - b2 * a12) / det, (b2 * a11 - b1 * a12) / det] : [chord / 3, chord / 3];
  const passing = h1 * Math.max(0, dot(t1, across)) - h2 * Math.min(0, dot(t2, across)) > chord * chord;
  if (passing || !(h1 > 0.01 * chord && h2 > 0.01 * chord && h1 < 4 * chord && h2 < 4 * chord)) [h1, h2] = [chord / 3, chord / 3];
  return [start, add(start, scale(t1, h1)), add(end, scale(t2, h2)), end];
}
