/** A fault in a drawing told as a value; the same shape as the problems of the runtime, which this room does not know. */
export interface ArtworkProblem {
  /** Element and line, such as `path 3 (line 12)`; absent when the whole drawing is meant. */
  readonly place?: string;
  readonly expected: string;
  readonly found: string;
  /** One sentence that tells the user what to do. */
  readonly advice: string;
}

export type ArtworkProblems = readonly [ArtworkProblem, ...ArtworkProblem[]];
