import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/** The lettering's own width at a place of a stroke, mm. */
export interface WidthAt {
  /** Length along the stroke from its start, mm. */
  readonly along: number;
  readonly width: number;
}

/** A place where a stroke could have gone another way, and what is said of it. */
export interface Doubt {
  readonly at: Point;
  readonly says: string;
}

/** A line as a pen would draw it: its centre line, and the pen's width where the drawing states one. */
export interface Stroke {
  readonly path: Path;
  /** Width of the drawn line in mm; absent when the drawing states none. */
  readonly width?: number;
  /** Where it came from in the drawing: an id, or the element's name and number. */
  readonly source?: string;
  /** Where it was traced: the width the lettering has along it, in the order of `along`. */
  readonly widths?: readonly WidthAt[];
  /** Where it was traced: from 0 to 1, the least margin by which it was decided. */
  readonly confidence?: number;
  readonly doubts?: readonly Doubt[];
}

/** A filled shape: closed paths read by one fill rule. */
export interface Outline {
  readonly paths: readonly Path[];
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly source?: string;
}
