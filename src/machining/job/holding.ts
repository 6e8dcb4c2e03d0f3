import type { Point } from '../../geometry/point.ts';
import type { Region } from '../../geometry/region.ts';

/** Something that holds the sheet down and that no cutter may touch. Drawing coordinates, mm. */
export interface HoldDown {
  readonly kind: 'screw' | 'clamp';
  readonly at: Point;
  /** Diameter of the disc that cutter and spindle keep out of, below its height above the sheet. */
  readonly keepOut: number;
  readonly height: number;
  /** The set-ups (places in the tiling) in which it is there; all of them when absent. */
  readonly setUps?: readonly number[];
}

/** Held over an area, without anything in the cutter's way. */
export interface HeldArea {
  readonly kind: 'tape' | 'vacuum';
  readonly region: Region;
}

/** A support beside the bed, in drawing coordinates of a set-up: a bar along the edge of the bed at this place. */
export interface Support {
  readonly setUp: number;
  readonly axis: 'x' | 'y';
  readonly at: number;
  /** How far it reaches across the sheet from the sheet's edge at 0, mm. */
  readonly length?: number;
}

/** How the sheet is held and carried in every set-up. */
export interface Holding {
  readonly holdDowns: readonly HoldDown[];
  readonly areas: readonly HeldArea[];
  readonly supports: readonly Support[];
}
