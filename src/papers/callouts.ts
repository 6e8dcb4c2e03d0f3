import type { Point } from '../geometry/index.ts';
import { type Book } from './book.ts';
import { drawLead, writeOver } from './pen.ts';

/** Words outside a drawing for a place in it. Its place is on the page, mm; `up` tells on which side the words stand. */
export interface Callout {
  readonly text: string;
  readonly at: Point;
  readonly up: boolean;
}

export interface PlacedCallout extends Callout {
  /** From 0, nearest to the drawing. */
  readonly row: number;
  readonly flagsLeft: boolean;
}

const SIZE = 8;
/** Widest that a character is on average, mm: rows must be known before there is a page to measure on. */
const CHARACTER = 1.62;
const GAP = 1.5;
export const CALLOUT_ROW = 4;

/** Rows for callouts so that no words lie over others or over a line that leads to others. `limit` is how far to the right words may reach. */
export function placeCallouts(callouts: readonly Callout[], limit: number): PlacedCallout[] {
  return [true, false].flatMap((up) => placeSide(callouts.filter((one) => one.up === up), limit));
}

/** Rows that callouts take on one side. */
export const calloutRows = (placed: readonly PlacedCallout[], up: boolean): number => Math.max(0, ...placed.filter((one) => one.up === up).map(({ row }) => row + 1));

/** Words stand to the right of their line where there is room. From right to left each takes the nearest row that is free: its words then pass over lines that end below. */
function placeSide(callouts: readonly Callout[], limit: number): PlacedCallout[] {
  const flagged = callouts.map((one) => ({ ...one, flagsLeft: one.at.x + widthOf(one) > limit }));
  const order = [...flagged.filter(({ flagsLeft }) => flagsLeft).sort((a, b) => a.at.x - b.at.x), ...flagged.filter(({ flagsLeft }) => !flagsLeft).sort((a, b) => b.at.x - a.at.x)];
  const placed: PlacedCallout[] = [];
  for (const one of order) placed.push({ ...one, row: freeRow(one, placed) });
  return placed;
}

const widthOf = ({ text }: Callout): number => text.length * CHARACTER + GAP;

const spanOf = (one: Omit<PlacedCallout, 'row'>): readonly [number, number] => (one.flagsLeft ? [one.at.x - widthOf(one), one.at.x] : [one.at.x, one.at.x + widthOf(one)]);

function freeRow(one: Omit<PlacedCallout, 'row'>, placed: readonly PlacedCallout[]): number {
  const [low, high] = spanOf(one);
  const rows = Array.from({ length: placed.length + 1 }, (_, row) => row);
  const blocks = (row: number, other: PlacedCallout, alsoLines: boolean) => {
    const [from, to] = spanOf(other);
    if (other.row === row && from < high && to > low) return true;
    return alsoLines && ((other.row >= row && other.at.x >= low && other.at.x <= high) || (other.row < row && one.at.x > from && one.at.x < to));
  };
  return rows.find((row) => !placed.some((other) => blocks(row, other, true))) ?? rows.find((row) => !placed.some((other) => blocks(row, other, false)))!;
}

/** Draws them above and below two heights of the page. */
export function drawCallouts(book: Book, placed: readonly PlacedCallout[], { above, below }: { readonly above: number; readonly below: number }): void {
  const footOf = ({ up, row }: PlacedCallout) => (up ? above - row * CALLOUT_ROW - 3 : below + row * CALLOUT_ROW + 3.4);
  for (const one of placed) drawLead(book, one.at, { x: one.at.x, y: one.up ? footOf(one) - 2.4 : footOf(one) });
  for (const one of placed) writeOver(book, one.text, { x: one.at.x + (one.flagsLeft ? -0.9 : 0.9), y: footOf(one) }, { size: SIZE, bold: true, align: one.flagsLeft ? 'right' : 'left' });
}
