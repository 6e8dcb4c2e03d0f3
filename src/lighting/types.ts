import type { Path, Point } from '../geometry/index.ts';
import type { Strip } from './strip.ts';
import type { Tube } from './tube.ts';

/** All that a lit sign has electrically. Places are on the sheet, seen from the front; lengths mm. */
export interface Lighting {
  readonly strip: Strip;
  readonly tube: Tube;
  /** In the order they are numbered: the first is run 1. */
  readonly runs: readonly LightRun[];
  /** Stretches of the groove without light longer than one that nothing is said about: where strokes meet or cross, and strokes too short for a module. */
  readonly dark: readonly DarkSpot[];
  /** Where leads from supplies reach the board. At least one where there is a run. */
  readonly leads: readonly Point[];
  /** What feeds the runs; absent until it has been chosen. */
  readonly wiring?: Wiring;
}

/** Pieces of strip one after the other on one circuit: the current runs through each into the next. */
export interface LightRun {
  readonly pieces: readonly LitPiece[];
  /** Pairs of wire behind the board; the k-th leads from the end of piece k to the start of piece k + 1. */
  readonly jumpers: readonly Jumper[];
  /** Where it is fed; one place, or both ends. */
  readonly feeds: readonly Feed[];
  /** Of the strip at its rated voltage, W and A. */
  readonly watts: number;
  readonly amps: number;
}

/** One piece of tube with one piece of strip in it. Its direction is that in which the run goes through it. */
export interface LitPiece {
  /** Which centre line it follows, from 0. */
  readonly stroke: number;
  /** Where the tube lies: the centre line, or the part of it that is clear of strokes which it meets. */
  readonly path: Path;
  /** Where the strip lies within it: `modules` whole modules. */
  readonly lit: Path;
  readonly modules: number;
  /** The strip's length, `modules` times that of one. */
  readonly cutLength: number;
  /** Of the tube, before and after the strip. */
  readonly unlitStart: number;
  readonly unlitEnd: number;
}

export interface Jumper {
  readonly from: Point;
  readonly to: Point;
  /** Length of the pair of wires, what is spare at both ends included. */
  readonly length: number;
}

export interface Feed {
  /** How many pieces of the run come before it: 0 at its start, their number at its end. */
  readonly joint: number;
  readonly at: Point;
}

export interface DarkSpot {
  readonly stroke: number;
  readonly at: Point;
  /** Of the groove, without light. */
  readonly length: number;
  readonly why: 'meets' | 'crosses' | 'too short';
  /** The stroke that is lit through there. */
  readonly by?: number;
}

/** Copper of one size. */
export interface WireSize {
  /** As it is sold: `0.75 mm²`, `AWG 18`. */
  readonly name: string;
  /** Cross-section, mm2. */
  readonly area: number;
  /** Of one conductor at 20 C, ohm/km. */
  readonly ohmsPerKm: number;
  /** Most current it may carry, A. */
  readonly ampacity: number;
}

/** A pair of wires. */
export interface WirePair {
  readonly kind: 'feed' | 'jumper';
  /** Which run it belongs to, from 0, and which of its feeds or jumpers it is. */
  readonly run: number;
  readonly place: number;
  readonly from: Point;
  readonly to: Point;
  /** Length of the pair, mm. */
  readonly length: number;
  readonly size: WireSize;
  /** Current in it, A; voltage lost along both its wires, V. */
  readonly amps: number;
  readonly drop: number;
}

export interface Supply {
  /** Where its lead reaches the board. */
  readonly at: Point;
  /** Rated power, W, and what its runs take of it. */
  readonly ratedWatts: number;
  readonly watts: number;
  readonly amps: number;
  /** Rating of the fuse at its output, A. */
  readonly fuse: number;
  /** Runs it feeds, from 0. */
  readonly runs: readonly number[];
}

export interface Wiring {
  readonly supplies: readonly Supply[];
  readonly wires: readonly WirePair[];
  /** By run: most voltage lost between supply and any module, V. */
  readonly drops: readonly number[];
}
