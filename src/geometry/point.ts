/** A place in the plane. Millimetres, y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A displacement or direction in the plane; the same shape as a point, kept apart by name in signatures. */
export type Vector = Point;

/** A place above or in the sheet. Millimetres, z 0 at the sheet's top face, negative inside the sheet. */
export interface Point3 extends Point {
  readonly z: number;
}

export const add = (p: Point, v: Vector): Point => ({ x: p.x + v.x, y: p.y + v.y });

/** The displacement from `q` to `p`. */
export const subtract = (p: Point, q: Point): Vector => ({ x: p.x - q.x, y: p.y - q.y });

export const scale = (v: Vector, factor: number): Vector => ({ x: v.x * factor, y: v.y * factor });

export const dot = (u: Vector, v: Vector): number => u.x * v.x + u.y * v.y;

/** z of the cross product: positive when `v` lies counter-clockwise of `u`. */
export const cross = (u: Vector, v: Vector): number => u.x * v.y - u.y * v.x;

export const length = (v: Vector): number => Math.hypot(v.x, v.y);

export const distance = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

/** The point at fraction `t` from `p` to `q`; exact at 0 and 1. */
export const lerp = (p: Point, q: Point, t: number): Point => ({ x: (1 - t) * p.x + t * q.x, y: (1 - t) * p.y + t * q.y });

/** The unit vector along `v`; the zero vector stays zero. */
export function normalize(v: Vector): Vector {
  // Scaling by the larger component first keeps subnormal and huge vectors from losing their direction.
  const largest = Math.max(Math.abs(v.x), Math.abs(v.y));
  if (largest === 0) return { x: 0, y: 0 };
  const x = v.x / largest;
  const y = v.y / largest;
  const size = Math.hypot(x, y);
  return { x: x / size, y: y / size };
}

/** `v` turned a quarter turn counter-clockwise. */
export const leftNormal = (v: Vector): Vector => ({ x: -v.y, y: v.x });

/** `v` turned counter-clockwise about the origin; exact for multiples of 90 degrees. */
export function rotate(v: Vector, degrees: number): Vector {
  const { cos, sin } = cosSin(degrees);
  return { x: cos * v.x - sin * v.y, y: sin * v.x + cos * v.y };
}

/** Cosine and sine of an angle in degrees, exact for multiples of 90 degrees. */
export function cosSin(degrees: number): { readonly cos: number; readonly sin: number } {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const turn = ((quarters % 4) + 4) % 4;
    return { cos: [1, 0, -1, 0][turn]!, sin: [0, 1, 0, -1][turn]! };
  }
  const radians = (degrees * Math.PI) / 180;
  return { cos: Math.cos(radians), sin: Math.sin(radians) };
}

/** Whether two points lie within `eps` mm of each other; `eps` 0 means equal. */
export const same = (p: Point, q: Point, eps: number): boolean => distance(p, q) <= eps;

/** The place of the segment from `a` to `b` nearest to a point. */
export function nearestOnSegment(a: Point, b: Point, { x, y }: Point): Point {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const square = ux * ux + uy * uy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - a.x) * ux + (y - a.y) * uy) / square)) : 0;
  return { x: a.x + t * ux, y: a.y + t * uy };
}
