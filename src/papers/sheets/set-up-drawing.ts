import { type Box, type Point, unionBoxes } from '../../geometry/index.ts';
import { type HoldDown, holePath, isThere, type Support } from '../../machining/index.ts';
import { type Book, innerWidth } from '../book.ts';
import { type Callout, CALLOUT_ROW, calloutRows, drawCallouts, placeCallouts, type PlacedCallout } from '../callouts.ts';
import { EDGE, type Size } from '../paper.ts';
import { drawCross, drawDimension, drawDot, drawLead, drawLine, drawPath, onPage, setFill, setLine, textWidth, type View, write, writeOver } from '../pen.ts';
import { hundredths, movement, numbered, tenths } from '../words.ts';
import { drawBox, drawCut, drawSeams, drawWork, fillBox, onSheet, SHADES, sheetBox } from './layers.ts';
import type { Turn, Work } from './work.ts';

/** Room round the drawing for its words and dimensions, mm on paper. */
const ROW = 7;
const ARROW_ROW = 10;
const FRONT_ROW = 5;
/** Supports of one side that get a dimension each; of more only the table tells. */
const MOST_SUPPORT_ROWS = 3;

/** Where everything of a set-up's drawing comes to lie on paper; lengths mm from the drawing's upper left corner. */
interface Layout {
  readonly size: Size;
  /** Of program coordinates, and of drawing coordinates. */
  readonly view: View;
  readonly sheetView: View;
  readonly callouts: readonly PlacedCallout[];
  /** Upper and lower edge of bed and sheet together. */
  readonly above: number;
  readonly below: number;
}

/** The sheet as it lies in a set-up, program coordinates. */
function lyingSheet({ stock }: Pick<Work, 'stock'>, { tile: { shift: [dx, dy] } }: Turn): Box {
  return { minX: -dx, minY: -dy, maxX: stock.width - dx, maxY: stock.height - dy };
}

const supportRows = (work: Work, place: number): number => {
  const supports = supportsIn(work, place);
  return Math.min(MOST_SUPPORT_ROWS, Math.max(0, ...['left', 'right'].map((side) => supports.filter((one) => one.side === side).length)));
};

/** The room for a drawing: as wide as the page allows, from some height down; mm on paper. */
interface Room {
  readonly left: number;
  readonly width: number;
  readonly top: number;
}

/** Lays a set-up's drawing out at a scale, in the middle of its room. */
function layOut(work: Work, turn: Turn, scale: number, room: Room): Layout {
  const sheet = lyingSheet(work, turn);
  const all = unionBoxes([work.bed, sheet])!;
  const [dx, dy] = turn.tile.shift;
  const left = dy === 0 ? 0 : ROW + 2;
  const width = left + (all.maxX - all.minX) / scale + asideFor(work, turn) + 1;
  const corner = { x: room.left + (room.width - width) / 2, y: room.top };
  const flat: View = { scale, origin: { x: all.minX, y: all.maxY }, at: { x: corner.x + left, y: 0 } };
  const callouts = placeCallouts(calloutsOf(work, turn, flat, all), room.left + room.width);
  const above = 1 + (turn.before ? ARROW_ROW : 0) + (dx === 0 ? 0 : ROW) + calloutRows(callouts, true) * CALLOUT_ROW + 4;
  const deep = (all.maxY - all.minY) / scale;
  const below = above + deep;
  const view = (origin: Point): View => ({ scale, origin, at: { x: corner.x + left, y: corner.y + above } });
  return {
    callouts: callouts.map((one) => ({ ...one, at: { x: one.at.x, y: one.at.y + corner.y + above } })), above: corner.y + above, below: corner.y + below,
    size: { width, height: below + FRONT_ROW + calloutRows(callouts, false) * CALLOUT_ROW + ROW * (1 + supportRows(work, turn.place)) + 1 },
    view: view({ x: all.minX, y: all.maxY }), sheetView: view({ x: all.minX + dx, y: all.maxY + dy }),
  };
}

