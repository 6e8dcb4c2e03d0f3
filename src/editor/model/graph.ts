import type { Draft } from 'immer';
import type { GraphDocument, GraphNode, InputPort, OutputPort, PortType, Shapes, Wire } from '../../runtime/index.ts';
import { splitReference } from '../../runtime/names.ts';

/** A place where a wire can end: an input or an output of a node. */
export interface End {
  readonly side: 'input' | 'output';
  readonly node: string;
  readonly port: string;
}

/** An end as wires name it: `id.port`. */
export const endText = ({ node, port }: Pick<End, 'node' | 'port'>): string => `${node}.${port}`;

export const sameEnd = (a: End, b: End): boolean => a.side === b.side && a.node === b.node && a.port === b.port;

/** The end that a wire's `from` or `to` names; undefined when it names none. */
export function endOf(text: string, side: End['side']): End | undefined {
  const reference = splitReference(text);
  return reference && { side, node: reference.node, port: reference.name };
}

export const wireKey = ({ from, to }: Wire): string => `${from} -> ${to}`;
export const sameWire = (a: Wire, b: Wire): boolean => a.from === b.from && a.to === b.to;

/** The node a wire comes from, or goes to; an empty id when it names none. */
export const sourceOf = ({ from }: Wire): string => splitReference(from)?.node ?? '';
export const targetOf = ({ to }: Wire): string => splitReference(to)?.node ?? '';

export const nodeOf = ({ nodes }: GraphDocument, id: string): GraphNode | undefined => nodes.find((node) => node.id === id);

/** What a card is headed with: the title it was given, else its type's. */
export const titleOf = (shapes: Shapes, { title, type }: GraphNode): string => title ?? shapes.get(type)?.title ?? type;

/** The title of a node by its id; the id of one that is not there. */
export function titleAt(shapes: Shapes, document: GraphDocument, id: string): string {
  const node = nodeOf(document, id);
  return node === undefined ? id : titleOf(shapes, node);
}

/** The declared port at an end; undefined when the node, its type or the port is unknown. */
export function portAt(shapes: Shapes, document: GraphDocument, { side, node, port }: End): InputPort | OutputPort | undefined {
  const shape = shapes.get(nodeOf(document, node)?.type ?? '');
  const ports: Readonly<Record<string, InputPort | OutputPort>> = (side === 'input' ? shape?.inputs : shape?.outputs) ?? {};
  return Object.hasOwn(ports, port) ? ports[port] : undefined;
}

/** What a port is called on a card: its name in words; the type's own spelling where that is what it is named after. */
export function portLabel(name: string, type: PortType | undefined): string {
  const words = name.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();
  return type !== undefined && type.replace(/[^a-z0-9]/g, '') === words.replaceAll(' ', '') ? type : words;
}

/** The nodes that ids of cards stand for: a group stands for its members. Ids of nothing are left out. In the document's order. */
export function membersOf({ nodes, groups }: GraphDocument, ids: readonly string[]): readonly string[] {
  const wanted = new Set(ids);
  for (const group of groups) if (wanted.has(group.id)) for (const node of group.nodes) wanted.add(node);
  return nodes.flatMap(({ id }) => (wanted.has(id) ? [id] : []));
}

/** The card a node is seen on: its own, or that of the folded group it is in. */
export const cardOf = ({ groups }: Pick<GraphDocument, 'groups'>, node: string): string =>
  groups.find(({ collapsed, nodes }) => collapsed && nodes.includes(node))?.id ?? node;

/** Every node's successors along the wires, or with `back` its predecessors. */
export function neighboursOf({ nodes, wires }: Pick<GraphDocument, 'nodes' | 'wires'>, back = false): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map(nodes.map(({ id }) => [id, new Set<string>()]));
  for (const wire of wires) {
    const [a, b] = back ? [targetOf(wire), sourceOf(wire)] : [sourceOf(wire), targetOf(wire)];
    if (found.has(b)) found.get(a)?.add(b);
  }
  return found;
}

/** What can be reached from the starts, the starts themselves included. */
export function reachedFrom(starts: Iterable<string>, next: ReadonlyMap<string, Iterable<string>>): ReadonlySet<string> {
  const reached = new Set(starts);
  // A set takes in what is added while it is gone through.
  for (const id of reached) for (const successor of next.get(id) ?? []) reached.add(successor);
  return reached;
}

/** Takes away what does not pass; a list of which all pass is left untouched, so that nothing counts as changed. */
export function keepOnly<T>(list: Draft<T>[], passes: (item: Draft<T>) => boolean): void {
  for (let i = list.length - 1; i >= 0; i--) if (!passes(list[i]!)) list.splice(i, 1);
}
