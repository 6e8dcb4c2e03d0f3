import { type Region } from '../../geometry/region.ts';
import { type Hole } from '../job/hole.ts';
import { type Stock } from '../job/stock.ts';
import { type Tab } from '../job/tab.ts';

/** The groove as drawn, and the diameter of the smallest cutter meant to cut it, which says what can be reached. Millimetres. */
export interface DesignedChannel {
  readonly region: Region;
  readonly depth: number;
  readonly cutterDiameter: number;
}

/** The finished board and the cut that parts it from the sheet. Millimetres. */
export interface DesignedOutline {
  /** The finished board; its own holes are cut-outs that are parted too. Holes and slots are listed as holes instead. */
  readonly board: Region;
  readonly cutterDiameter: number;
  /** How far from the board the waste may be cut: the cutter's diameter, and room for lead-ins. */
  readonly allowance: number;
  readonly tabs: readonly Tab[];
}

/**
 * What should be left of the sheet when all programs have run, in the drawing's coordinates: the channel at its depth,
 * the holes cut through, the board parted from the waste, everything else untouched. Without an outline the whole sheet is the board.
 */
export interface DesignSurface {
  readonly stock: Stock;
  readonly channel?: DesignedChannel;
  readonly holes: readonly Hole[];
  readonly outline?: DesignedOutline;
}