/** How large the drawing of a set-up is on paper. */
export const drawingSize = (work: Work, turn: Turn, scale: number, width: number): Size => layOut(work, turn, scale, { left: 0, width, top: 0 }).size;

/** Draws a set-up in program coordinates, as the sheet lies on the machine; returns the y below. */
export function drawSetUp(book: Book, work: Work, turn: Turn, { scale, top }: { readonly scale: number; readonly top: number }): number {
  const layout = layOut(work, turn, scale, { left: EDGE, width: innerWidth(book), top });
  drawGround(book, work, layout.view, turn);
  drawSheet(book, work, layout.sheetView, turn);
  drawHeld(book, work, layout.sheetView, turn);
  drawPins(book, work, layout, turn);
  drawZero(book, layout.view);
  drawMoves(book, work, layout.view, turn, top);
  drawSizes(book, work, layout, turn, top);
  drawSideNames(book, work, layout, turn);
  drawCallouts(book, layout.callouts, layout);
  return top + layout.size.height;
}

/** The seams at which a set-up ends: those within its window. */
const ownSeams = ({ tiling: { seams } }: Work, { tile: { window } }: Turn) => seams.map((seam, i) => ({ ...seam, number: i + 1 }))
  .filter(({ axis, at }) => (axis === 'x' ? at >= window.minX && at <= window.maxX : at >= window.minY && at <= window.maxY));

/** All that is named beside the drawing: y counts from its upper edge. */
function calloutsOf(work: Work, turn: Turn, view: View, { minY, maxY }: Box): Callout[] {
  const [dx, dy] = turn.tile.shift, { place } = turn;
  const sheet = lyingSheet(work, turn), used = pinsIn(work, place);
  const named = (at: Point, text: string, up = at.y > (minY + maxY) / 2): Callout => ({ text, at: onPage(view, at), up });
  const { pins = [], dowels = [] } = work.registration ?? {};
  return [
    named({ x: 0, y: 0 }, 'X0 Y0'),
    ...ownSeams(work, turn).filter(({ axis }) => axis === 'x').map(({ at, number }) => named({ x: at - dx, y: sheet.maxY }, `seam ${number}`, true)),
    ...supportsIn(work, place).filter(({ axis }) => axis === 'x').map(({ at, number }) => named({ x: at - dx, y: sheet.maxY }, `support ${number}`, true)),
    ...pins.map(({ at }, i) => named(at, used.includes(i) ? `pin ${i + 1}: X ${tenths(at.x)}, Y ${tenths(at.y)}` : `pin ${i + 1} is out`)),
    ...dowels.filter(({ drilledIn }) => drilledIn === place).map(({ hole: { centre }, pin, usedIn }) =>
      named({ x: centre.x - dx, y: centre.y - dy }, `drill: pin ${pin + 1}, set-up ${usedIn + 1}`)),
  ];
}

/** Seams and supports that run along the sheet: named at its right end. */
function sideNames(work: Work, turn: Turn): { readonly text: string; readonly at: number }[] {
  return [
    ...ownSeams(work, turn).filter(({ axis }) => axis === 'y').map(({ at, number }) => ({ text: `seam ${number}`, at })),
    ...supportsIn(work, turn.place).filter(({ axis }) => axis === 'y').map(({ at, number }) => ({ text: `support ${number}`, at })),
  ];
}

function drawSideNames(book: Book, work: Work, { sheetView }: Layout, turn: Turn): void {
  for (const { text, at } of sideNames(work, turn)) {
    const { x, y } = onPage(sheetView, { x: work.stock.width, y: at });
    writeOver(book, text, { x: x + 3.2, y: y + 1 }, { size: 8, bold: true });
  }
}

/** How far right of all else the sheet's height stands, mm. */
const asideFor = (work: Work, turn: Turn): number => (sideNames(work, turn).length > 0 ? 22 : 5);

