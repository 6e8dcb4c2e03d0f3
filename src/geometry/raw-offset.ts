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

function direction(a: Point, b: Point): Vector {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
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
function pushConvex(out: Point[], at: Point, u: Vector, v: Vector, raw: RawOffset): void {
  const cos = u.x * v.x + u.y * v.y;
  const miterRatio = 1 / Math.sqrt(Math.max(0, (1 + cos) / 2));
  const flat = raw.distance * (miterRatio - 1) <= raw.tolerance;
  if (flat || (raw.join === 'miter' && miterRatio <= raw.miterLimit)) {
    out.push(along(at, rightOf({ x: u.x + v.x, y: u.y + v.y }), raw.distance / (1 + cos)));
  } else if (raw.join === 'round') {
    pushArc(out, at, rightOf(u), Math.atan2(Math.abs(u.x * v.y - u.y * v.x), cos), raw);
  } else {
    out.push(along(at, rightOf(u), raw.distance), along(at, rightOf(v), raw.distance));
  }
}

/**
 * Whether the offset edges on the inside of a corner are too short to be cut at their crossing, so that they fold over.
 * Cuts under half a leg cannot meet those at the leg's other end.
 */
function folds(u: Vector, v: Vector, shorterLeg: number, distance: number): boolean {
  const cos = u.x * v.x + u.y * v.y;
  return cos <= 0 || distance * Math.abs(u.x * v.y - u.y * v.x) >= (1 + cos) * shorterLeg * 0.5;
}

/**
 * The inside of a right turn, seen from the right-hand side: the crossing of the two offset edges or, where they fold
 * over, a way through the vertex itself. That makes the raw outline the exact sum of one rectangle per edge, all wound
 * alike: whatever folds over only winds the same area twice.
 */
function pushConcave(out: Point[], at: Point, u: Vector, v: Vector, shorterLeg: number, raw: RawOffset): void {
  if (folds(u, v, shorterLeg, raw.distance)) {
    out.push(along(at, rightOf(u), raw.distance), at, along(at, rightOf(v), raw.distance));
  } else {
    out.push(along(at, rightOf({ x: u.x + v.x, y: u.y + v.y }), raw.distance / (1 + u.x * v.x + u.y * v.y)));
  }
}

/** One edge of a chain: where it ends, its unit direction and its length. */
interface Leg {
  readonly direction: Vector;
  readonly length: number;
}

function legsOf(points: readonly Point[], closed: boolean): Leg[] {
  const count = closed ? points.length : points.length - 1;
  return Array.from({ length: count }, (_, i) => {
    const a = points[i]!;
    const b = points[(i + 1) % points.length]!;
    return { direction: direction(a, b), length: Math.hypot(b.x - a.x, b.y - a.y) };
  });
}

function pushCorner(out: Point[], at: Point, before: Leg, after: Leg, raw: RawOffset): void {
  const u = before.direction;
  const v = after.direction;
  if (u.x * v.y - u.y * v.x >= 0) pushConvex(out, at, u, v, raw);
  else pushConcave(out, at, u, v, Math.min(before.length, after.length), raw);
}

/**
 * The outline of a closed chain moved to its right-hand side: its winding numbers are those of the chain plus one
 * for every rectangle (edge) and wedge (left turn) on that side. Clean it under the positive fill rule.
 * Points must be distinct from their neighbours.
 */
export function rawSide(points: readonly Point[], raw: RawOffset): Loop {
  if (points.length < 2) return points.map((point) => rawDisc(point, raw)).flat();
  const legs = legsOf(points, true);
  const out: Point[] = [];
  points.forEach((point, i) => pushCorner(out, point, legs[(i + legs.length - 1) % legs.length]!, legs[i]!, raw));
  return out;
}

function pushCap(out: Point[], end: Point, heading: Vector, cap: OffsetCap, raw: RawOffset): void {
  const side = rightOf(heading);
  if (cap === 'round') {
    pushArc(out, end, side, Math.PI, raw);
    return;
  }
  const tip = cap === 'square' ? along(end, heading, raw.distance) : end;
  out.push(along(tip, side, raw.distance), along(tip, side, -raw.distance));
}

function pushOpenSide(out: Point[], points: readonly Point[], cap: OffsetCap, raw: RawOffset): void {
  const legs = legsOf(points, false);
  for (let i = 1; i < legs.length; i += 1) pushCorner(out, points[i]!, legs[i - 1]!, legs[i]!, raw);
  pushCap(out, points[points.length - 1]!, legs[legs.length - 1]!.direction, cap, raw);
}

/** The outline of a stroke of half-width `distance` along an open chain of at least two points, counter-clockwise. */
export function rawStroke(points: readonly Point[], cap: OffsetCap, raw: RawOffset): Loop {
  const out: Point[] = [];
  pushOpenSide(out, points, cap, raw);
  pushOpenSide(out, [...points].reverse(), cap, raw);
  return out;
}

/** For each point of an open chain, whether the inside of its corner folds over at a distance. */
export function foldsAlong(points: readonly Point[], distance: number): boolean[] {
  const legs = legsOf(points, false);
  return points.map((_, i) => {
    const before = legs[i - 1];
    const after = legs[i];
    return before !== undefined && after !== undefined
      && folds(before.direction, after.direction, Math.min(before.length, after.length), distance);
  });
}
