import type { GraphDocument, GraphNode, NodeGroup, PortType, Shapes, Wire } from '../../runtime/index.ts';
import { CARD, around, boxAt } from './boxes.ts';
import { type End, endOf, endText, portLabel, titleOf, wireKey } from './graph.ts';

/** A port as a card shows it. */
export interface SeenPort extends End {
  /** `id.port`: tells it from the others of its side of the card. */
  readonly key: string;
  /** Undefined where the node's type is unknown, or has no such port although a wire ends there. */
  readonly type: PortType | undefined;
  /** What it is called on the card, different from the others of its side. */
  readonly label: string;
  readonly doc: string;
  readonly many: boolean;
  readonly optional: boolean;
  readonly wired: boolean;
}

export interface Ports {
  readonly inputs: readonly SeenPort[];
  readonly outputs: readonly SeenPort[];
}

interface SeenCard extends Ports {
  readonly id: string;
  readonly title: string;
  readonly position: readonly [number, number];
}
export interface NodeCard extends SeenCard {
  readonly kind: 'node';
  readonly node: GraphNode;
}
/** A folded group. */
export interface GroupCard extends SeenCard {
  readonly kind: 'group';
  readonly group: NodeGroup;
}
export type Card = NodeCard | GroupCard;

/** A wire as it is seen, from card to card. */
export interface SeenWire {
  /** Tells it from all other wires, doubled ones included. */
  readonly key: string;
  readonly wire: Wire;
  readonly from: End & { readonly card: string };
  readonly to: End & { readonly card: string };
}

/** The graph as it is drawn: folded groups in place of their members, wires between what is seen. */
export interface VisibleGraph {
  readonly cards: readonly Card[];
  readonly wires: readonly SeenWire[];
}

/** What is drawn of a document. Wires within a folded group, and wires whose nodes are not there, are left out. */
export function visibleGraph(shapes: Shapes, document: GraphDocument): VisibleGraph {
  const index = indexOf(document);
  const nodes = new Map(document.nodes.map((node) => [node.id, node]));
  const folded = document.groups.filter(({ collapsed, nodes: members }) => collapsed && members.some((id) => nodes.has(id)));
  const cardOf = new Map(document.nodes.map(({ id }) => [id, id]));
  for (const { id, nodes: members } of folded) for (const member of members) if (nodes.has(member)) cardOf.set(member, id);
  const cards: Card[] = document.nodes.flatMap((node) => (cardOf.get(node.id) === node.id ? [nodeCard(shapes, node, index)] : []));
  const groups = folded.map((group): GroupCard => ({
    kind: 'group', id: group.id, group, title: group.title, position: cornerOf(group, nodes), ...groupPorts(shapes, group, nodes, index),
  }));
  return { cards: [...cards, ...groups], wires: seenWires(document, cardOf) };
}

function nodeCard(shapes: Shapes, node: GraphNode, index: WireIndex): NodeCard {
  return { kind: 'node', id: node.id, node, title: titleOf(shapes, node), position: node.position, ...nodePorts(shapes, node, index) };
}

function seenWires({ wires }: GraphDocument, cardOf: ReadonlyMap<string, string>): SeenWire[] {
  const times = new Map<string, number>();
  return wires.flatMap((wire) => {
    const key = wireKey(wire);
    const before = times.get(key) ?? 0;
    times.set(key, before + 1);
    const [from, to] = [endOf(wire.from, 'output'), endOf(wire.to, 'input')];
    const [source, target] = [cardOf.get(from?.node ?? ''), cardOf.get(to?.node ?? '')];
    if (from === undefined || to === undefined || source === undefined || target === undefined) return [];
    if (source === target && from.node !== to.node) return [];
    return [{ key: before === 0 ? key : `${key} (${before + 1})`, wire, from: { ...from, card: source }, to: { ...to, card: target } }];
  });
}

/** The ports of a node: those declared, and after them those that only wires tell of. */
export const portsOfNode = (shapes: Shapes, document: GraphDocument, node: GraphNode): Ports => nodePorts(shapes, node, indexOf(document));

/**
 * The ports of a group: inputs of its nodes that have no wire or one from outside, outputs with no wire or one that leads
 * outside. Where several are called alike the card they are on is named too.
 */
export function portsOfGroup(shapes: Shapes, document: GraphDocument, group: NodeGroup): Ports {
  return groupPorts(shapes, group, new Map(document.nodes.map((node) => [node.id, node])), indexOf(document));
}

