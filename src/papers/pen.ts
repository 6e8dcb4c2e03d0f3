import type { jsPDF } from 'jspdf';
import { type Box, cubicPath, type Path, pathSegmentsWithStarts, type Point, polylinePath, type Region } from '../geometry/index.ts';
import { type Book, printable } from './book.ts';

/** Where a drawing lies on a page: `scale` is the divisor, so that 10 draws 1:10; y of the drawing goes up. */
export interface View {
  readonly scale: number;
  /** The drawing's place that comes to lie at `at` on the page. */
  readonly origin: Point;
  readonly at: Point;
}

export const onPage = ({ scale, origin, at }: View, { x, y }: Point): Point => ({ x: at.x + (x - origin.x) / scale, y: at.y - (y - origin.y) / scale });

/** How a line is drawn: mm on paper, grey from 0 (black) to 255. */
export interface Line {
  readonly width?: number;
  readonly grey?: number;
  readonly dash?: readonly number[];
}

/** Arcs become cubics within this, mm on paper: below what any printer shows. */
const ARC_TOLERANCE = 0.002;

export function setLine({ pdf }: Book, { width = 0.2, grey = 0, dash = [] }: Line = {}): void {
  pdf.setLineWidth(width).setDrawColor(grey).setLineDashPattern([...dash], 0);
}

/** What filled shapes are filled with from here on: writing changes it too. */
export const setFill = ({ pdf }: Book, grey: number): jsPDF => pdf.setFillColor(grey, grey, grey);

function tracePath({ pdf }: Book, view: View, path: Path): void {
  const place = (point: Point) => onPage(view, point);
  const start = place(path.start);
  pdf.moveTo(start.x, start.y);
  for (const { start: from, segment } of pathSegmentsWithStarts(path)) {
    const curves = segment.kind === 'line' ? [segment] : cubicPath({ start: from, segments: [segment], closed: false }, ARC_TOLERANCE * view.scale).segments;
    for (const curve of curves) {
      const end = place(curve.end);
      if (curve.kind === 'cubic') {
        const [a, b] = [place(curve.control1), place(curve.control2)];
        pdf.curveTo(a.x, a.y, b.x, b.y, end.x, end.y);
      } else pdf.lineTo(end.x, end.y);
    }
  }
  if (path.closed) pdf.close();
}

/** Draws a path of the drawing. */
export function drawPath(book: Book, view: View, path: Path, line: Line = {}): void {
  setLine(book, line);
  tracePath(book, view, path);
  book.pdf.stroke();
}

const loopsOf = ({ loops }: Region): Path[] => loops.filter((loop) => loop.length > 1).map((loop) => polylinePath(loop, true));

export function drawRegion(book: Book, view: View, region: Region, line: Line = {}): void {
  for (const path of loopsOf(region)) drawPath(book, view, path, line);
}

export function fillRegion(book: Book, view: View, region: Region, grey: number): void {
  const paths = loopsOf(region);
  if (paths.length === 0) return;
  setFill(book, grey);
  for (const path of paths) tracePath(book, view, path);
  book.pdf.fillEvenOdd();
}

export const boxRegion = ({ minX, minY, maxX, maxY }: Box): Region =>
  ({ loops: [[{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }]] });

/** Draws only within some boxes of the drawing. Nothing is drawn without any. */
export function within(book: Book, view: View, boxes: readonly Box[], draw: () => void): void {
  if (boxes.length === 0) return;
  const { pdf } = book;
  pdf.saveGraphicsState();
  for (const box of boxes) for (const path of loopsOf(boxRegion(box))) tracePath(book, view, path);
  pdf.clip().discardPath();
  draw();
  pdf.restoreGraphicsState();
}

/** Straight from place to place of the drawing. */
export const drawLine = (book: Book, view: View, from: Point, to: Point, line: Line = {}): void => drawPath(book, view, polylinePath([from, to], false), line);

