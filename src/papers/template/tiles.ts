import { type Box, boxesOverlap, boxSize, type Point } from '../../geometry/index.ts';
import type { Size } from '../paper.ts';

/** How far neighbouring pages show the same, mm: room for a register mark and for gluing. */
export const OVERLAP = 14;

/** A page of the template, rows counted from the top, columns from the left, from 1. */
export interface TemplatePage {
  readonly row: number;
  readonly column: number;
  /** What it shows, drawing coordinates. */
  readonly window: Box;
}

/** A mark that two neighbouring pages both show. */
export interface RegisterMark {
  readonly number: number;
  readonly at: Point;
  readonly between: 'columns' | 'rows';
}

export interface TemplatePlan {
  readonly rows: number;
  readonly columns: number;
  /** Every place of a page, row by row from the top. */
  readonly grid: readonly TemplatePage[];
  /** Those that are printed. */
  readonly pages: readonly TemplatePage[];
  readonly marks: readonly RegisterMark[];
}

/** What must be seen: boxes of holes and pieces of outline. */
export interface Shown {
  readonly boxes: readonly Box[];
  readonly edges: readonly (readonly [Point, Point])[];
}

/** Lays pages that show so much each over a box, and keeps those that show something or join pages that do. */
export function planTemplate(box: Box, window: Size, shown: Shown): TemplatePlan {
  const { width, height } = boxSize(box);
  const [columns, rows] = [countFor(width, window.width), countFor(height, window.height)];
  const [stepX, stepY] = [window.width - OVERLAP, window.height - OVERLAP];
  // The pages together are as much larger than the box on all sides.
  const left = (box.minX + box.maxX - (columns * stepX + OVERLAP)) / 2, top = (box.minY + box.maxY + (rows * stepY + OVERLAP)) / 2;
  const grid = Array.from({ length: rows * columns }, (_, i): TemplatePage => {
    const row = Math.floor(i / columns), column = i % columns;
    const minX = left + column * stepX, maxY = top - row * stepY;
    return { row: row + 1, column: column + 1, window: { minX, maxX: minX + window.width, minY: maxY - window.height, maxY } };
  });
  const kept = joined(grid, columns, grid.map((page) => carries(page.window, shown)));
  return { rows, columns, grid, pages: grid.filter((_, i) => kept[i]), marks: marksOf(grid, columns, kept) };
}

const countFor = (length: number, window: number): number => Math.max(1, Math.ceil((length - OVERLAP) / (window - OVERLAP) - 1e-9));

const carries = (window: Box, { boxes, edges }: Shown): boolean => boxes.some((one) => boxesOverlap(one, window)) || edges.some(([a, b]) => comesInto(window, a, b));

/** Whether a straight edge comes into a box: what of it lies between the box's sides, narrowed side by side (Liang and Barsky, 1984). */
export function comesInto({ minX, minY, maxX, maxY }: Box, a: Point, b: Point): boolean {
  let low = 0, high = 1;
  for (const [from, by, min, max] of [[a.x, b.x - a.x, minX, maxX], [a.y, b.y - a.y, minY, maxY]] as const) {
    if (by === 0) {
      if (from < min || from > max) return false;
      continue;
    }
    const [p, q] = [(min - from) / by, (max - from) / by];
    low = Math.max(low, Math.min(p, q));
    high = Math.min(high, Math.max(p, q));
  }
  return low <= high;
}

/** Pages that hang together through shared edges: others are kept, as few as a way takes, to join what would lie apart. */
function joined(grid: readonly TemplatePage[], columns: number, carrying: readonly boolean[]): boolean[] {
  const kept = [...carrying];
  for (;;) {
    const first = kept.indexOf(true);
    if (first === -1) return kept;
    const way = wayOut(grid.length, columns, kept, first);
    if (!way) return kept;
    for (const page of way) kept[page] = true;
  }
}

/** From the pages that hang together with one, the shortest way over pages left out to any other kept page; undefined when there is none. */
function wayOut(count: number, columns: number, kept: readonly boolean[], first: number): number[] | undefined {
  const from = new Map<number, number>();
  let edge = [...piece(count, columns, kept, first)];
  const own = new Set(edge);
  while (edge.length > 0) {
    const next: number[] = [];
    for (const page of edge) {
      for (const neighbour of neighbours(page, count, columns)) {
        if (own.has(neighbour) || from.has(neighbour)) continue;
        from.set(neighbour, page);
        if (kept[neighbour]) return trail(from, neighbour);
        next.push(neighbour);
      }
    }
    edge = next;
  }
  return undefined;
}

function trail(from: ReadonlyMap<number, number>, end: number): number[] {
  const way: number[] = [];
  for (let page: number | undefined = end; page !== undefined; page = from.get(page)) way.push(page);
  return way;
}

function piece(count: number, columns: number, kept: readonly boolean[], first: number): Set<number> {
  const found = new Set([first]);
  for (const page of found) for (const neighbour of neighbours(page, count, columns)) if (kept[neighbour]) found.add(neighbour);
  return found;
}

function neighbours(page: number, count: number, columns: number): number[] {
  const column = page % columns;
  return [...(column > 0 ? [page - 1] : []), ...(column < columns - 1 ? [page + 1] : []), ...(page >= columns ? [page - columns] : []), ...(page + columns < count ? [page + columns] : [])];
}

/** Along each shared edge a mark stands at these shares of it. */
const SHARES = [0.22, 0.78];

function marksOf(grid: readonly TemplatePage[], columns: number, kept: readonly boolean[]): RegisterMark[] {
  const places = grid.flatMap(({ column, window: { minX, maxX, minY, maxY } }, i): Omit<RegisterMark, 'number'>[] => {
    if (!kept[i]) return [];
    const right = column < columns && kept[i + 1], below = kept[i + columns];
    return [
      ...(right ? SHARES.map((share) => ({ at: { x: maxX - OVERLAP / 2, y: minY + share * (maxY - minY) }, between: 'columns' as const })) : []),
      ...(below ? SHARES.map((share) => ({ at: { x: minX + share * (maxX - minX), y: minY + OVERLAP / 2 }, between: 'rows' as const })) : []),
    ];
  });
  return places.map((mark, i) => ({ ...mark, number: i + 1 }));
}

/** The printed page beside another. */
export const beside = (plan: TemplatePlan, { row, column }: TemplatePage, down: number, right: number): TemplatePage | undefined =>
  plan.pages.find((one) => one.row === row + down && one.column === column + right);
