import { addPage, type Book, bottomOf, innerWidth } from './book.ts';
import { EDGE } from './paper.ts';

/** The least that is not broken over columns and pages. */
export interface Item {
  /** mm. */
  readonly height: number;
  /** Room above it, but not at the head of a column. */
  readonly before?: number;
  /** Stays with the item after it. */
  readonly keep?: boolean;
  /** Is drawn again above this item where a column begins with it. */
  readonly head?: Item;
  readonly draw: (x: number, y: number) => void;
}

/** Something to be read, broken into items once the width of its column is known. */
export type Block = (book: Book, width: number) => readonly Item[];

const GAP = 7;

export interface Flow {
  readonly columns: number;
  readonly top: number;
  /** Kept free at the right, mm. */
  readonly right?: number;
  /** Begins a page and returns where what flows goes on. */
  readonly nextPage: () => number;
}

/** Lets blocks flow through columns as even as can be, over as many pages as it takes; returns the y below them. */
export function flow(book: Book, blocks: readonly Block[], { columns, top, nextPage, right = 0 }: Flow): number {
  const width = (innerWidth(book) - right - GAP * (columns - 1)) / columns;
  let rest = blocks.flatMap((block) => block(book, width));
  let y = top, fresh = false;
  while (rest.length > 0) {
    const packed = evenly(rest, columns, bottomOf(book) - y, fresh);
    packed.columns.forEach((column, i) => {
      for (const { item, at } of column) item.draw(EDGE + i * (width + GAP), y + at);
    });
    rest = rest.slice(packed.count);
    if (rest.length === 0) return y + packed.height;
    y = nextPage();
    fresh = true;
  }
  return y;
}

interface Packed {
  readonly columns: readonly (readonly { readonly item: Item; readonly at: number }[])[];
  readonly count: number;
  readonly height: number;
}

/** Columns are tried shorter in steps of this, mm. */
const STEP = 2;

function evenly(items: readonly Item[], columns: number, height: number, fresh: boolean): Packed {
  let best = pack(items, columns, height, fresh);
  if (best.count < items.length || columns === 1) return best;
  for (let lower = height - STEP; lower > 0; lower -= STEP) {
    const packed = pack(items, columns, lower, false);
    if (packed.count < items.length) break;
    best = packed;
  }
  return best;
}

/** Fills columns one after the other. On a fresh page the first item is taken even if it is too high. */
function pack(items: readonly Item[], columns: number, height: number, fresh: boolean): Packed {
  const filled: { item: Item; at: number }[][] = [];
  let next = 0, deepest = 0;
  for (let i = 0; i < columns && next < items.length; i++) {
    const column: { item: Item; at: number }[] = [];
    let y = 0;
    for (; next < items.length; next++) {
      const item = items[next]!;
      const first = column.length === 0;
      const head = first ? item.head : undefined;
      const at = y + (first ? 0 : item.before ?? 0) + (head?.height ?? 0);
      if (at + item.height + keptWith(items, next) > height && !(fresh && first && i === 0)) break;
      if (head) column.push({ item: head, at: y });
      column.push({ item, at });
      y = at + item.height;
    }
    filled.push(column);
    deepest = Math.max(deepest, y);
  }
  return { columns: filled, count: next, height: deepest };
}

function keptWith(items: readonly Item[], index: number): number {
  let height = 0;
  for (let i = index; items[i]?.keep && items[i + 1]; i++) height += items[i + 1]!.height + (items[i + 1]!.before ?? 0);
  return height;
}

/** A page after the last one, with nothing on it. */
export function turnPage(book: Book): number {
  addPage(book);
  return EDGE;
}
