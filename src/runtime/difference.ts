import { deepEqual } from './deep-equal.ts';
import type { ExposedInput, GraphDocument, GraphNode, NodeGroup } from './document.ts';
import type { Shapes } from './node.ts';
import { defaultOf } from './param-values.ts';
import type { ParamValue } from './params.ts';

/** One thing that another version of a graph has otherwise. `from` is absent for what is new, `to` for what is gone. */
export interface Change {
  readonly kind: 'title' | 'notes' | 'node' | 'type' | 'name' | 'note' | 'value' | 'wire' | 'input' | 'group' | 'order';
  /** Where: a node's id, `id.parameter`, a wire as `from -> to`, an input's name, a group's id. */
  readonly place: string;
  readonly from?: unknown;
  readonly to?: unknown;
}

/**
 * What one version of a graph has otherwise than another, in the order title, notes, nodes, wires, inputs, groups. Nodes are told apart by
 * id. A parameter left out has its default, so that stating it changes nothing; where a node lies on the canvas does not count.
 */
export function documentChanges(a: GraphDocument, b: GraphDocument, catalogue: Shapes): readonly Change[] {
  return [
    ...changed('title', 'title', a.title, b.title), ...changed('notes', 'notes', a.notes, b.notes),
    ...paired(a.nodes, b.nodes, ({ id }) => id).flatMap(([place, from, to]) => nodeChanges(place, from, to, catalogue)),
    ...paired(a.wires, b.wires, ({ from, to }) => `${from} -> ${to}`).flatMap(([place, from, to]) => (from && to ? [] : [given('wire', place, from && place, to && place)])),
    ...paired(a.inputs, b.inputs, ({ name }) => name).flatMap(([place, from, to]) => inputChanges(place, from, to)),
    ...orderChange(a.inputs, b.inputs),
    ...paired(a.groups, b.groups, ({ id }) => id).flatMap(([place, from, to]) => (sameGroup(from, to) ? [] : [given('group', place, from, to)])),
  ];
}

/** Of two lists, what has the same key side by side: in the order of the first, then what is new. */
function paired<T>(a: readonly T[], b: readonly T[], key: (item: T) => string): (readonly [string, T | undefined, T | undefined])[] {
  const second = new Map(b.map((item) => [key(item), item]));
  const first = new Set(a.map(key));
  return [...a.map((item) => [key(item), item, second.get(key(item))] as const), ...b.filter((item) => !first.has(key(item))).map((item) => [key(item), undefined, item] as const)];
}

const given = (kind: Change['kind'], place: string, from: unknown, to: unknown): Change => ({ kind, place, ...(from !== undefined && { from }), ...(to !== undefined && { to }) });

const changed = (kind: Change['kind'], place: string, from: unknown, to: unknown): Change[] => (deepEqual(from, to) ? [] : [given(kind, place, from, to)]);

function nodeChanges(id: string, from: GraphNode | undefined, to: GraphNode | undefined, catalogue: Shapes): Change[] {
  if (from === undefined || to === undefined) return [given('node', id, from?.type, to?.type)];
  if (from.type !== to.type) return [given('type', id, from.type, to.type)];
  const shape = catalogue.get(from.type);
  const names = [...new Set([...Object.keys(shape?.params ?? {}), ...Object.keys(from.params), ...Object.keys(to.params)])];
  const value = ({ params }: GraphNode, name: string): ParamValue | undefined => {
    const param = shape?.params[name];
    return Object.hasOwn(params, name) ? params[name] : param && defaultOf(param);
  };
  return [
    ...changed('name', id, from.title, to.title), ...changed('note', id, from.note, to.note),
    ...names.flatMap((name) => changed('value', `${id}.${name}`, value(from, name), value(to, name))),
  ];
}

function inputChanges(name: string, from: ExposedInput | undefined, to: ExposedInput | undefined): Change[] {
  if (from === undefined || to === undefined) return [given('input', name, from?.sets, to?.sets)];
  return deepEqual(from, to) ? [] : [given('input', name, worded(from), worded(to))];
}

const worded = ({ name: _, ...rest }: ExposedInput): unknown => rest;

/** Inputs that both have, asked for in another order. */
function orderChange(a: readonly ExposedInput[], b: readonly ExposedInput[]): Change[] {
  const [inA, inB] = [new Set(a.map(({ name }) => name)), new Set(b.map(({ name }) => name))];
  const kept = (inputs: readonly ExposedInput[], other: ReadonlySet<string>) => inputs.map(({ name }) => name).filter((name) => other.has(name));
  return changed('order', 'inputs', kept(a, inB), kept(b, inA));
}

const sameGroup = (a: NodeGroup | undefined, b: NodeGroup | undefined): boolean => deepEqual(a && { ...a, collapsed: false }, b && { ...b, collapsed: false });
