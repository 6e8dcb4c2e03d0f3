import { type GraphDocument, type GraphNode, type Shapes, type Wire, deepEqual } from '../../runtime/index.ts';
import { type End, endOf, endText, portLabel, titleOf } from '../model/graph.ts';
import { type Card, type SeenPort, type SeenWire, visibleGraph } from '../model/visible.ts';
import { CARD, portHeight } from './card-layout.ts';
import type { Spot } from './wire-path.ts';

/** A port as a card shows it. */
export interface BenchPort {
  readonly end: End;
  readonly label: string;
  /** Undefined when nobody knows the port: its node's type is unknown, or it is no longer declared. */
  readonly type: string | undefined;
  readonly doc: string;
  readonly many: boolean;
  readonly optional: boolean;
  /** What it is wired to: title of the step and name of its port. */
  readonly wired: readonly string[];
}

/** A card on the bench: a node, or a folded group. */
export interface BenchCard {
  readonly id: string;
  readonly kind: 'node' | 'group';
  readonly at: Spot;
  readonly title: string;
  /** Name of the node's type; empty for a group. */
  readonly type: string;
  readonly known: boolean;
  readonly inputs: readonly BenchPort[];
  readonly outputs: readonly BenchPort[];
  /** Nodes it stands for. */
  readonly members: readonly string[];
}

/** A wire between two cards, and which of their ports, counted from the top, it joins. */
export interface BenchWire {
  readonly key: string;
  readonly wire: Wire;
  readonly source: string;
  readonly target: string;
  readonly out: number;
  readonly into: number;
}

export interface BenchGraph {
  readonly cards: ReadonlyMap<string, BenchCard>;
  readonly wires: ReadonlyMap<string, BenchWire>;
}

const NOTHING: BenchGraph = { cards: new Map(), wires: new Map() };
let last: { readonly document: GraphDocument; readonly shapes: Shapes; readonly graph: BenchGraph } | undefined;

/** The cards and wires to show. What did not change keeps its identity from call to call, so that its card is not drawn again. */
export function benchGraph(document: GraphDocument, shapes: Shapes): BenchGraph {
  if (last?.document === document && last.shapes === shapes) return last.graph;
  const moved = last?.shapes === shapes ? movedOnly(last.document, document) : undefined;
  const graph = last !== undefined && moved !== undefined ? withMoved(last.graph, moved) : derivedAnew(document, shapes);
  last = { document, shapes, graph };
  return graph;
}

function derivedAnew(document: GraphDocument, shapes: Shapes): BenchGraph {
  const fresh = derive(document, shapes);
  return { cards: keepEqual(last?.graph.cards ?? NOTHING.cards, fresh.cards), wires: keepEqual(last?.graph.wires ?? NOTHING.wires, fresh.wires) };
}

/**
 * The nodes that moved between two documents when nothing else that cards show of the graph changed, as while a value or a card
 * is dragged: then there is no need to go through a large graph again. Undefined when more changed.
 */
function movedOnly(before: GraphDocument, now: GraphDocument): readonly GraphNode[] | undefined {
  if (before.wires !== now.wires || before.groups !== now.groups || before.nodes.length !== now.nodes.length) return undefined;
  const changed = now.nodes.flatMap((node, i) => (node === before.nodes[i] ? [] : [[node, before.nodes[i]!] as const]));
  if (changed.some(([a, b]) => a.id !== b.id || a.type !== b.type || a.title !== b.title)) return undefined;
  const moved = changed.filter(([a, b]) => a.position[0] !== b.position[0] || a.position[1] !== b.position[1]).map(([node]) => node);
  return moved.length > 0 && now.groups.some(({ collapsed }) => collapsed) ? undefined : moved;
}

function withMoved(graph: BenchGraph, moved: readonly GraphNode[]): BenchGraph {
  if (moved.length === 0) return graph;
  const cards = new Map(graph.cards);
  for (const { id, position } of moved) cards.set(id, { ...cards.get(id)!, at: position });
  return { cards, wires: graph.wires };
}

function keepEqual<T>(before: ReadonlyMap<string, T>, now: ReadonlyMap<string, T>): ReadonlyMap<string, T> {
  const kept = new Map([...now].map(([id, value]) => {
    const old = before.get(id);
    return [id, old !== undefined && deepEqual(old, value) ? old : value];
  }));
  const same = before.size === kept.size && [...kept].every(([id, value]) => before.get(id) === value);
  return same ? before : kept;
}

function derive(document: GraphDocument, shapes: Shapes): BenchGraph {
  const visible = visibleGraph(shapes, document);
  const wiring = wiringOf(document, shapes);
  const cards = new Map(visible.cards.map((card) => [card.id, benchCard(card, shapes, wiring)]));
  return { cards, wires: wiresBetween(visible.wires, cards) };
}

/** By side and `id.port`: what is at the other ends. */
type Wiring = ReadonlyMap<string, readonly string[]>;

function wiringOf({ nodes, wires }: GraphDocument, shapes: Shapes): Wiring {
  const found = new Map<string, string[]>();
  const titles = new Map(nodes.map((node) => [node.id, titleOf(shapes, node)]));
  const add = (key: string, other: End | undefined) => {
    const says = other === undefined ? '' : `${titles.get(other.node) ?? other.node}, ${portLabel(other.port, undefined)}`;
    found.set(key, [...(found.get(key) ?? []), says]);
  };
  for (const { from, to } of wires) {
    add(`output ${from}`, endOf(to, 'input'));
    add(`input ${to}`, endOf(from, 'output'));
  }
  return found;
}

function benchCard(card: Card, shapes: Shapes, wiring: Wiring): BenchCard {
  const { id, kind, position: at, title } = card;
  const ports = (list: readonly SeenPort[]) => list.map((port) => benchPort(port, wiring));
  const own = card.kind === 'node'
    ? { type: card.node.type, known: shapes.has(card.node.type), members: [id] }
    : { type: '', known: true, members: card.group.nodes };
  return { id, kind, at, title, ...own, inputs: ports(card.inputs), outputs: ports(card.outputs) };
}

function benchPort({ side, node, port, label, type, doc, many, optional, key }: SeenPort, wiring: Wiring): BenchPort {
  return { end: { side, node, port }, label, type, doc, many, optional, wired: wiring.get(`${side} ${key}`) ?? [] };
}

function wiresBetween(wires: readonly SeenWire[], cards: ReadonlyMap<string, BenchCard>): ReadonlyMap<string, BenchWire> {
  const places = { output: placesOf(cards, 'outputs'), input: placesOf(cards, 'inputs') };
  return new Map(wires.map(({ key, wire, from, to }) => [key, {
    key, wire, source: from.card, target: to.card,
    out: places.output.get(`${from.card} ${endText(from)}`) ?? 0, into: places.input.get(`${to.card} ${endText(to)}`) ?? 0,
  }]));
}

/** By card and port: the how-manieth of its side it is. */
function placesOf(cards: ReadonlyMap<string, BenchCard>, side: 'inputs' | 'outputs'): ReadonlyMap<string, number> {
  return new Map([...cards.values()].flatMap((card) => card[side].map(({ end }, index) => [`${card.id} ${endText(end)}`, index] as const)));
}

/** Where a port is, from its card's place and width. */
export const portSpot = ({ x, y, width }: { readonly x: number; readonly y: number; readonly width: number }, side: End['side'], index: number): Spot =>
  [side === 'output' ? x + width : x, y + portHeight(index)];

export const cardWidth = (opened: boolean): number => (opened ? CARD.openedWidth : CARD.width);
