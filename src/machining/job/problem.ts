import type { Point } from '../../geometry/point.ts';

/** A fault in a machining request told as a value; the same shape the runtime shows to the user. */
export interface MachiningProblem {
  /** Which request or which place, such as `cutter` or `x 120.5, y 40.2`. */
  readonly place?: string;
  readonly expected: string;
  readonly found: string;
  /** One sentence that tells the user what to do. */
  readonly advice: string;
}

export type MachiningProblems = readonly [MachiningProblem, ...MachiningProblem[]];

/** Something worth telling about one place of a plan that can still be cut. */
export interface Caution extends MachiningProblem {
  readonly at: Point;
}

/** The words for a place on the sheet, to a tenth of a millimetre. */
export function placeName(point: Point): string {
  return `x ${millimetres(point.x, 1)}, y ${millimetres(point.y, 1)}`;
}

/** A length without trailing zeros, at most `decimals` of them; independent of locale. */
export function millimetres(value: number, decimals = 3): string {
  const rounded = Number(value.toFixed(decimals));
  return String(rounded === 0 ? 0 : rounded);
}
