import { showName } from './show.ts';

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

/** The kinds of fault a value of a parameter can have. */
export type ValueCode = 'wrong-kind' | 'not-finite' | 'out-of-limits' | 'not-offered';

/** The kinds of fault a graph can have. */
export type GraphCode =
  | ValueCode
  | 'too-large' | 'not-json' | 'duplicate-key' | 'wrong-format' | 'wrong-version' | 'future-version'
  | 'unknown-key' | 'missing-key' | 'bad-id' | 'duplicate-id' | 'unknown-node' | 'unknown-param'
  | 'bad-reference' | 'missing-node' | 'missing-port' | 'missing-input' | 'port-taken' | 'duplicate-wire'
  | 'type-mismatch' | 'cycle' | 'bad-name' | 'duplicate-name' | 'unknown-name' | 'missing-param' | 'exposed-twice'
  | 'grouped-twice';

/** A fault of a graph, with the id of the node it belongs to where there is one. */
export interface GraphProblem extends Problem {
  readonly code: GraphCode;
  readonly node?: string;
}

export type GraphProblems = readonly [GraphProblem, ...GraphProblem[]];

/** A problem as one line of text: where, expected, found, advice. */
export function formatProblem({ node, place, expected, found, advice }: Problem & { readonly node?: string }): string {
  const where = [node === undefined ? undefined : showName(node), place].filter((part) => part !== undefined).join(', ');
  return `${where === '' ? '' : `${where}: `}expected ${expected}, found ${found}. ${advice}`;
}

/** The list as a non-empty one, or undefined when there is nothing in it. */
export function nonEmpty<T>(list: readonly T[]): readonly [T, ...T[]] | undefined {
  const [first, ...rest] = list;
  return first === undefined ? undefined : [first, ...rest];
}