function drawGround(book: Book, work: Work, view: View, turn: Turn): void {
  fillBox(book, view, work.bed, SHADES.bed);
  drawBox(book, view, work.bed, { width: 0.2, grey: 90, dash: [2, 1] });
  fillBox(book, view, lyingSheet(work, turn), 255);
}

function drawSheet(book: Book, work: Work, view: View, { place, tile }: Turn): void {
  const done = work.turns.filter((turn) => turn.place < place).map((turn) => onSheet(work, turn.tile.window));
  const here = onSheet(work, tile.window);
  fillBox(book, view, here, SHADES.here);
  drawWork(book, view, work, SHADES.later);
  drawCut(book, view, work, SHADES.done, done, false);
  drawCut(book, view, work, SHADES.now, [here], true);
  drawBox(book, view, sheetBox(work), { width: 0.35 });
  drawBox(book, view, here, { width: 0.7 });
  drawSeams(book, view, work, 1.5);
}

export interface NumberedHoldDown extends HoldDown {
  readonly number: number;
}

/** The hold-downs of a set-up, numbered through from left to right. */
export const holdDownsIn = ({ holding }: Work, place: number): NumberedHoldDown[] =>
  holding.holdDowns.filter((one) => isThere(one, place)).sort((a, b) => a.at.x - b.at.x || a.at.y - b.at.y).map((one, i) => ({ ...one, number: i + 1 }));

export interface PlacedSupport extends Support {
  readonly number: number;
  readonly side: 'left' | 'right' | 'front' | 'back';
  /** How far from the bed's edge, mm. */
  readonly distance: number;
}

/** The supports of a set-up, each with the side of the bed it stands at. */
export function supportsIn({ holding, bed, tiling }: Work, place: number): PlacedSupport[] {
  const shift = tiling.tiles[place]!.shift;
  return holding.supports.filter(({ setUp }) => setUp === place).map((support, i): PlacedSupport => {
    const along = support.axis === 'x';
    const at = support.at - (along ? shift[0] : shift[1]);
    const [low, high] = along ? [bed.minX, bed.maxX] : [bed.minY, bed.maxY];
    const isLow = at < (low + high) / 2;
    return { ...support, number: i + 1, side: along ? (isLow ? 'left' : 'right') : isLow ? 'front' : 'back', distance: isLow ? low - at : at - high };
  });
}

/** Radius of a screw's or clamp's sign, mm on paper. */
const HEAD = 0.7;

function drawHeld(book: Book, work: Work, view: View, { place, tile: { shift: [dx, dy] } }: Turn): void {
  const marked = [{ x: 0, y: 0 }, ...(work.registration?.pins.map(({ at }) => at) ?? [])].map(({ x, y }) => ({ x: x + dx, y: y + dy }));
  const over = 2.5 * view.scale;
  for (const { axis, at } of supportsIn(work, place)) {
    const [from, to] = axis === 'x' ? [{ x: at, y: -over }, { x: at, y: work.stock.height + over }] : [{ x: -over, y: at }, { x: work.stock.width + over, y: at }];
    drawLine(book, view, from, to, { width: 1.1, grey: 90, dash: [1.6, 0.8] });
  }
  for (const { at, keepOut, number } of holdDownsIn(work, place)) {
    drawDot(book, view, at, keepOut / 2 / view.scale, { width: 0.2, dash: [0.8, 0.5] });
    drawDot(book, view, at, HEAD, { width: 0.2, fill: 255 });
    drawCross(book, view, at, HEAD, { width: 0.2 });
    const { x, y } = onPage(view, at);
    const aside = Math.max(1.1, keepOut / 2 / view.scale) + 0.5;
    // The zero and the pins stand in the way of words on their left.
    const near = marked.some((place) => place.x >= at.x && place.x - at.x < 6 * view.scale && Math.abs(place.y - at.y) < 3 * view.scale);
    writeOver(book, String(number), { x: near ? x - aside : x + aside, y: y + 1 }, { size: 8, bold: true, align: near ? 'right' : 'left' });
  }
}

