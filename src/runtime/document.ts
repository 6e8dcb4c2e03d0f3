import type { AnyParamValues } from './params.ts';

export const GRAPH_FORMAT = 'groovewright-graph';
/** Version of the documents this runtime writes; older ones are migrated when read. */
export const GRAPH_VERSION = 1;

/** A saved graph: plain data that JSON can hold. Positions are canvas units, x right and y down as the canvas draws them. */
export interface GraphDocument {
  readonly format: typeof GRAPH_FORMAT;
  readonly version: typeof GRAPH_VERSION;
  readonly title: string;
  readonly notes: string;
  /** Their order is the order of results. */
  readonly nodes: readonly GraphNode[];
  /** Their order is the order in which an input that takes several wires receives its values. */
  readonly wires: readonly Wire[];
  readonly inputs: readonly ExposedInput[];
  readonly groups: readonly NodeGroup[];
}

export interface GraphNode {
  /** A letter, then letters, digits and single hyphens; unique in its graph. */
  readonly id: string;
  /** Name of a node type in the catalogue. */
  readonly type: string;
  readonly title?: string;
  readonly note?: string;
  readonly position: readonly [number, number];
  /** Parameters left out take their declaration's default. */
  readonly params: AnyParamValues;
}

/** Carries a value from an output (`id.port`) to an input (`id.port`). */
export interface Wire {
  readonly from: string;
  readonly to: string;
}

/** A parameter that a user of the finished graph sets without opening it. */
export interface ExposedInput {
  readonly name: string;
  readonly label: string;
  readonly help: string;
  /** Heading it is shown under. */
  readonly group?: string;
  /** The parameter it sets, as `id.param`. */
  readonly sets: string;
  /** Between which numbers a user may set it: within the parameter's own limits. */
  readonly limits?: Span;
  /** Between which numbers the recipe was tried and found good; a value beyond them is told. */
  readonly proved?: Span;
}

/** Least and greatest value, both allowed, in the parameter's unit. */
export type Span = readonly [least: number, greatest: number];

/** Nodes shown together; one box when collapsed. */
export interface NodeGroup {
  readonly id: string;
  readonly title: string;
  readonly nodes: readonly string[];
  readonly collapsed: boolean;
}

/**
 * Greatest sizes of a document. They bound the time and memory a file from elsewhere can cost, and lie far above a graph
 * that a person can oversee. `characters` (UTF-16 units, 64 Mi) counts the whole text with the drawings embedded in it.
 */
export const LIMITS = {
  characters: 64 * 1024 * 1024,
  depth: 16,
  nodes: 10_000,
  wires: 50_000,
  inputs: 1_000,
  groups: 1_000,
  points: 100_000,
  edits: 10_000,
  nameLength: 64,
} as const;
