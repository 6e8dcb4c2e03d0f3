import { boxSize, unionBoxes } from '../../geometry/index.ts';
import type { Book } from '../book.ts';
import type { Size } from '../paper.ts';
import { drawDot, drawRegion, onPage, setFill, setLine, textWidth, type View, write } from '../pen.ts';
import type { Template } from './job.ts';
import type { TemplatePage } from './tiles.ts';

/** The map of all pages, as large as fits a space of the page; the page that it stands on is black. Pages left out are crossed. Returns its size. */
export function drawMap(book: Book, { plan, outline, mounting }: Template, corner: { readonly x: number; readonly y: number }, space: Size, here?: TemplatePage): Size {
  const all = unionBoxes(plan.grid.map(({ window }) => window))!;
  const { width, height } = boxSize(all);
  const scale = Math.max(width / space.width, height / space.height);
  const view: View = { scale, origin: { x: all.minX, y: all.maxY }, at: corner };
  for (const page of plan.grid) drawCell(book, view, page, plan.pages.includes(page), page === here);
  drawRegion(book, view, outline, { width: 0.15, grey: here ? 110 : 0 });
  if (!here) for (const { centre } of mounting) drawDot(book, view, centre, 0.6, { width: 0.2, fill: 0 });
  return { width: width / scale, height: height / scale };
}

function drawCell(book: Book, view: View, { row, column, window }: TemplatePage, kept: boolean, isHere: boolean): void {
  const [a, b] = [onPage(view, { x: window.minX, y: window.maxY }), onPage(view, { x: window.maxX, y: window.minY })];
  const [w, h] = [b.x - a.x, b.y - a.y];
  setLine(book, { width: 0.15, grey: kept ? 60 : 170 });
  if (isHere) setFill(book, 0);
  book.pdf.rect(a.x, a.y, w, h, isHere ? 'DF' : 'S');
  if (!kept) book.pdf.line(a.x, a.y, b.x, b.y).line(a.x, b.y, b.x, a.y);
  const name = `${row}/${column}`;
  if (kept && h > 6 && textWidth(book, name, { size: 8 }) + 3 < w) write(book, name, { x: a.x + 1.4, y: b.y - 2.2 }, { size: 8 });
}
