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
