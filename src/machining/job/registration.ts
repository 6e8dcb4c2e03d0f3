import type { Point } from '../../geometry/point.ts';
import type { Hole } from './hole.ts';

/** A pin in the spoilboard, in program coordinates, mm: where it is in every set-up. */
export interface Pin {
  readonly at: Point;
  readonly diameter: number;
}

/** A hole of the sheet that comes to lie on a pin, and the set-ups (places in the tiling) that drill it and use it. */
export interface Dowel {
  /** Round on the first pin, a slot along the line of the pins on the second. Purpose `dowel`. */
  readonly hole: Hole;
  readonly pin: number;
  readonly drilledIn: number;
  readonly usedIn: number;
  /** Where it ends up: cut away with the waste, hidden under the tube, or to be seen in the finished board. */
  readonly lies: 'waste' | 'groove' | 'board';
}

/** The largest step that the registration may leave at a seam, mm, and what it comes of. */
export interface SeamStep {
  /** Number of the seam in the tiling. */
  readonly seam: number;
  readonly worst: number;
  /** Root of the sum of squares: what is to be expected where errors are independent. */
  readonly likely: number;
  readonly at: Point;
}

/** How set-ups after the first find their place: pins in the spoilboard, holes in the sheet. */
export interface Registration {
  readonly pins: readonly Pin[];
  readonly dowels: readonly Dowel[];
  /** Diameter of hole less that of pin, and error of a drilled hole's place, mm. */
  readonly clearance: number;
  readonly pitchError: number;
  readonly steps: readonly SeamStep[];
  readonly corrections: readonly Correction[];
}

/** How a sheet really lies in a set-up, from where its pins were measured. */
export interface Correction extends Displacement {
  readonly setUp: number;
}

/** A turn about the programs' zero, counter-clockwise, and then a shift, mm: where a place of a program really is. */
export interface Displacement {
  readonly degrees: number;
  readonly shift: readonly [number, number];
}
