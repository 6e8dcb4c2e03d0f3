import { type ArcSegment, type Loop, type Path, type Point, arcAngles, arcPoint, arcRadius, pathSegmentsWithStarts } from '../../geometry/index.ts';

/** Decimals of an exact picture: a tenth of a micrometre. */
const EXACT_DECIMALS = 4;

/** The path as path data (mm, y up) with its lines, arcs and cubics as they are. A single point is a line of no length. */
export function pathData(path: Path): string {
  const body = pathSegmentsWithStarts(path).map(({ start, segment }) => {
    if (segment.kind === 'arc') return arcData(start, segment);
    return segment.kind === 'cubic' ? `C${exact(segment.control1)} ${exact(segment.control2)} ${exact(segment.end)}` : `L${exact(segment.end)}`;
  });
  return `M${exact(path.start)}${body.join('') || `L${exact(path.start)}`}${path.closed ? 'Z' : ''}`;
}

export function loopData(loop: Loop): string {
  return loop.length === 0 ? '' : `M${loop.map(exact).join('L')}Z`;
}

/**
 * An arc in quarter turns at most: a centre found again from rounded ends wanders far when a piece nears half a turn, and a full
 * circle in one piece would be nothing. With y up, the sweep flag stands for counter-clockwise.
 */
function arcData(start: Point, arc: ArcSegment): string {
  const angles = arcAngles(start, arc);
  const pieces = Math.max(1, Math.ceil(Math.abs(angles.sweep) / (Math.PI / 2) - 1e-6));
  const radius = shortNumber(arcRadius(start, arc), EXACT_DECIMALS);
  const turn = `A${radius} ${radius} 0 0 ${arc.clockwise ? 0 : 1} `;
  return Array.from({ length: pieces }, (_, i) => turn + exact(i === pieces - 1 ? arc.end : arcPoint(angles, (i + 1) / pieces))).join('');
}

function exact(point: Point): string {
  return printPoint(point, EXACT_DECIMALS);
}

export function printPoint({ x, y }: Point, decimals: number): string {
  return `${shortNumber(x, decimals)} ${shortNumber(y, decimals)}`;
}

/** A number without trailing zeros, the same in every locale; `String` alone would show the noise of floating point. */
function shortNumber(value: number, decimals: number): string {
  const factor = 10 ** decimals;
  const rounded = Math.round(value * factor) / factor;
  return String(Number.isFinite(rounded) ? rounded : value);
}
