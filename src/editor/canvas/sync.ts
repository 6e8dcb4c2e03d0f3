import type { Box } from '../model/boxes.ts';
import type { BenchCard, BenchGraph, BenchWire } from './bench-graph.ts';

/** What has to be done to a bench that shows one graph until it shows another. */
export interface Changes {
  readonly wiresAway: readonly string[];
  readonly cardsAway: readonly string[];
  readonly cardsNew: readonly string[];
  readonly cardsMoved: readonly string[];
  readonly wiresNew: readonly string[];
}

/** What stands on the bench: cards with their places, and wires by key with the cards they join. */
export interface Standing {
  readonly cards: ReadonlyMap<string, { readonly x: number; readonly y: number }>;
  readonly wires: ReadonlyMap<string, Pick<BenchWire, 'source' | 'target'>>;
}

/** In an order that can be carried out: wires go before their cards and come after them. */
export function changesTo(wanted: BenchGraph, standing: Standing): Changes {
  return {
    wiresAway: [...standing.wires.keys()].filter((key) => !joinsSame(key, wanted, standing)),
    cardsAway: [...standing.cards.keys()].filter((id) => !wanted.cards.has(id)),
    cardsNew: [...wanted.cards.keys()].filter((id) => !standing.cards.has(id)),
    cardsMoved: [...wanted.cards.values()].filter((card) => isElsewhere(card, standing)).map(({ id }) => id),
    wiresNew: [...wanted.wires.keys()].filter((key) => !joinsSame(key, wanted, standing)),
  };
}

/** A wire into a group that is folded or taken apart joins other cards than before. */
function joinsSame(key: string, wanted: BenchGraph, standing: Standing): boolean {
  const [a, b] = [wanted.wires.get(key), standing.wires.get(key)];
  return a !== undefined && b !== undefined && a.source === b.source && a.target === b.target;
}

function isElsewhere({ id, at }: BenchCard, { cards }: Standing): boolean {
  const now = cards.get(id);
  return now !== undefined && (now.x !== at[0] || now.y !== at[1]);
}

/** Cards in the order they are to be built: those nearest to what is looked at first. */
export function nearestFirst(ids: readonly string[], boxes: ReadonlyMap<string, Box>, seen: Box): readonly string[] {
  const far = new Map(ids.map((id) => [id, distance(boxes.get(id), seen)]));
  return [...ids].sort((a, b) => far.get(a)! - far.get(b)!);
}

/** Between a card and a frame, 0 when they touch. */
function distance(box: Box | undefined, seen: Box): number {
  if (box === undefined) return Infinity;
  const x = Math.max(0, seen.x - box.x - box.width, box.x - seen.x - seen.width);
  const y = Math.max(0, seen.y - box.y - box.height, box.y - seen.y - seen.height);
  return Math.hypot(x, y);
}
