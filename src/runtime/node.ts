import type { AnyParamValues, ParamValues, Params } from './params.ts';
import type { Problem, Problems } from './problem.ts';

/** One entry per kind of value that may travel along a wire. `src/values` extends it by declaration merging. */
export interface PortTypes {
  number: number;
  text: string;
}
export type PortType = keyof PortTypes;

/**
 * Takes one wire, or several (`many`: a list in the order of the graph's wires). An input that is not `optional` needs
 * at least one wire; an unwired optional input arrives as undefined, an unwired optional `many` as an empty list.
 */
export interface InputPort<T extends PortType = PortType> {
  readonly type: T;
  readonly doc: string;
  readonly many?: true;
  readonly optional?: true;
}
export interface OutputPort<T extends PortType = PortType> {
  readonly type: T;
  readonly doc: string;
}
export type Inputs = Readonly<Record<string, InputPort>>;
export type Outputs = Readonly<Record<string, OutputPort>>;

type InputValue<P> = P extends { type: infer T extends PortType }
  ? P extends { many: true } ? readonly PortTypes[T][]
  : P extends { optional: true } ? PortTypes[T] | undefined
  : PortTypes[T]
  : never;
/** What `compute` receives by input. Nobody has such values for a node known only at run time: hence never. */
export type InputValues<I extends Inputs> = string extends keyof I ? never : { readonly [K in keyof I]: InputValue<I[K]> };
export type OutputValues<O extends Outputs> = { readonly [K in keyof O]: PortTypes[O[K]['type']] };

/** What `compute` returns: its outputs (with cautions worth telling), or why there are none. */
export type Outcome<O extends Outputs> =
  | { readonly ok: true; readonly outputs: OutputValues<O>; readonly cautions?: readonly Problem[] }
  | { readonly ok: false; readonly problems: Problems };

/** What a long computation may use to say how far it is (0 to 1) and to stop when its result is no longer wanted. */
export interface Context {
  readonly checkpoint: (done: number) => void;
}

/**
 * What a person can take hold of on the picture of a node's values. A gesture sets parameters of that node and nothing
 * else, so it can be undone, and survives a change of everything before the node.
 * - `places`: the places of a `points` parameter, each to be moved, added, taken away. With `from` they begin as the spots of
 *   that output (the centres of its holes; after a dot the part of them, as `tiling.x`), and the parameters in `sets` are set
 *   along with the first gesture. With `axis` only that coordinate of a place counts, as of a line across the sheet: a gesture
 *   changes no other. `on: 'machine'` are places in program coordinates, which stay where they are while set-ups move the sheet.
 * - `edits`: the edits of an `edits` parameter, each made by a gesture on what the `junctions` output lays out.
 * - `move`: two numbers in mm that shift what the outputs carry along x and y.
 */
export type Handle<O extends string = string, P extends string = string> =
  | { readonly kind: 'places'; readonly param: P; readonly from?: O | `${O}.${string}`; readonly axis?: 'x' | 'y'; readonly on?: 'machine'; readonly sets?: AnyParamValues; readonly doc: string }
  | { readonly kind: 'edits'; readonly param: P; readonly junctions: O; readonly doc: string }
  | { readonly kind: 'move'; readonly outputs: readonly [O, ...O[]]; readonly x: P; readonly y: P; readonly doc: string };

/** Names of the parameters that a handle's gestures set. */
export function paramsOfHandle(handle: Handle): readonly string[] {
  switch (handle.kind) {
    case 'places': return [handle.param, ...Object.keys(handle.sets ?? {})];
    case 'edits': return [handle.param];
    case 'move': return [handle.x, handle.y];
  }
}

export interface Example<I extends Inputs, P extends Params> {
  readonly title: string;
  readonly inputs: string extends keyof I ? Readonly<Record<string, unknown>> : InputValues<I>;
  readonly params?: string extends keyof P ? Readonly<Record<string, unknown>> : Partial<ParamValues<P>>;
}

/**
 * A node type, whole. The form, the help, the reference page and the check of saved graphs all come from it.
 * Without type arguments: any node type, its ports and parameters known only at run time.
 */
export interface NodeDeclaration<I extends Inputs = Inputs, O extends Outputs = Outputs, P extends Params = Params> {
  /** kebab-case; equal to the file's name, and the type name in saved graphs. */
  readonly name: string;
  readonly title: string;
  /** What it does. The first sentence stands alone as a summary. */
  readonly doc: string;
  readonly inputs: I;
  readonly outputs: O;
  readonly params: P;
  readonly handles?: readonly Handle<keyof O & string, keyof P & string>[];
  readonly examples: readonly [Example<I, P>, ...Example<I, P>[]];
  readonly compute: (inputs: InputValues<I>, params: ParamValues<P>, context: Context) => Outcome<O>;
}

/** All of a declaration but its code: what a view in another thread may know of a node type. */
export type NodeShape = Omit<NodeDeclaration, 'compute' | 'examples'>;

/** Every node type there is, by name, without code. */
export type Shapes = ReadonlyMap<string, NodeShape>;

/**
 * Requires that an outcome has no outputs but those declared: a value for any other would have to be of type never. When
 * only one of several returns has it, the compiler does not see it, and the runtime refuses it.
 */
type NoOthers<R, O extends Outputs> =
  R extends { readonly outputs: infer V } ? { readonly outputs: { readonly [K in Exclude<keyof V, keyof O>]: never } } : unknown;

/** Declares a node; only carries the types, so that ports, parameters and `compute` must agree. */
export function defineNode<const I extends Inputs, const O extends Outputs, const P extends Params, R extends Outcome<O>>(
  declaration: Omit<NodeDeclaration<I, O, P>, 'compute'> & {
    readonly compute: (inputs: InputValues<I>, params: ParamValues<P>, context: Context) => R & NoOthers<R, O>;
  },
): NodeDeclaration<I, O, P> {
  return declaration;
}
