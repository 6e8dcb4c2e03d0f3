import type { Doubt, Outline, Stroke, WidthAt } from '../artwork/artwork.ts';
import type { Point, Region } from '../geometry/index.ts';

/** Where a stroke ends: free at the lettering's end, or on another stroke of the result (by its number). */
export type StrokeEnd = { readonly kind: 'free' } | { readonly kind: 'joins'; readonly stroke: number; readonly at: Point };

/** A centre line as a pen would draw it, traced from a filled outline. Its path is tangent-continuous cubics. */
export interface TracedStroke extends Stroke {
  readonly widths: readonly WidthAt[];
  /** Start and end; a closed stroke has two that join itself. */
  readonly ends: readonly [StrokeEnd, StrokeEnd];
  /** From 0 to 1: the least margin by which its junctions and ends were decided. */
  readonly confidence: number;
  readonly doubts: readonly Doubt[];
}

/** A place where arms meet, and which of them were taken for one stroke. */
export interface Junction {
  readonly at: Point;
  /** Radius of the largest disc there, mm. */
  readonly radius: number;
  /** Each arm by the direction it leaves in, degrees counter-clockwise from +x. */
  readonly arms: readonly number[];
  /** Pairs of arms (by place in `arms`) that are one stroke; arms in no pair end here. */
  readonly pairs: readonly (readonly [number, number])[];
  readonly confidence: number;
}

/** Outlines in, strokes out. */
export interface Tracing {
  readonly strokes: readonly TracedStroke[];
  readonly junctions: readonly Junction[];
  /** What is no stroke at all, left as it was. */
  readonly regions: readonly { readonly region: Region; readonly says: string; readonly at: Point }[];
  /** Places in the middle of parts that no stroke covers, though strokes run on beside them. */
  readonly uncovered: readonly Point[];
  readonly outlines: readonly Outline[];
  /** Parts dropped because they are far smaller than a stroke is wide. */
  readonly crumbs: number;
}
