import type { Problem, Problems } from './problem.ts';

/** A wired input without a value, and the node that should have given one. */
export interface MissingInput {
  readonly port: string;
  readonly from: string;
}

/** A node's outputs by port. While an output stays equal its value keeps its identity from evaluation to evaluation. */
export interface Ready {
  readonly state: 'ready';
  readonly outputs: Readonly<Record<string, unknown>>;
  /** What is worth telling although the node has a result. */
  readonly cautions: readonly Problem[];
}

export interface Failed {
  readonly state: 'failed';
  readonly problems: Problems;
}

export interface Blocked {
  readonly state: 'blocked';
  readonly missing: readonly [MissingInput, ...MissingInput[]];
}

/** How long the node took when it was last executed, in milliseconds; 0 if it never was. */
interface Timed {
  readonly milliseconds: number;
}

export type NodeResult = (Ready | Failed | Blocked) & Timed;
/** The result of a node that was executed. */
export type ComputedResult = (Ready | Failed) & Timed;

export interface LogEntry {
  readonly node: string;
  readonly action: 'executed' | 'reused';
}

/** What an evaluation found. When cancelled, `nodes` holds what was finished by then. */
export interface Evaluation {
  readonly cancelled: boolean;
  /** Results of the nodes that were needed, each after those it depends on. */
  readonly nodes: ReadonlyMap<string, NodeResult>;
  /** What was executed and what was reused, in order; failed checks and blocked nodes are neither. */
  readonly log: readonly LogEntry[];
}

export interface EvaluateOptions {
  /** Asked before each node and at every checkpoint; once it says yes, the evaluation ends. */
  readonly isCancelled?: () => boolean;
  /** Told how far a node being executed is, from 0 to 1 and never backwards. */
  readonly onProgress?: (node: string, done: number) => void;
  /** Told each node's result as soon as it is known: executed, reused, blocked or failed. */
  readonly onResult?: (node: string, result: NodeResult) => void;
  /** Awaited before each execution, so that a worker can take messages in between. */
  readonly pause?: () => Promise<void>;
}
