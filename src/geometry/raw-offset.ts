import { type InnerSide, innerSide } from './inner-side.ts';
import { type Point, type Vector } from './point.ts';
import { type Loop } from './region.ts';

/** How the outside of a corner is filled. */
export type OffsetJoin = 'round' | 'miter' | 'bevel';

/** How the end of an open stroke is closed. */
export type OffsetCap = 'round' | 'butt' | 'square';

/** Distance and corner treatment of a raw offset. */
export interface RawOffset {
  /** mm, positive. */
  readonly distance: number;
  readonly join: OffsetJoin;
  /** Greatest ratio of a miter's length to the stroke width. */
  readonly miterLimit: number;
  /** Greatest deviation, in mm, of joins and caps from the true outline. */
  readonly tolerance: number;
}

const along = (p: Point, v: Vector, k: number): Point => ({ x: p.x + v.x * k, y: p.y + v.y * k });

const rightOf = (v: Vector): Vector => ({ x: v.y, y: -v.x });

/** The vector from a corner to where its two offset edges meet, for a distance of 1. */
function bisector(u: Vector, v: Vector): Vector {
  const k = 1 / (1 + u.x * v.x + u.y * v.y);
  return { x: (u.y + v.y) * k, y: -(u.x + v.x) * k };
}

/** Points of the arc about `centre` that turns left by `sweep` radians from the direction `from`, ends included. Chords lie inside. */
function pushArc(out: Point[], centre: Point, from: Vector, sweep: number, raw: RawOffset): void {
  const step = 2 * Math.acos(Math.max(0, 1 - raw.tolerance / raw.distance));
  const count = Math.max(1, Math.ceil(sweep / step - 1e-9));
  for (let i = 0; i <= count; i += 1) {
    const c = Math.cos((sweep * i) / count);
    const s = Math.sin((sweep * i) / count);
    out.push(along(centre, { x: from.x * c - from.y * s, y: from.x * s + from.y * c }, raw.distance));
  }
}

/** A whole disc, counter-clockwise. */
export function rawDisc(centre: Point, raw: RawOffset): Loop {
  const out: Point[] = [];
  pushArc(out, centre, { x: 1, y: 0 }, 2 * Math.PI, raw);
  return out.slice(0, -1);
}

/** The outside of a left turn, seen from the right-hand side. */
function pushJoin(out: Point[], at: Point, u: Vector, v: Vector, raw: RawOffset): void {
  const cosine = u.x * v.x + u.y * v.y;
  const miterRatio = 1 / Math.sqrt(Math.max(0, (1 + cosine) / 2));
  // The joins of a flattened curve: a miter within tolerance is one vertex, and leaves the edges parallel.
  const isFlat = raw.distance * (miterRatio - 1) <= raw.tolerance;
  if (isFlat || (raw.join === 'miter' && miterRatio <= raw.miterLimit)) {
    out.push(along(at, bisector(u, v), raw.distance));
  } else if (raw.join === 'round') {
    pushArc(out, at, rightOf(u), Math.atan2(Math.abs(u.x * v.y - u.y * v.x), cosine), raw);
  } else {
    out.push(along(at, rightOf(u), raw.distance), along(at, rightOf(v), raw.distance));
  }
}

/**
 * One corner seen from the right-hand side. Every strip and wedge is wound alike, and the inside of a right turn that is
 * not cut along its bisector goes through the corner itself, so whatever folds over only winds the same area twice.
 */
function pushCorner(out: Point[], at: Point, { legs, heights, cuts }: InnerSide, i: number, raw: RawOffset): void {
  const b = (i + legs.length - 1) % legs.length;
  const u = legs[b]!.direction;
  const v = legs[i]!.direction;
  if (cuts[i]! > 0) {
    const middle = bisector(u, v);
    out.push(along(at, middle, heights[b]!));
    if (heights[i]! !== heights[b]!) out.push(along(at, middle, heights[i]!));
    return;
  }
  if (u.x * v.y - u.y * v.x < 0) {
    out.push(along(at, rightOf(u), heights[b]!), at, along(at, rightOf(v), heights[i]!));
    return;
  }
  // A strip of full height leads straight to the join, a lower one by way of the join's foot.
  if (heights[b]! < raw.distance) out.push(along(at, rightOf(u), heights[b]!), along(at, rightOf(u), raw.distance));
  pushJoin(out, at, u, v, raw);
  if (heights[i]! < raw.distance) out.push(along(at, rightOf(v), raw.distance), along(at, rightOf(v), heights[i]!));
}

/**
 * The outline of a closed chain moved to its right-hand side: its winding numbers are those of the chain plus one
 * for every strip (edge) and wedge (left turn) on that side. Clean it under the positive fill rule.
 * Points must be distinct from their neighbours.
 */
export function rawSide(points: readonly Point[], raw: RawOffset): Loop {
  if (points.length < 2) return points.flatMap((point) => rawDisc(point, raw));
  const side = innerSide(points, true, raw.distance);
  const out: Point[] = [];
  points.forEach((point, i) => pushCorner(out, point, side, i, raw));
  return out;
}

function pushCap(out: Point[], end: Point, heading: Vector, cap: OffsetCap, raw: RawOffset): void {
  const right = rightOf(heading);
  if (cap === 'round') {
    pushArc(out, end, right, Math.PI, raw);
    return;
  }
  const tip = cap === 'square' ? along(end, heading, raw.distance) : end;
  out.push(along(tip, right, raw.distance), along(tip, right, -raw.distance));
}

function pushOpenSide(out: Point[], points: readonly Point[], cap: OffsetCap, raw: RawOffset): void {
  const side = innerSide(points, false, raw.distance);
  const { legs, heights } = side;
  const last = legs.length - 1;
  out.push(along(points[0]!, rightOf(legs[0]!.direction), heights[0]!));
  for (let i = 1; i <= last; i += 1) pushCorner(out, points[i]!, side, i, raw);
  out.push(along(points[last + 1]!, rightOf(legs[last]!.direction), heights[last]!));
  pushCap(out, points[last + 1]!, legs[last]!.direction, cap, raw);
}

/** The outline of a stroke of half-width `distance` along an open chain of at least two points, counter-clockwise. */
export function rawStroke(points: readonly Point[], start: OffsetCap, end: OffsetCap, raw: RawOffset): Loop {
  const out: Point[] = [];
  pushOpenSide(out, points, end, raw);
  pushOpenSide(out, [...points].reverse(), start, raw);
  return out;
}
