import type { Point, Region } from '../../geometry/index.ts';
import type { Channel } from '../job/channel.ts';
import type { Hole } from '../job/hole.ts';
import type { Tiling } from '../job/tiling.ts';

/** The two directions a sheet may be moved in; a seam of one has that coordinate the same all along. */
export type Axis = 'x' | 'y';
export const AXES: readonly Axis[] = ['x', 'y'];

/** What is to be cut, of what, on what. Lengths mm, drawing coordinates. Without board, channel and holes the whole sheet counts as work. */
export interface TilingRequest {
  readonly sheet: { readonly width: number; readonly height: number };
  readonly travel: readonly [number, number];
  readonly board?: Region;
  readonly channel?: Channel;
  readonly holes: readonly Hole[];
  /** Diameters of all cutters; at least one. */
  readonly cutters: readonly number[];
  /** Least lap wished for; one diameter of the widest cutter when that is more. */
  readonly lap: number;
  /** Seams put by hand, for each axis on which there are any. */
  readonly byHand: { readonly [A in Axis]?: readonly number[] };
  /** Which neighbour comes next where both directions are cut. */
  readonly order: 'rows' | 'columns';
  /** Seams are looked for on multiples of this; 1 mm when absent. */
  readonly step?: number;
}

/**
 * What a seam should keep clear of. `crossing` grooves meet there, `end` a stroke stops, `bend` a groove turns sharply,
 * `along` it runs beside the seam, `edge` the board's outline does.
 */
export type FeatureKind = 'hole' | 'crossing' | 'end' | 'bend' | 'along' | 'edge';

/** Something a seam would disturb: how far it reaches along the axis, and the place to name. */
export interface Feature {
  readonly kind: FeatureKind;
  readonly from: number;
  readonly to: number;
  readonly at: Point;
}

/** What was found along one axis. */
export interface AxisPlan {
  readonly axis: Axis;
  readonly seams: readonly number[];
  /** Fewest tiles the travel allows along this axis. */
  readonly least: number;
  /** Crossings of as many evenly spaced seams. */
  readonly evenCrossings: number;
  readonly byHand: boolean;
  /** How far cutters' centres range in the tile that needs most, mm, and which tile along this axis that is. */
  readonly widest: { readonly reach: number; readonly index: number };
}

/** A seam with what lies nearest to it. */
export interface SeamClearance {
  /** Number of the seam in the tiling. */
  readonly seam: number;
  /** From the seam to the nearest feature, mm; Infinity where there is none on the sheet. */
  readonly distance: number;
  /** Lap and margin: what the distance should be at least. */
  readonly wanted: number;
  readonly feature?: Feature;
  /** How many features are nearer than that. */
  readonly disturbed: number;
}

export interface TilingPlan {
  readonly tiling: Tiling;
  readonly axes: readonly [AxisPlan, AxisPlan];
  readonly clearances: readonly SeamClearance[];
  /** Cells of the grid in which nothing is to be cut, and that have no set-up. */
  readonly idle: number;
}

/** Room beyond the cutter beside the board for lead-ins and allowances, where the sheet has it, mm (common practice, no source). */
export const LEAD_ROOM = 10;
/** A seam's lap keeps this far from what it should not disturb, mm (common practice, no source). */
export const MARGIN = 2;
/** A bend is tight under this many groove widths of radius (common practice, no source). */
export const TIGHT_WIDTHS = 2;
/** A groove at a smaller angle to the seam runs along it, degrees (common practice, no source). */
export const ALONG_DEGREES = 10;
/** More set-ups along one axis than this are no plan. */
export const MOST_TILES = 100;
