import type { Point } from './point.ts';

/** The vertices of a closed polygon; the edge from last to first is implied, no vertex is repeated. */
export type Loop = readonly Point[];

/**
 * A part of the plane bounded by polygons that do not cross: outer loops counter-clockwise, holes clockwise.
 * Curved boundaries are chords within the tolerance of whoever made the region.
 */
export interface Region {
  readonly loops: readonly Loop[];
}
