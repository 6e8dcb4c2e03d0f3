import type { Point } from './point.ts';

/** A straight segment from the end of the segment before it (or the path's start). */
export interface LineSegment {
  readonly kind: 'line';
  readonly end: Point;
}

/**
 * A circular arc about `centre`, from the end of the segment before it. Its turn is under 360 degrees,
 * except that equal start and end mean one full circle.
 */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly end: Point;
  readonly centre: Point;
  readonly clockwise: boolean;
}

/** A cubic Bézier segment from the end of the segment before it. */
export interface CubicSegment {
  readonly kind: 'cubic';
  readonly control1: Point;
  readonly control2: Point;
  readonly end: Point;
}

export type Segment = LineSegment | ArcSegment | CubicSegment;

/**
 * A connected chain of segments. A closed path ends exactly where it starts (its last segment is written out);
 * a path without segments is a single point.
 */
export interface Path {
  readonly start: Point;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}
