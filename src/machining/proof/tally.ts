import { type Point } from '../../geometry/point.ts';
import { fromFrame } from './frame.ts';

/** A kind of fault: the largest distance (mm) by which material is wrong, where that is, and the area beyond the tolerance. */
export interface Fault {
  readonly mm: number;
  readonly mm2: number;
  /** Present as soon as `mm` is above 0. */
  readonly at?: Point;
}

/** A fault being collected, in the proof's frame. */
export interface Tally {
  mm: number;
  x: number;
  y: number;
  /** Samples wrong by more than the tolerance. */
  samples: number;
}

export const newTally = (): Tally => ({ mm: 0, x: 0, y: 0, samples: 0 });

export function noteWorst(tally: Tally, mm: number, x: number, y: number): void {
  if (mm <= tally.mm) return;
  tally.mm = mm;
  tally.x = x;
  tally.y = y;
}

export const placeOf = (tally: Tally): { at?: Point } => (tally.mm > 0 ? { at: fromFrame(tally) } : {});

export const faultOf = (tally: Tally, cell: number): Fault =>
  ({ mm: tally.mm, mm2: tally.samples * cell * cell, ...placeOf(tally) });
