import { boxesOverlap, growBox } from '../../geometry/index.ts';
import { holePath, type Hole } from '../../machining/index.ts';
import { type Book, innerWidth } from '../book.ts';
import { EDGE } from '../paper.ts';
import { drawCross, drawDot, drawLine, drawPath, onPage, setLine, textWidth, type View, within, write, writeOver, wrapped, leading } from '../pen.ts';
import { drawBox } from '../sheets/layers.ts';
import { tenths } from '../words.ts';
import { HEAD, holeBox, type NumberedHole, type Template } from './job.ts';
import { drawMap } from './map.ts';
import { beside, comesInto, OVERLAP, type RegisterMark, type TemplatePage } from './tiles.ts';
import type { Wording } from './wording.ts';

/** One page of the template, its window 1:1. */
export function drawTemplatePage(book: Book, template: Template, page: TemplatePage): void {
  const { window } = page;
  const view: View = { scale: 1, origin: { x: window.minX, y: window.maxY }, at: { x: EDGE, y: EDGE + HEAD } };
  drawHeadOf(book, template, page);
  within(book, view, [window], () => {
    drawNeighbours(book, view, template, page);
    drawLevel(book, view, template, page);
    drawOutline(book, view, template, page);
    for (const cable of template.cables) if (shows(page, cable)) drawCable(book, view, cable);
    for (const hole of template.mounting) if (shows(page, hole)) drawHole(book, view, hole);
  });
  // Words stand above lines, within the window.
  for (const hole of template.mounting) nameHole(book, view, hole, page, template.job.wording);
  for (const mark of template.plan.marks) if (isOn(page, mark)) drawMark(book, view, mark);
  drawBox(book, view, window, { width: 0.25 });
}

/** Whether any of a hole or its cross comes onto a page. */
const shows = ({ window }: TemplatePage, hole: Hole): boolean => boxesOverlap(window, growBox(holeBox(hole), ARM));

/** The board's edges that come onto a page. */
function drawOutline(book: Book, view: View, { outline }: Template, { window }: TemplatePage): void {
  for (const loop of outline.loops) {
    loop.forEach((from, i) => {
      const to = loop[(i + 1) % loop.length]!;
      if (comesInto(window, from, to)) drawLine(book, view, from, to, { width: 0.4 });
    });
  }
}

const isOn = ({ window: { minX, minY, maxX, maxY } }: TemplatePage, { at: { x, y } }: RegisterMark): boolean => x > minX && x < maxX && y > minY && y < maxY;

const RULER = 100;

function drawHeadOf(book: Book, template: Template, page: TemplatePage): void {
  const { job } = template;
  const left = innerWidth(book) - RULER - 44 - 4;
  write(book, `row ${page.row}, column ${page.column}`, { x: EDGE, y: EDGE + 4.2 }, { size: 12, bold: true });
  const lines = [...wrapped(book, job.name, left, { size: 8 }).slice(0, 2), job.wording.seen];
  lines.forEach((line, i) => { write(book, line, { x: EDGE, y: EDGE + 8.4 + i * leading(8) }, { size: 8 }); });
  drawUp(book, { x: EDGE + left - 6, y: EDGE + 21.5 });
  write(book, 'this side up', { x: EDGE + left - 9, y: EDGE + 21.5 }, { size: 8, bold: true, align: 'right' });
  drawRuler(book, { x: EDGE + left + 1, y: EDGE + 12 });
  write(book, 'Print at 100 %: do not fit to the page.', { x: EDGE + left + 1, y: EDGE + 21.5 }, { size: 8, bold: true });
  drawMap(book, template, { x: book.width - EDGE - 42, y: EDGE }, { width: 42, height: HEAD - 3 }, page);
}

function drawUp(book: Book, { x, y }: { readonly x: number; readonly y: number }): void {
  setLine(book, { width: 0.8 });
  book.pdf.line(x, y, x, y - 5).line(x, y - 5.4, x - 1.8, y - 3).line(x, y - 5.4, x + 1.8, y - 3);
}

/** A line of exactly 100 mm, marked every 10, to be measured on the print. */
export function drawRuler(book: Book, { x, y }: { readonly x: number; readonly y: number }, upright = false): void {
  const place = (along: number, aside: number) => (upright ? { x: x - aside, y: y - along } : { x: x + along, y: y - aside });
  setLine(book, { width: 0.25 });
  const stroke = (a: { x: number; y: number }, b: { x: number; y: number }) => book.pdf.line(a.x, a.y, b.x, b.y);
  stroke(place(0, 0), place(RULER, 0));
  for (let at = 0; at <= RULER; at += 10) stroke(place(at, 0), place(at, at % 50 === 0 ? 3.5 : 2));
  if (upright) write(book, 'Measure me: exactly 100 mm', { x: x + 3.6, y: y - 28 }, { size: 8, bold: true, angle: 90 });
  else write(book, 'Measure me: exactly 100 mm', { x: x + 28, y: y + 4 }, { size: 8, bold: true });
}