/** The pins that a set-up lies on, as numbers from 0. */
export const pinsIn = ({ registration }: Work, place: number): number[] =>
  [...new Set(registration?.dowels.filter(({ usedIn }) => usedIn === place).map(({ pin }) => pin))].sort((a, b) => a - b);

const PIN_RADIUS = 1.1;

function drawPins(book: Book, work: Work, { view, sheetView }: Layout, { place }: Turn): void {
  const used = pinsIn(work, place);
  const { pins = [], dowels = [] } = work.registration ?? {};
  for (const { hole } of dowels.filter(({ drilledIn }) => drilledIn === place)) {
    drawPath(book, sheetView, holePath(hole), { width: 0.35 });
    drawCross(book, sheetView, hole.centre, 1.6, { width: 0.2 });
  }
  pins.forEach(({ at }, i) => {
    const there = used.includes(i);
    drawDot(book, view, at, there ? PIN_RADIUS : 1, { width: 0.25, fill: there ? 0 : 255, ...(!there && { dash: [0.5, 0.5] }) });
    if (there) drawDot(book, view, at, PIN_RADIUS + 0.7, { width: 0.25 });
  });
}

const AXIS = 8;

function drawZero(book: Book, view: View): void {
  const zero = { x: 0, y: 0 };
  const { x, y } = onPage(view, zero);
  drawDot(book, view, zero, 1.9, { width: 0.35, fill: 255 });
  setFill(book, 0);
  // Two quarters filled: the sign of a datum.
  for (const [a, b] of [[1, -1], [-1, 1]] as const) book.pdf.rect(x + Math.min(0, a * 1.3), y + Math.min(0, b * 1.3), 1.3, 1.3, 'F');
  setLine(book, { width: 0.35 });
  book.pdf.line(x, y, x + AXIS, y).line(x + AXIS - 1.4, y - 0.7, x + AXIS, y).line(x + AXIS - 1.4, y + 0.7, x + AXIS, y);
  book.pdf.line(x, y, x, y - AXIS).line(x - 0.7, y - AXIS + 1.4, x, y - AXIS).line(x + 0.7, y - AXIS + 1.4, x, y - AXIS);
  writeOver(book, 'X', { x: x + AXIS + 0.6, y: y + 3.2 }, { size: 8, bold: true });
  writeOver(book, 'Y', { x: x - 2.6, y: y - AXIS + 1 }, { size: 8, bold: true });
}

/** The arrow that tells how the sheet moved here. */
function drawMoves(book: Book, work: Work, view: View, turn: Turn, top: number): void {
  if (!turn.before) return;
  const [from, now] = [turn.before.tile.shift, turn.tile.shift];
  const way = { x: from[0] - now[0], y: from[1] - now[1] };
  const length = Math.hypot(way.x, way.y);
  if (length === 0) return;
  const sheet = lyingSheet(work, turn);
  const middle = onPage(view, { x: (sheet.minX + sheet.maxX) / 2, y: sheet.maxY });
  const half = { x: (way.x / length) * 12, y: (-way.y / length) * 3.6 };
  const words = `sheet moved ${movement(from, now)}`, letters = { size: 10, bold: true };
  const centre = { x: Math.min(middle.x - 12, book.width - EDGE - 14 - textWidth(book, words, letters)), y: top + 5 };
  const [tail, head] = [{ x: centre.x - half.x, y: centre.y - half.y }, { x: centre.x + half.x, y: centre.y + half.y }];
  drawArrow(book, tail, head);
  write(book, words, { x: centre.x + 14, y: centre.y + 1.2 }, letters);
}

