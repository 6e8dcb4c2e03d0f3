/** A fault told as a value: where, what was expected, what came, and what to do about it. */
export interface Problem {
  /** Port, parameter or part of a file, such as `width` or `line 12`; absent when the whole node is meant. */
  readonly place?: string;
  readonly expected: string;
  readonly found: string;
  /** One sentence that tells the user what to do. */
  readonly advice: string;
}

export type Problems = readonly [Problem, ...Problem[]];