/** A circle about a place of the drawing, its radius in mm on paper; filled with a grey when one is given. */
export function drawDot(book: Book, view: View, place: Point, radius: number, line: Line & { readonly fill?: number } = {}): void {
  setLine(book, line);
  const { x, y } = onPage(view, place);
  if (line.fill !== undefined) setFill(book, line.fill);
  book.pdf.circle(x, y, radius, line.fill === undefined ? 'S' : 'DF');
}

/** A cross at a place, its arms in mm on paper. */
export function drawCross(book: Book, view: View, place: Point, arms: number | readonly [number, number], line: Line = {}): void {
  setLine(book, line);
  const { x, y } = onPage(view, place);
  const [across, up] = typeof arms === 'number' ? [arms, arms] : arms;
  book.pdf.line(x - across, y, x + across, y).line(x, y - up, x, y + up);
}

export interface Letters {
  /** Points; 8 is the least that is read at arm's length (common practice, no source). */
  readonly size?: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'center' | 'right';
  readonly grey?: number;
  /** Degrees, counter-clockwise. */
  readonly angle?: number;
}

/** Millimetres from line to line of this size, and of it from the top to the letters' foot. */
export const leading = (size: number): number => size * 0.44;
export const ascent = (size: number): number => size * 0.34;

export function textWidth({ pdf }: Book, text: string, { size = 9, bold = false }: Letters = {}): number {
  return pdf.setFont('helvetica', bold ? 'bold' : 'normal').setFontSize(size).getTextWidth(printable(text));
}

/** The lines that a text makes in a width; words longer than that are broken. */
export function wrapped(book: Book, text: string, width: number, { size = 9, bold = false }: Letters = {}): string[] {
  book.pdf.setFont('helvetica', bold ? 'bold' : 'normal').setFontSize(size);
  return book.pdf.splitTextToSize(printable(text), width) as string[];
}

/** Writes with the letters' foot at a place of the page, mm. */
export function write({ pdf }: Book, text: string, { x, y }: Point, { size = 9, bold = false, align = 'left', grey = 0, angle = 0 }: Letters = {}): void {
  pdf.setFont('helvetica', bold ? 'bold' : 'normal').setFontSize(size).setTextColor(grey).text(printable(text), x, y, { align, angle });
}

/** Writes on a white ground, so that it can be read above lines. */
export function writeOver(book: Book, text: string, { x, y }: Point, letters: Letters = {}): void {
  const { size = 8, align = 'left' } = letters;
  const width = textWidth(book, text, { ...letters, size });
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  setFill(book, 255).rect(left - 0.4, y - ascent(size), width + 0.8, leading(size), 'F');
  write(book, text, { x, y }, { ...letters, size });
}

/** A dimension line between two places of the page that lie level or upright, with strokes at its ends and its figure: beside it, to the right if not told otherwise, where it is too short. */
export function drawDimension(book: Book, p: Point, q: Point, text: string, beside: 'left' | 'right' = 'right'): void {
  setLine(book, { width: 0.15 });
  book.pdf.line(p.x, p.y, q.x, q.y);
  for (const end of [p, q]) book.pdf.line(end.x - 0.9, end.y + 0.9, end.x + 0.9, end.y - 0.9);
  const upright = Math.abs(q.x - p.x) < Math.abs(q.y - p.y);
  const length = Math.hypot(q.x - p.x, q.y - p.y), width = textWidth(book, text, { size: 8 });
  if (upright) write(book, text, { x: p.x - 1, y: (p.y + q.y) / 2 + width / 2 }, { size: 8, angle: 90 });
  else if (width + 2 <= length) writeOver(book, text, { x: (p.x + q.x) / 2, y: p.y - 0.8 }, { size: 8, align: 'center' });
  else if (beside === 'right') writeOver(book, text, { x: Math.max(p.x, q.x) + 1.6, y: p.y + 1 }, { size: 8 });
  else writeOver(book, text, { x: Math.min(p.x, q.x) - 1.6, y: p.y + 1 }, { size: 8, align: 'right' });
}

/** A thin line that leads from a place of the drawing to its dimension. */
export function drawLead(book: Book, from: Point, to: Point): void {
  setLine(book, { width: 0.08, grey: 90 });
  book.pdf.line(from.x, from.y, to.x, to.y);
}
