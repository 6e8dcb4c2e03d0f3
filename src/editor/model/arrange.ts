import type { GraphDocument } from '../../runtime/index.ts';
import { type Box, type Sizes, GAP, cardBoxes } from './boxes.ts';
import { cardOf, membersOf } from './graph.ts';
import type { Edit } from './history.ts';
import { moveSteps } from './steps.ts';

/** Ways of lining cards up: by an edge or a middle, or with even spaces between them along x or y. */
export type Alignment = 'left' | 'centre' | 'right' | 'top' | 'middle' | 'bottom' | 'spread-x' | 'spread-y';

/** Lines cards up. They meet at the outermost edge, or at the middle of the box around all; spreading keeps the two outermost in place. */
export function align(document: GraphDocument, ids: readonly string[], how: Alignment, sizes: Sizes = new Map()): Edit {
  const boxes = cardBoxes(document, sizes);
  const cards = cardsOf(document, ids).flatMap((id) => (boxes.has(id) ? [[id, boxes.get(id)!] as const] : []));
  if (cards.length < 2) return () => undefined;
  const places = how === 'spread-x' || how === 'spread-y' ? spread(cards, how === 'spread-x' ? 'x' : 'y') : lined(cards, how);
  return placeCards(boxes, places);
}

/** The cards that ids of nodes and groups are seen on, each once, in the order named. An unfolded group stands for its members. */
export function cardsOf(document: GraphDocument, ids: readonly string[]): readonly string[] {
  const folded = new Set(document.groups.filter(({ collapsed }) => collapsed).map(({ id }) => id));
  return [...new Set(ids.flatMap((id) => (folded.has(id) ? [id] : membersOf(document, [id]).map((node) => cardOf(document, node)))))];
}

type Placed = readonly [id: string, box: Box];
/** Where cards go: x, y of their upper left corners. */
export type Places = ReadonlyMap<string, readonly [number, number]>;

/** Moves cards from where they lie to their places; a folded group's members all go with it. */
export function placeCards(boxes: ReadonlyMap<string, Box>, places: Places): Edit {
  return (draft) => {
    for (const [id, [x, y]] of places) {
      const box = boxes.get(id);
      if (box !== undefined) moveSteps([id], x - box.x, y - box.y)(draft);
    }
  };
}

function lined(cards: readonly Placed[], how: Exclude<Alignment, `spread-${string}`>): Places {
  const [at, extent]: ['x' | 'y', 'width' | 'height'] = how === 'left' || how === 'centre' || how === 'right' ? ['x', 'width'] : ['y', 'height'];
  const least = cards.reduce((low, [, box]) => Math.min(low, box[at]), Infinity);
  const most = cards.reduce((high, [, box]) => Math.max(high, box[at] + box[extent]), -Infinity);
  const place = (box: Box) => {
    if (how === 'left' || how === 'top') return least;
    return how === 'right' || how === 'bottom' ? most - box[extent] : Math.round((least + most - box[extent]) / 2);
  };
  return new Map(cards.map(([id, box]) => [id, at === 'x' ? [place(box), box.y] : [box.x, place(box)]]));
}

/** Even spaces between the outermost two. Where there is no room for that the cards go on at the usual distance. */
function spread(cards: readonly Placed[], at: 'x' | 'y'): Places {
  const extent = at === 'x' ? 'width' : 'height';
  const sorted = [...cards].sort(([, a], [, b]) => a[at] - b[at]);
  const [first, last] = [sorted[0]![1], sorted.at(-1)![1]];
  const filled = sorted.reduce((sum, [, box]) => sum + box[extent], 0);
  const space = (last[at] + last[extent] - first[at] - filled) / (sorted.length - 1);
  const gap = space >= 0 ? space : GAP.y;
  let next = first[at];
  return new Map(sorted.map(([id, box]) => {
    const place = Math.round(next);
    next += box[extent] + gap;
    return [id, at === 'x' ? [place, box.y] : [box.x, place]];
  }));
}
