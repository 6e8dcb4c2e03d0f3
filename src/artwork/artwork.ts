import type { Path } from '../geometry/path.ts';

/** A line as a pen would draw it: its centre line, and the pen's width where the drawing states one. */
export interface Stroke {
  readonly path: Path;
  /** Width of the drawn line in mm; absent when the drawing states none. */
  readonly width?: number;
  /** Where it came from in the drawing: an id, or the element's name and number. */
  readonly source?: string;
}

/** A filled shape: closed paths read by one fill rule. */
export interface Outline {
  readonly paths: readonly Path[];
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly source?: string;
}
