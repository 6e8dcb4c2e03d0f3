/** A fault of what is to be set, as a value; the same shape as the problems of the runtime, which this room does not know. */
export interface TypeProblem {
  /** Which of the things asked for it is, such as `phrase`; absent when it is not one alone. */
  readonly place?: string;
  readonly expected: string;
  readonly found: string;
  /** One sentence that tells the user what to do. */
  readonly advice: string;
}

export type TypeProblems = readonly [TypeProblem, ...TypeProblem[]];
