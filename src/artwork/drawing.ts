import { type Outline, type Stroke } from './artwork.ts';
import { type ArtworkProblem, type ArtworkProblems } from './problem.ts';

/** What a drawing holds that can be cut. Millimetres, y up, origin at the page's lower left corner. */
export interface Drawing {
  readonly strokes: readonly Stroke[];
  readonly outlines: readonly Outline[];
  /** The page, in mm. Nothing keeps strokes and outlines inside it. */
  readonly size: { readonly width: number; readonly height: number };
  /** What was left out or read with a doubt, one for each kind with a count and the first place. */
  readonly cautions: readonly ArtworkProblem[];
}

export type DrawingResult =
  | { readonly ok: true; readonly drawing: Drawing }
  | { readonly ok: false; readonly problems: ArtworkProblems };
