import type { Point } from '../../geometry/index.ts';

/** Where places of edits are counted from: the lower left corner of the box of the strokes that came in, and its longer side, mm. */
export interface Frame {
  readonly origin: Point;
  readonly size: number;
}

/** A way out of a junction: along which stroke (by its number), and where one takes hold of it. */
export interface Arm {
  readonly stroke: number;
  readonly at: Point;
}

/** A place where strokes cross, touch or end on one another, mm. */
export interface StrokeJunction {
  readonly at: Point;
  readonly radius: number;
  readonly arms: readonly Arm[];
  /** Pairs of arms (by place in `arms`) that are one stroke; arms in no pair end here. */
  readonly pairs: readonly (readonly [number, number])[];
}

/** What gestures on a picture of strokes take hold of. */
export interface JunctionMap {
  readonly frame: Frame;
  readonly junctions: readonly StrokeJunction[];
  /** Free ends: those that lie on no other stroke. */
  readonly ends: readonly { readonly stroke: number; readonly at: Point }[];
}
