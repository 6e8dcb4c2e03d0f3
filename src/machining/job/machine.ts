import type { Heights } from './pass.ts';

/** What a controller understands and how it wants its programs, told by capability. */
export interface Controller {
  readonly units: 'mm' | 'inch';
  /** Arcs in centre format (G2/G3 with I J), or lines only. */
  readonly arcs: 'centre' | 'lines';
  /** Whether an arc may move Z as well (helical arc). */
  readonly helicalArcs: boolean;
  /** Decimals of a coordinate word; arcs need 4 in mm to hold radius consistency. */
  readonly decimals: number;
  readonly lineNumbers: boolean;
  /** Percent sign on the first and last line. */
  readonly percentLines: boolean;
  readonly comments: 'parentheses' | 'none';
  readonly programEnd: 'M2' | 'M30';
  /** Unit of the P word of G4. */
  readonly dwellUnit: 'seconds' | 'milliseconds';
  /** Most characters on a line. */
  readonly longestLine: number;
}

/** A three-axis router: usable travel in mm, rates in mm/min, acceleration in mm/s2. */
export interface Machine {
  readonly travelX: number;
  readonly travelY: number;
  readonly travelZ: number;
  readonly rapidRate: number;
  readonly greatestFeed: number;
  readonly acceleration: number;
  /** Deviation allowed by the controller at a corner, mm: sets the speed it keeps there. */
  readonly cornerDeviation: number;
  /** Seconds the spindle needs to come up to speed; written as a dwell. */
  readonly spindleStart: number;
  readonly controller: Controller;
}

/** A machine with its bed and the heights its programs use. */
export interface Router extends Machine {
  /** How far the bed reaches beyond what the cutter's edge reaches, on every side, mm. */
  readonly bedMargin: number;
  readonly heights: Heights;
}

/** Characters of the longest block a program here may need: an arc with Z, written without spaces, on a sheet up to 100 m. */
export function leastLineLength({ decimals, lineNumbers }: Pick<Controller, 'decimals' | 'lineNumbers'>): number {
  const word = (wholeDigits: number) => 'X-.'.length + wholeDigits + decimals;
  return 'G3'.length + 2 * word(5) + word(3) + 2 * word(6) + (lineNumbers ? 'N99999 '.length : 0);
}
