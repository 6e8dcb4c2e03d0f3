import type { Box } from './boxes.ts';

/** What walking needs to know of a graph as it is seen: its cards and which wires lead from one to another. */
export interface Walkable {
  readonly cards: readonly { readonly id: string; readonly position: readonly [number, number] }[];
  readonly wires: readonly { readonly from: { readonly card: string }; readonly to: { readonly card: string } }[];
}

/** The cards that wires lead to from this one, or with `back` those they come from; from top to bottom, then left to right. */
export function alongWires({ cards, wires }: Walkable, id: string, back = false): readonly string[] {
  const found = new Set(wires.flatMap(({ from, to }) => {
    const [here, there] = back ? [to.card, from.card] : [from.card, to.card];
    return here === id && there !== id ? [there] : [];
  }));
  return cards.filter((card) => found.has(card.id)).sort(byPlace).map((card) => card.id);
}

/** The card among several at the end of wires that comes after this one, from top to bottom; round again at the end. */
export function besideAlongWires(graph: Walkable, id: string, from: string, back = false, step: 1 | -1 = 1): string | undefined {
  const beside = alongWires(graph, from, back);
  const at = beside.indexOf(id);
  return at < 0 ? beside[0] : beside[(at + step + beside.length) % beside.length];
}

/**
 * All cards in the order to read them: each after those it works on, and of those that could come next the leftmost, then the
 * topmost. Cards in a circle come where the circle is first met by place.
 */
export function readingOrder({ cards, wires }: Walkable): readonly string[] {
  const waiting = new Map(cards.map(({ id }) => [id, new Set<string>()]));
  const next = new Map(cards.map(({ id }) => [id, new Set<string>()]));
  for (const { from, to } of wires) {
    if (from.card === to.card || !waiting.has(from.card)) continue;
    waiting.get(to.card)?.add(from.card);
    next.get(from.card)?.add(to.card);
  }
  const rest = [...cards].sort(byColumn).map(({ id }) => id);
  const order: string[] = [];
  while (rest.length > 0) {
    const ready = rest.findIndex((id) => waiting.get(id)!.size === 0);
    const [id] = rest.splice(Math.max(0, ready), 1);
    order.push(id!);
    for (const after of next.get(id!) ?? []) waiting.get(after)!.delete(id!);
  }
  return order;
}

export const firstCard = (graph: Walkable): string | undefined => readingOrder(graph)[0];
export const lastCard = (graph: Walkable): string | undefined => readingOrder(graph).at(-1);

/** The card before or after this one in reading order, round again at the ends; the first when there is no such card. */
export function inReadingOrder(graph: Walkable, id: string | undefined, step: 1 | -1): string | undefined {
  const order = readingOrder(graph);
  const at = id === undefined ? -1 : order.indexOf(id);
  if (at < 0) return step === 1 ? order[0] : order.at(-1);
  return order[(at + step + order.length) % order.length];
}

/** Cards that no wire joins to any other. */
export function lonelyCards({ cards, wires }: Walkable): readonly string[] {
  const joined = new Set(wires.flatMap(({ from, to }) => (from.card === to.card ? [] : [from.card, to.card])));
  return cards.flatMap(({ id }) => (joined.has(id) ? [] : [id]));
}

export type Direction = 'left' | 'right' | 'up' | 'down';

/**
 * The nearest card in a direction on the screen; undefined when none lies there. What lies off to the side counts as twice as
 * far, so that a row is followed before it is left. What lies more to the side than ahead counts only if nothing else does,
 * and then the one most ahead.
 */
export function towards(boxes: ReadonlyMap<string, Box>, id: string, direction: Direction): string | undefined {
  const own = boxes.get(id);
  if (own === undefined) return undefined;
  const ahead = [...boxes].filter(([other]) => other !== id)
    .map(([other, box]) => ({ other, ...offset(own, box, direction) }))
    .filter((one) => one.ahead > 0 && one.aside <= MOST_ASIDE * one.ahead);
  const straight = ahead.filter((one) => one.aside <= one.ahead);
  const nearest = straight.sort((a, b) => a.ahead + 2 * a.aside - b.ahead - 2 * b.aside)[0];
  return (nearest ?? ahead.sort((a, b) => a.aside / a.ahead - b.aside / b.ahead)[0])?.other;
}

/** A card much more to the side than ahead does not lie in that direction for anyone's eye. */
const MOST_ASIDE = 5;

/** From middle to middle: how far in a direction, and how far off to its side. */
function offset(from: Box, to: Box, direction: Direction): { readonly ahead: number; readonly aside: number } {
  const x = to.x + to.width / 2 - from.x - from.width / 2;
  const y = to.y + to.height / 2 - from.y - from.height / 2;
  const [along, across] = direction === 'left' || direction === 'right' ? [x, y] : [y, x];
  return { ahead: direction === 'right' || direction === 'down' ? along : -along, aside: Math.abs(across) };
}

type Placed = Walkable['cards'][number];
const byPlace = (a: Placed, b: Placed): number => a.position[1] - b.position[1] || a.position[0] - b.position[0];
const byColumn = (a: Placed, b: Placed): number => a.position[0] - b.position[0] || a.position[1] - b.position[1];
