import type { Loop, Point } from '../geometry/index.ts';
import type { BoardColour, WallTone } from './materials.ts';
import type { ShiningLine } from './trail.ts';

/** A sign as its front is seen, mm. */
export interface LitSign {
  /** Where the tubes lie: the groove. */
  readonly tubes: readonly Loop[];
  /** What shines in them. */
  readonly lines: readonly ShiningLine[];
  /** Outer width of a tube. */
  readonly tubeWidth: number;
  readonly board?: readonly Loop[];
  /** Heads of the fixings that are seen from the front. */
  readonly fixings: readonly { readonly centre: Point; readonly diameter: number }[];
}

/** Where the sign hangs, and how it is looked at. */
export interface View {
  readonly board: BoardColour;
  readonly wall: WallTone;
  /** From the back of the board, or of the tubes where there is none, to the wall, mm. */
  readonly wallDistance: number;
  /** Of the sign's light, and of that which looks white, K. */
  readonly colourTemperature: number;
  readonly white: number;
  /** 1 is the strip at full power. */
  readonly brightness: number;
  /** From 0, a dark night, to 1, a day in the shade. */
  readonly ambient: number;
  /** In stops. */
  readonly exposure: number;
}
