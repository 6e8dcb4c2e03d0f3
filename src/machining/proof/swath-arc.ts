import { type Box } from '../../geometry/box.ts';
import { type Point } from '../../geometry/point.ts';

/**
 * A swath along a circular arc of radius `bend`; z falls evenly with the angle from `high` at `startAngle` to `low`
 * after `turn` radians (0 to one full turn), counter-clockwise when `sense` is 1, clockwise when it is -1.
 */
export interface ArcSwath {
  readonly kind: 'arc';
  readonly radius: number;
  readonly centre: Point;
  readonly bend: number;
  readonly startAngle: number;
  readonly sense: 1 | -1;
  readonly turn: number;
  readonly start: Point;
  readonly end: Point;
  /** The angles the arc passes, in wedges narrower than a half turn; none for a whole ring. */
  readonly wedges: readonly Wedge[];
  readonly high: number;
  readonly low: number;
  readonly box: Box;
}

/** The angles counter-clockwise from one ray to another, as the rays' unit vectors. */
interface Wedge {
  readonly from: Point;
  readonly to: Point;
}

const FULL_TURN = 2 * Math.PI;
/** Wedges up to this angle are the intersection of two half planes; wider ones are cut in two. Anything under pi would do. */
const WIDEST_WEDGE = 3;
/** A turn this close to a full one is a whole ring, rad. */
const RING_SLACK = 1e-12;

/** The wedges of an arc. */
export function wedgesOf(startAngle: number, sense: 1 | -1, turn: number): Wedge[] {
  if (turn >= FULL_TURN - RING_SLACK) return [];
  const pieces = Math.ceil(turn / WIDEST_WEDGE);
  const rays = Array.from({ length: pieces + 1 }, (_, k) => {
    const angle = startAngle + (sense * turn * k) / pieces;
    return { x: Math.cos(angle), y: Math.sin(angle) };
  });
  return rays.slice(1).map((ray, k) => (sense > 0 ? { from: rays[k]!, to: ray } : { from: ray, to: rays[k]! }));
}

/**
 * A point within the arc's wedge is nearest to the arc radially, any other point to one of the arc's ends. So the swath
 * is a ring clipped by the wedge, and the discs about both ends.
 */
export function arcSpans(swath: ArcSwath, y: number, out: Float64Array): number {
  if (swath.turn >= FULL_TURN - RING_SLACK) return ringSpans(swath, y, out, 0);
  let count = discSpan(swath.start, swath.radius, y, out, 0);
  count = discSpan(swath.end, swath.radius, y, out, count);
  for (const wedge of swath.wedges) {
    const last = ringSpans(swath, y, out, count);
    if (last > count) count = clipToWedge(swath.centre, wedge, y, out.subarray(0, last), count);
  }
  return count;
}

function discSpan(centre: Point, radius: number, y: number, out: Float64Array, count: number): number {
  const half = radius * radius - (y - centre.y) ** 2;
  if (half < 0) return count;
  out[count] = centre.x - Math.sqrt(half);
  out[count + 1] = centre.x + Math.sqrt(half);
  return count + 2;
}

function ringSpans({ centre, bend, radius }: ArcSwath, y: number, out: Float64Array, count: number): number {
  const next = discSpan(centre, bend + radius, y, out, count);
  const inner = bend - radius;
  if (next === count || inner <= 0) return next;
  const half = inner * inner - (y - centre.y) ** 2;
  if (half <= 0) return next;
  out[next] = centre.x + Math.sqrt(half);
  out[next + 1] = out[count + 1]!;
  out[count + 1] = centre.x - Math.sqrt(half);
  return next + 2;
}

/** Clips the intervals of `out` from `first` on to a wedge about a centre; returns how many numbers of `out` are left. */
function clipToWedge(centre: Point, { from, to }: Wedge, y: number, out: Float64Array, first: number): number {
  const dy = y - centre.y;
  // Left of the first ray, from.x * dy - from.y * dx >= 0; right of the second one, the opposite.
  const least = Math.max(from.y < 0 ? (from.x * dy) / from.y : -Infinity, to.y > 0 ? (to.x * dy) / to.y : -Infinity);
  const greatest = Math.min(from.y > 0 ? (from.x * dy) / from.y : Infinity, to.y < 0 ? (to.x * dy) / to.y : Infinity);
  if ((from.y === 0 && from.x * dy < 0) || (to.y === 0 && to.x * dy > 0)) return first;
  let count = first;
  for (let k = first; k < out.length; k += 2) {
    const left = Math.max(out[k]!, centre.x + least);
    const right = Math.min(out[k + 1]!, centre.x + greatest);
    if (left > right) continue;
    out[count] = left;
    out[count + 1] = right;
    count += 2;
  }
  return count;
}

/**
 * The disc at angle a about the arc's centre covers a point at distance d and angle t while
 * d^2 + bend^2 - 2 d bend cos(a - t) <= radius^2, an interval about t (law of cosines). The end of the last such
 * interval within the move gives the lowest z.
 */
export function lowestOverArc(swath: ArcSwath, x: number, y: number): number {
  const [px, py] = [x - swath.centre.x, y - swath.centre.y];
  const d = Math.hypot(px, py);
  const cosine = (d * d + swath.bend ** 2 - swath.radius ** 2) / (2 * d * swath.bend);
  // Near the centre the quotient is huge or not a number: then the disc covers the point always, or its edge only.
  if (!(cosine > -1)) return swath.low;
  const half = Math.acos(Math.min(1, cosine));
  const ahead = swath.sense * (Math.atan2(py, px) - swath.startAngle) % FULL_TURN;
  const middle = ahead < 0 ? ahead + FULL_TURN : ahead;
  let leaves = 0;
  for (const at of [middle - FULL_TURN, middle, middle + FULL_TURN]) {
    if (at + half >= 0 && at - half <= swath.turn) leaves = Math.max(leaves, Math.min(swath.turn, at + half));
  }
  return swath.high + (leaves / swath.turn) * (swath.low - swath.high);
}
