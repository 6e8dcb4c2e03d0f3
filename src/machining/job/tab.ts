import type { Point } from '../../geometry/point.ts';

/** A bridge left under an outline cut so that the board stays in the sheet. Millimetres. */
export interface Tab {
  /** Middle of the tab, on the cutter's path. */
  readonly centre: Point;
  /** Length along the cut that is left standing at full height. */
  readonly width: number;
  /** Height left above the sheet's underside, for the thickness as measured. */
  readonly height: number;
}
