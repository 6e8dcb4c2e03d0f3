import type { Alignment, BaselineShape } from './baseline.ts';
import type { TypeProblem } from './problem.ts';
import type { Direction } from './runs.ts';

/** How a phrase is laid out, whatever it is set with. */
export interface LayoutOptions {
  /** Height of a capital, mm. */
  readonly size: number;
  /** Room added between letters, at spaces between words, in heights of a capital; and from baseline to baseline. */
  readonly letterSpacing: number;
  readonly wordSpacing: number;
  readonly lineSpacing: number;
  readonly alignment: Alignment;
  readonly direction: Direction;
  readonly shape: BaselineShape;
}

/** What a laid-out phrase is known by. */
export interface Laid {
  /** Letters and signs that are not spaces; letters that became one count once. */
  readonly letters: number;
  readonly lines: number;
  readonly cautions: readonly TypeProblem[];
}