/** Where the edges of neighbouring pages come to lie, in the overlap. */
function drawNeighbours(book: Book, view: View, { plan }: Template, page: TemplatePage): void {
  const { minX, minY, maxX, maxY } = page.window;
  const dotted = { width: 0.15, grey: 100, dash: [0.4, 1] };
  const right = beside(plan, page, 0, 1), below = beside(plan, page, 1, 0);
  if (right) {
    drawLine(book, view, { x: right.window.minX, y: minY }, { x: right.window.minX, y: maxY }, dotted);
    nameEdge(book, view, { x: maxX - OVERLAP - 1, y: (minY + maxY) / 2 }, `left frame of row ${right.row}, column ${right.column} lies here`, true);
  }
  if (below) {
    drawLine(book, view, { x: minX, y: below.window.maxY }, { x: maxX, y: below.window.maxY }, dotted);
    nameEdge(book, view, { x: (minX + maxX) / 2, y: minY + OVERLAP + 1 }, `top frame of row ${below.row}, column ${below.column} lies here`, false);
  }
}

function nameEdge(book: Book, view: View, at: { readonly x: number; readonly y: number }, text: string, upright: boolean): void {
  const { x, y } = onPage(view, at);
  const half = textWidth(book, text, { size: 8 }) / 2;
  write(book, text, upright ? { x, y: y + half } : { x: x - half, y }, { size: 8, grey: 90, angle: upright ? 90 : 0 });
}

/** One level line for each row of pages, as near its middle as holes allow, at a whole number of millimetres above the board's foot. */
function levelOf({ bounds, mounting }: Template, { window: { minY, maxY } }: TemplatePage): number {
  const middle = Math.round((minY + maxY) / 2 - bounds.minY);
  for (let away = 0; away < (maxY - minY) / 3; away++)
    for (const level of [middle + away, middle - away]) if (mounting.every(({ y, diameter }) => Math.abs(y - level) > diameter / 2 + CLEAR)) return level;
  return middle;
}

const CLEAR = 14;

function drawLevel(book: Book, view: View, template: Template, page: TemplatePage): void {
  const { minX, maxX } = page.window;
  const level = levelOf(template, page);
  const y = template.bounds.minY + level;
  drawLine(book, view, { x: minX, y }, { x: maxX, y }, { width: 0.2, dash: [5, 1, 1, 1] });
  const at = onPage(view, { x: minX, y });
  const words = level === 0 ? 'at the board\'s lower edge' : `${Math.abs(level)} mm ${level > 0 ? 'above' : 'below'} the board's lower edge`;
  writeOver(book, `level line, ${words}`, { x: at.x + 18, y: at.y - 1 }, { size: 8 });
}

function drawCable(book: Book, view: View, hole: Hole): void {
  drawPath(book, view, holePath(hole), { width: 0.25, grey: 90, dash: [1, 0.7] });
  const { x, y } = onPage(view, hole.centre);
  write(book, 'cable', { x, y: y + hole.diameter / 2 + 3.4 }, { size: 8, grey: 90, align: 'center' });
}

/** Arms of a cross reach so far beyond its hole, mm. */
const ARM = 6;

function drawHole(book: Book, view: View, hole: NumberedHole): void {
  drawPath(book, view, holePath(hole), { width: 0.3 });
  const reach = hole.diameter / 2 + (hole.slot?.length ?? 0) / 2 + ARM;
  drawCross(book, view, hole.centre, reach, { width: 0.15 });
  drawDot(book, view, hole.centre, 0.4, { width: 0.1, fill: 0 });
}

/** A hole's number and place beside it, on the side where its window has room. */
function nameHole(book: Book, view: View, hole: NumberedHole, { window: { minX, minY, maxX, maxY } }: TemplatePage, wording: Wording): void {
  const { centre: { x, y } } = hole;
  if (x < minX || x > maxX || y < minY || y > maxY) return;
  const [right, up] = [x < (minX + maxX) / 2, y < (minY + maxY) / 2];
  const at = onPage(view, hole.centre);
  const aside = hole.diameter / 2 + (hole.slot?.length ?? 0) / 2 + 2;
  const lines = [`${wording.mark} ${hole.number}`, `x ${tenths(hole.x)}, y ${tenths(hole.y)}`, wording.shape(hole)];
  lines.forEach((line, i) => {
    const row = up ? at.y - aside - 3 - (lines.length - 1 - i) * 4 : at.y + aside + 5 + i * 4;
    writeOver(book, line, { x: at.x + (right ? 2 : -2), y: row }, { size: i === 0 ? 10 : 8, bold: i === 0, align: right ? 'left' : 'right' });
  });
}

const SHORT = 3;
const LONG = OVERLAP / 2 + 5;

/** A register mark: its long arms reach beyond the overlap, so that they are seen on the page below when another lies over it. */
function drawMark(book: Book, view: View, { at, between, number }: RegisterMark): void {
  drawCross(book, view, at, between === 'columns' ? [LONG, SHORT] : [SHORT, LONG], { width: 0.2 });
  drawDot(book, view, at, 2, { width: 0.2 });
  const { x, y } = onPage(view, at);
  writeOver(book, String(number), { x: x + 2.6, y: y - 1.4 }, { size: 9, bold: true });
}
