import { squaredDistanceToEdge } from './containment.ts';
import { type Point } from './point.ts';

/**
 * The polyline with fewer of its points, by the rule of D. Douglas and T. Peucker (Cartographica 10, 1973, 112-122),
 * measuring to the chord itself and not to its line. Every point left out lies within `tolerance` mm of the result, and
 * every place of the result within `tolerance` of the polyline. First and last point stay. A result may cross itself
 * where the polyline comes near itself.
 */
export function simplifyPolyline(points: readonly Point[], tolerance: number): Point[] {
  return keptIndices(points, tolerance).map((i) => points[i]!);
}

/**
 * The same for a closed loop whose first point is not repeated. The result does not depend on where the loop starts,
 * and begins with the first of the loop's points that it keeps. A loop thinner than the tolerance comes back with two points or one.
 */
export function simplifyLoop(points: readonly Point[], tolerance: number): Point[] {
  return keptLoopIndices(points, tolerance).map((i) => points[i]!);
}

/**
 * A span of more points than this is split at a point nearly as far away as the farthest but nearer its middle: always
 * splitting at the farthest would take the square of the points' number of steps on a long zigzag.
 */
const LONG_SPAN = 500;
const LONG_SHARE = 0.8;

/** Indices of the points that `simplifyPolyline` keeps, rising. */
export function keptIndices(points: readonly Point[], tolerance: number): number[] {
  if (points.length < 3) return [...points.keys()];
  const kept = new Uint8Array(points.length);
  kept[0] = kept[points.length - 1] = 1;
  // A stack instead of recursion: a spiral of many points splits off one at a time.
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const worst = farthestFromChord(points, from, to);
    if (worst.distance <= tolerance) continue;
    const split = to - from > LONG_SPAN ? middlemost(points, from, to, LONG_SHARE * worst.distance) : worst.index;
    kept[split] = 1;
    spans.push([from, split], [split, to]);
  }
  return [...points.keys()].filter((i) => kept[i] === 1);
}

/** Indices of the points that `simplifyLoop` keeps, rising. */
export function keptLoopIndices(points: readonly Point[], tolerance: number): number[] {
  const count = points.length;
  if (count < 3) return [...points.keys()];
  const first = leftmost(points);
  const turned = Array.from({ length: count + 1 }, (_, i) => points[(first + i) % count]!);
  const far = farthestFromChord(turned, 0, count);
  if (far.distance <= tolerance) return far.distance === 0 ? [first] : [first, (first + far.index) % count].sort((a, b) => a - b);
  const before = keptIndices(turned.slice(0, far.index + 1), tolerance);
  const after = keptIndices(turned.slice(far.index), tolerance).map((i) => i + far.index);
  const indices = new Set([...before, ...after].map((i) => (first + i) % count));
  return [...indices].sort((a, b) => a - b);
}

/** The leftmost point, the lowest of several: always a corner of the convex hull, so a fit place to start. */
function leftmost(points: readonly Point[]): number {
  let best = 0;
  points.forEach((p, i) => {
    const q = points[best]!;
    if (p.x < q.x || (p.x === q.x && p.y < q.y)) best = i;
  });
  return best;
}

/** Of the points between two indices at least so far from the chord between them, the one nearest the middle. */
function middlemost(points: readonly Point[], from: number, to: number, away: number): number {
  const middle = (from + to) >> 1;
  for (let step = 0; ; step++) {
    for (const i of [middle - step, middle + step]) {
      if (i > from && i < to && distanceToChord(points[i]!, points[from]!, points[to]!) >= away) return i;
    }
    if (step > to - from) return middle;
  }
}

/** Of the points between two indices, the one farthest from the chord between them. */
function farthestFromChord(points: readonly Point[], from: number, to: number): { readonly index: number; readonly distance: number } {
  const [a, b] = [points[from]!, points[to]!];
  let [index, most] = [from, -1];
  for (let i = from + 1; i < to; i++) {
    const away = distanceToChord(points[i]!, a, b);
    if (away > most) [index, most] = [i, away];
  }
  return { index, distance: Math.max(0, most) };
}

/** Distance in mm from a point to the straight piece between two others. */
export function distanceToChord(p: Point, a: Point, b: Point): number {
  return Math.sqrt(squaredDistanceToEdge(p, a, b));
}
