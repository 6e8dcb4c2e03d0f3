import type { Point, Point3 } from '../../geometry/point.ts';
import type { Cutter } from './cutter.ts';

/** One move of the cutter's tip, from the end of the move before it. Feeds are mm/min. */
export type Move =
  | { readonly kind: 'rapid'; readonly to: Point3 }
  | { readonly kind: 'line'; readonly to: Point3; readonly feed: number }
  | { readonly kind: 'arc'; readonly to: Point3; readonly centre: Point; readonly clockwise: boolean; readonly feed: number };

export type PassKind = 'groove' | 'hole' | 'outline';

/**
 * What the cutter does between coming down and going up again: it starts at `start` (at the retract height, above the
 * sheet, reached by rapids), makes `moves`, and leaves by a rapid straight up from the last one.
 */
export interface Pass {
  readonly kind: PassKind;
  readonly name: string;
  readonly cutter: Cutter;
  readonly start: Point3;
  readonly moves: readonly Move[];
  /** The set-up (place in the tiling) it belongs to; the only one when absent. */
  readonly setUp?: number;
}

/** Heights above the sheet's top face, mm: rapids across the sheet run at `clearance`, rapids down stop at `retract`. */
export interface Heights {
  readonly clearance: number;
  readonly retract: number;
}