/** Where a folded group's card lies: at the upper left corner of its members. */
export const positionOfGroup = ({ nodes }: GraphDocument, group: NodeGroup): readonly [number, number] =>
  cornerOf(group, new Map(nodes.map((node) => [node.id, node])));

function cornerOf(group: NodeGroup, nodes: ReadonlyMap<string, GraphNode>): readonly [number, number] {
  const box = around(group.nodes.flatMap((id) => (nodes.has(id) ? [boxAt(nodes.get(id)!.position, CARD)] : [])));
  return box === undefined ? [0, 0] : [box.x, box.y];
}

/** For every end with wires, the nodes at their other ends. */
interface WireIndex {
  readonly input: ReadonlyMap<string, readonly string[]>;
  readonly output: ReadonlyMap<string, readonly string[]>;
  /** Ports that wires name, by node. */
  readonly named: Readonly<Record<End['side'], ReadonlyMap<string, ReadonlySet<string>>>>;
}

function indexOf({ wires }: GraphDocument): WireIndex {
  const ends = { input: new Map<string, string[]>(), output: new Map<string, string[]>() };
  const named = { input: new Map<string, Set<string>>(), output: new Map<string, Set<string>>() };
  const enter = (end: End, other: End) => {
    const key = endText(end);
    const others = ends[end.side].get(key);
    if (others === undefined) ends[end.side].set(key, [other.node]);
    else others.push(other.node);
    const ports = named[end.side].get(end.node) ?? new Set();
    named[end.side].set(end.node, ports.add(end.port));
  };
  for (const wire of wires) {
    const [from, to] = [endOf(wire.from, 'output'), endOf(wire.to, 'input')];
    if (from === undefined || to === undefined) continue;
    enter(from, to);
    enter(to, from);
  }
  return { ...ends, named };
}

function nodePorts(shapes: Shapes, node: GraphNode, index: WireIndex): Ports {
  const shape = shapes.get(node.type);
  const on = (side: End['side'], declared: Readonly<Record<string, DeclaredPort>> = {}): SeenPort[] => {
    const rest = [...(index.named[side].get(node.id) ?? [])].filter((name) => !Object.hasOwn(declared, name));
    const seen = (name: string, port: DeclaredPort | undefined) => seenPort({ side, node: node.id, port: name }, port, index);
    return [...Object.entries(declared).map(([name, port]) => seen(name, port)), ...rest.map((name) => seen(name, undefined))];
  };
  return { inputs: on('input', shape?.inputs), outputs: on('output', shape?.outputs) };
}

interface DeclaredPort {
  readonly type: PortType;
  readonly doc: string;
  readonly many?: true;
  readonly optional?: true;
}

function seenPort(end: End, port: DeclaredPort | undefined, index: WireIndex): SeenPort {
  const key = endText(end);
  return {
    ...end, key, type: port?.type, label: portLabel(end.port, port?.type), doc: port?.doc ?? 'This step has no such port.',
    many: port?.many === true, optional: port === undefined || port.optional === true, wired: index[end.side].has(key),
  };
}

function groupPorts(shapes: Shapes, group: NodeGroup, nodes: ReadonlyMap<string, GraphNode>, index: WireIndex): Ports {
  const members = group.nodes.flatMap((id) => nodes.get(id) ?? []);
  const inside = new Set(members.map(({ id }) => id));
  const opens = ({ side, key }: SeenPort) => {
    const others = index[side].get(key) ?? [];
    return others.length === 0 || others.some((other) => !inside.has(other));
  };
  const ports = members.map((node) => nodePorts(shapes, node, index));
  const titles = new Map(members.map((node) => [node.id, titleOf(shapes, node)]));
  return {
    inputs: toldApart(ports.flatMap(({ inputs }) => inputs.filter(opens)), titles),
    outputs: toldApart(ports.flatMap(({ outputs }) => outputs.filter(opens)), titles),
  };
}

/** Names the card where a label alone would mean several ports, and its id where even that would. */
function toldApart(ports: readonly SeenPort[], titles: ReadonlyMap<string, string>): SeenPort[] {
  const named = relabelled(ports, (port) => `${port.label}, ${titles.get(port.node)}`);
  return relabelled(named, (port) => `${port.label} (${port.node})`);
}

function relabelled(ports: readonly SeenPort[], longer: (port: SeenPort) => string): SeenPort[] {
  const times = new Map<string, number>();
  for (const { label } of ports) times.set(label, (times.get(label) ?? 0) + 1);
  return ports.map((port) => (times.get(port.label) === 1 ? port : { ...port, label: longer(port) }));
}