function drawArrow(book: Book, tail: Point, head: Point): void {
  const length = Math.hypot(head.x - tail.x, head.y - tail.y);
  const [ux, uy] = [(head.x - tail.x) / length, (head.y - tail.y) / length];
  const base = { x: head.x - 4 * ux, y: head.y - 4 * uy };
  setLine(book, { width: 1.4 });
  setFill(book, 0).line(tail.x, tail.y, base.x, base.y)
    .triangle(head.x, head.y, base.x - 2 * uy, base.y + 2 * ux, base.x + 2 * uy, base.y - 2 * ux, 'F');
}

function drawSizes(book: Book, work: Work, { view, below, callouts }: Layout, turn: Turn, top: number): void {
  const sheet = lyingSheet(work, turn), { bed } = work;
  const [low, high] = [onPage(view, { x: sheet.minX, y: sheet.minY }), onPage(view, { x: sheet.maxX, y: sheet.maxY })];
  const foot = onPage(view, { x: bed.minX, y: Math.min(bed.minY, sheet.minY) });
  const level = (x: number, x2: number, y: number, from: number, text: string, outward?: 'left') => {
    drawLead(book, { x, y: from }, { x, y });
    drawLead(book, { x: x2, y: from }, { x: x2, y });
    drawDimension(book, { x, y }, { x: x2, y }, text, outward);
  };
  const upright = (y: number, y2: number, x: number, from: number, text: string) => {
    drawLead(book, { x: from, y }, { x, y });
    drawLead(book, { x: from, y: y2 }, { x, y: y2 });
    drawDimension(book, { x, y }, { x, y: y2 }, text);
  };
  const zero = onPage(view, { x: 0, y: 0 });
  const [dx, dy] = turn.tile.shift;
  if (dx !== 0) level(low.x, zero.x, top + (turn.before ? ARROW_ROW : 0) + ROW - 1, high.y, `sheet's edge to X0: ${hundredths(Math.abs(dx))}`);
  if (dy !== 0) upright(low.y, zero.y, Math.min(low.x, foot.x) - 3, low.x, `edge to Y0: ${hundredths(Math.abs(dy))}`);
  upright(low.y, high.y, Math.max(high.x, onPage(view, { x: bed.maxX, y: 0 }).x) + asideFor(work, turn), high.x, `sheet ${tenths(work.stock.height)}`);
  let y = below + FRONT_ROW + calloutRows(callouts, false) * CALLOUT_ROW;
  const middle = onPage(view, { x: (bed.minX + bed.maxX) / 2, y: bed.minY });
  const front = `FRONT: you stand here (bed ${tenths(bed.maxX - bed.minX)} x ${tenths(bed.maxY - bed.minY)})`;
  const supports = supportsIn(work, turn.place);
  for (let row = 0; row < MOST_SUPPORT_ROWS; row++) {
    const here = (['left', 'right'] as const).flatMap((side) => supports.filter((one) => one.side === side).slice(row, row + 1));
    if (here.length === 0) break;
    y += ROW;
    for (const { at, side, distance, number } of here) {
      const edge = onPage(view, { x: side === 'left' ? bed.minX : bed.maxX, y: 0 }).x;
      const bar = onPage(view, { x: at - dx, y: 0 }).x;
      level(edge, bar, y - 2, below, `support ${number}: ${tenths(distance)}`, side === 'left' ? 'left' : undefined);
    }
  }
  level(low.x, high.x, y + ROW - 2, below, `sheet ${tenths(work.stock.width)}`);
  writeOver(book, front, { x: middle.x, y: below + calloutRows(callouts, false) * CALLOUT_ROW + 4 }, { size: 8, bold: true, align: 'center' });
}

/** What the arrow means in words, for the head of the page. */
export function placingWords(work: Work, turn: Turn): string {
  if (!turn.before) return 'Lay the sheet with its lower left corner at X0 Y0 and its lower edge along X.';
  const pins = pinsIn(work, turn.place).map((pin) => pin + 1);
  const onto = pins.length > 0 ? `onto ${numbered('pin', pins)}` : 'against your stops';
  return `Move the sheet ${movement(turn.before.tile.shift, turn.tile.shift)} ${onto}. X0 Y0 stays where it is.`;
}
