import { type ArcSegment, type Path, type Point, arcAngles, arcPoint, arcRadius, pathSegmentsWithStarts } from '../geometry/index.ts';
import { printNumber } from './print-number.ts';

/** Prints a point of the drawing (mm, y up) in the page's coordinates (y down). */
export type PrintPoint = (point: Point) => string;

export const pointPrinter = (pageHeight: number): PrintPoint => ({ x, y }) => `${printNumber(x)} ${printNumber(pageHeight - y)}`;

/**
 * The arc as commands of a quarter turn at most: a centre found again from rounded ends wanders far when the turn nears
 * 180 degrees, and a full circle could not be told from nothing.
 */
function arcData(start: Point, arc: ArcSegment, print: PrintPoint): string {
  const angles = arcAngles(start, arc);
  const pieces = Math.max(1, Math.ceil(Math.abs(angles.sweep) / (Math.PI / 2) - 1e-6));
  const radius = printNumber(arcRadius(start, arc));
  // Seen with y down a clockwise arc is still clockwise, and that is what the sweep flag says.
  const turn = `A${radius} ${radius} 0 0 ${arc.clockwise ? 1 : 0} `;
  return Array.from({ length: pieces }, (_, i) => turn + print(i === pieces - 1 ? arc.end : arcPoint(angles, (i + 1) / pieces))).join('');
}

/** Path data: lines as L, arcs as A, cubics as C. A point becomes a line of no length, which a round cap shows as a dot. */
export function pathData(path: Path, print: PrintPoint): string {
  const last = path.segments.at(-1);
  const body = pathSegmentsWithStarts(path).map(({ start, segment }) => {
    if (segment.kind === 'arc') return arcData(start, segment, print);
    if (segment.kind === 'cubic') return `C${print(segment.control1)} ${print(segment.control2)} ${print(segment.end)}`;
    // The last line of a closed path is what Z draws.
    return path.closed && segment === last ? '' : `L${print(segment.end)}`;
  });
  if (!last) body.push(`L${print(path.start)}`);
  return `M${print(path.start)}${body.join('')}${path.closed ? 'Z' : ''}`;
}
