import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { BenchCard, BenchGraph, BenchWire } from './bench-graph.ts';
import { cardWidth, portSpot } from './bench-graph.ts';
import type { Box, Sizes } from '../model/boxes.ts';
import { likelyHeight } from './card-layout.ts';
import { type Spot, routeWire } from './wire-path.ts';

/** Where cards and wires lie at this moment, also while they are dragged: only a drawing, made from the document and from gestures. */
export interface Lie {
  readonly boxes: ReadonlyMap<string, Box>;
  readonly turns: ReadonlyMap<string, readonly Spot[]>;
}

export const lie = createStore<Lie>()(() => ({ boxes: new Map(), turns: new Map() }));

export const useLie = <T>(pick: (state: Lie) => T): T => useStore(lie, pick);

/** Heights as the page shows them, by card. */
const measured = new Map<string, { readonly height: number; readonly opened: boolean }>();

/** Lays all cards where the document has them; wires stay until `layWires`. */
export function layCards({ cards }: BenchGraph, opened: readonly string[]): void {
  const open = new Set(opened);
  const boxes = new Map([...cards.values()].map((card) => [card.id, boxOf(card, open.has(card.id))]));
  for (const id of measured.keys()) if (!cards.has(id)) measured.delete(id);
  lie.setState({ boxes });
}

function boxOf({ id, at: [x, y], inputs, outputs }: BenchCard, opened: boolean): Box {
  const known = measured.get(id);
  const height = known?.opened === opened ? known.height : likelyHeight(Math.max(inputs.length, outputs.length), opened);
  return { x, y, width: cardWidth(opened), height };
}

/** Takes in what the page measured; says whether anything is different from what was thought. */
export function takeHeight(id: string, height: number, opened: boolean): boolean {
  measured.set(id, { height, opened });
  const box = lie.getState().boxes.get(id);
  return box !== undefined && Math.abs(box.height - height) > 1;
}

/** Routes all wires of the graph anew. */
export function layWires(graph: BenchGraph): void {
  const { boxes, turns: before } = lie.getState();
  const cards = [...boxes.values()];
  const turns = new Map([...graph.wires.values()].flatMap((wire) => keepSame(wire, route(wire, graph, boxes, cards), before)));
  lie.setState({ turns });
}

function keepSame({ key }: BenchWire, now: readonly Spot[] | undefined, before: Lie['turns']): readonly (readonly [string, readonly Spot[]])[] {
  if (now === undefined) return [];
  const old = before.get(key);
  const same = old?.length === now.length && old.every(([x, y], i) => x === now[i]![0] && y === now[i]![1]);
  return [[key, same ? old : now]];
}

function route(wire: BenchWire, graph: BenchGraph, boxes: Lie['boxes'], cards: readonly Box[]): readonly Spot[] | undefined {
  const [from, to] = [boxes.get(wire.source), boxes.get(wire.target)];
  if (from === undefined || to === undefined) return undefined;
  const into = graph.cards.get(wire.target)!.inputs.length;
  return routeWire(
    { at: portSpot(from, 'output', wire.out), lane: wire.out },
    { at: portSpot(to, 'input', wire.into), lane: from.y > to.y ? into - 1 - wire.into : wire.into },
    cards,
    laneOf(wire.wire.from),
  );
}

/** Wires of one output run together, those of different outputs seldom in one lane. */
function laneOf(from: string): number {
  let sum = 0;
  for (let i = 0; i < from.length; i += 1) sum = (sum * 31 + from.charCodeAt(i)) % 997;
  return sum % 5;
}

/** Draws cards away from where the document has them by dx, dy, with the wires that hang on them. */
export function shiftCards(graph: BenchGraph, ids: ReadonlySet<string>, dx: number, dy: number): void {
  const { boxes: before, turns: old } = lie.getState();
  const boxes = new Map([...before].map(([id, box]) => {
    const at = ids.has(id) ? graph.cards.get(id)?.at : undefined;
    return [id, at === undefined ? box : { ...box, x: at[0] + dx, y: at[1] + dy }];
  }));
  const cards = [...boxes.values()];
  const turns = new Map(old);
  for (const wire of graph.wires.values()) {
    if (!ids.has(wire.source) && !ids.has(wire.target)) continue;
    const way = route(wire, graph, boxes, cards);
    if (way !== undefined) turns.set(wire.key, way);
  }
  lie.setState({ boxes, turns });
}

/** How large each card is drawn now, for whoever places cards. */
export const cardSizes = (): Sizes => lie.getState().boxes;
