import type { Box, Point } from '../../geometry/index.ts';
import { holePath } from '../../machining/index.ts';
import type { Book } from '../book.ts';
import { boxRegion, drawLine, drawPath, drawRegion, fillRegion, type View, within } from '../pen.ts';
import type { Work } from './work.ts';

/** Greys of paper: told apart in print as well as on a screen. */
export const SHADES = { bed: 244, here: 226, done: 160, now: 40, later: 130 } as const;
export const SEAM_DASH = [3, 0.8, 0.6, 0.8];

/** Board, groove and holes as they will be cut: thin lines. */
export function drawWork(book: Book, view: View, { groove, board, holes }: Work, grey: number): void {
  drawRegion(book, view, groove, { width: 0.1, grey });
  drawRegion(book, view, board, { width: 0.15, grey });
  for (const hole of holes) drawPath(book, view, holePath(hole), { width: 0.15, grey });
}

/** The same cut already, within some boxes of the sheet. */
export function drawCut(book: Book, view: View, { groove, board, holes }: Work, grey: number, boxes: readonly Box[], heavy: boolean): void {
  within(book, view, boxes, () => {
    fillRegion(book, view, groove, grey);
    drawRegion(book, view, board, { width: heavy ? 0.4 : 0.25, grey });
    for (const hole of holes) drawPath(book, view, holePath(hole), { width: heavy ? 0.3 : 0.2, grey });
  });
}

export function fillBox(book: Book, view: View, box: Box, grey: number): void {
  fillRegion(book, view, boxRegion(box), grey);
}

export const drawBox = (book: Book, view: View, box: Box, line: { readonly width: number; readonly grey?: number; readonly dash?: readonly number[] }): void =>
  drawRegion(book, view, boxRegion(box), line);

/** All seams, a little longer than the sheet, mm on paper beyond its edge; returns where each may be named. */
export function drawSeams(book: Book, view: View, { tiling, stock }: Work, beyond: number): Point[] {
  const over = beyond * view.scale;
  return tiling.seams.map(({ axis, at }) => {
    const [from, to] = axis === 'x' ? [{ x: at, y: -over / 2 }, { x: at, y: stock.height + over }] : [{ x: -over / 2, y: at }, { x: stock.width + over, y: at }];
    drawLine(book, view, from, to, { width: 0.3, dash: SEAM_DASH });
    return to;
  });
}

export const sheetBox = ({ stock }: Pick<Work, 'stock'>): Box => ({ minX: 0, minY: 0, maxX: stock.width, maxY: stock.height });

/** The part of a box that lies on the sheet. */
export const onSheet = (work: Pick<Work, 'stock'>, box: Box): Box => {
  const sheet = sheetBox(work);
  return { minX: Math.max(sheet.minX, box.minX), minY: Math.max(sheet.minY, box.minY), maxX: Math.min(sheet.maxX, box.maxX), maxY: Math.min(sheet.maxY, box.maxY) };
};
