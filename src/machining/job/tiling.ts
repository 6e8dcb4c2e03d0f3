import type { Box } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';

/** Part of the sheet that one set-up cuts. Boxes and places in drawing coordinates, mm. */
export interface Tile {
  /** What the set-up is called: "set-up 1". */
  readonly name: string;
  /** Counted from the left and from below, from 0. */
  readonly column: number;
  readonly row: number;
  /** What belongs to it alone: between its seams, or out to the sheet's edge. */
  readonly core: Box;
  /** What it cuts: the core and the lap beyond each seam. No cutter's edge leaves it. */
  readonly window: Box;
  /** `shift` + program coordinate = drawing coordinate. The programs' zero stays where it is on the machine from set-up to set-up; the sheet moves. */
  readonly shift: readonly [number, number];
}

/** Where a seam crosses a groove: the smaller angle between the two, 0 to 90 degrees. */
export interface SeamCrossing {
  readonly at: Point;
  readonly angle: number;
}

/** A line across the sheet on whose two sides different set-ups cut. */
export interface Seam {
  /** The coordinate that is the same all along it: a seam of constant x runs up the sheet. */
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly crossings: readonly SeamCrossing[];
  /** What it disturbs; 0 for a seam that crosses nothing. Comparable between seams of one plan. */
  readonly cost: number;
}

/** How a sheet is cut in several set-ups, in the order they run. */
export interface Tiling {
  readonly tiles: readonly Tile[];
  readonly seams: readonly Seam[];
  /** How far each set-up cuts beyond a seam, mm: at least one diameter of the widest cutter. */
  readonly lap: number;
  /** The machine's travel it was planned for, mm. */
  readonly travel: readonly [number, number];
}
