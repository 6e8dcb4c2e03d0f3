import type { GraphDocument, GraphNode } from './document.ts';
import type { Reference } from './names.ts';
import type { NodeShape } from './node.ts';
import type { GraphProblem } from './problem.ts';
import type { Unreadable } from './shape.ts';

/** A node as its wires see it. `declaration` is absent when its ports cannot be known. */
export interface Ends {
  readonly node: GraphNode;
  readonly declaration: NodeShape | undefined;
}

/** What the checks of one document share. */
export interface Checking {
  readonly document: GraphDocument;
  readonly ends: ReadonlyMap<string, Ends>;
  readonly report: (problem: GraphProblem) => void;
  /** Advice naming the likely meaning of a mistyped name. */
  readonly suggest: (name: string, candidates: Iterable<string>, otherwise: string) => string;
  readonly likely: (name: string, candidates: Iterable<string>) => string | undefined;
  readonly unreadable: Unreadable;
}

/** A wire whose both ends exist. */
export interface Link {
  readonly from: Reference;
  readonly to: Reference;
}
