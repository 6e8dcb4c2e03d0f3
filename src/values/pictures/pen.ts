import {
  type ArcSegment, type Loop, type Path, type Point, arcAngles, arcPoint, arcRadius, flattenPath, pathSegmentsWithStarts, simplifyLoop, simplifyPolyline,
} from '../../geometry/index.ts';

/** Writes curves as path data in mm, y up. */
export interface Pen {
  readonly path: (path: Path) => string;
  readonly loop: (loop: Loop) => string;
}

type Print = (point: Point) => string;

/** Decimals of an exact picture: a tenth of a micrometre. */
const EXACT_DECIMALS = 4;

/** Keeps lines, arcs and cubics as they are. */
export const exactPen: Pen = exactly(printer(EXACT_DECIMALS));

function exactly(print: Print): Pen {
  return {
    path: (path) => {
      const body = pathSegmentsWithStarts(path).map(({ start, segment }) => {
        if (segment.kind === 'arc') return arcData(start, segment, print);
        return segment.kind === 'cubic' ? `C${print(segment.control1)} ${print(segment.control2)} ${print(segment.end)}` : `L${print(segment.end)}`;
      });
      return `M${print(path.start)}${body.join('') || `L${print(path.start)}`}${path.closed ? 'Z' : ''}`;
    },
    loop: (loop) => (loop.length === 0 ? '' : `M${loop.map(print).join('L')}Z`),
  };
}

/**
 * An arc in quarter turns at most: a centre found again from rounded ends wanders far when a piece nears half a turn, and a full
 * circle in one piece would be nothing. With y up, the sweep flag stands for counter-clockwise.
 */
function arcData(start: Point, arc: ArcSegment, print: Print): string {
  const angles = arcAngles(start, arc);
  const pieces = Math.max(1, Math.ceil(Math.abs(angles.sweep) / (Math.PI / 2) - 1e-6));
  const radius = shortNumber(arcRadius(start, arc), EXACT_DECIMALS);
  const turn = `A${radius} ${radius} 0 0 ${arc.clockwise ? 0 : 1} `;
  return Array.from({ length: pieces }, (_, i) => turn + print(i === pieces - 1 ? arc.end : arcPoint(angles, (i + 1) / pieces))).join('');
}

/** Draws with straight lines that stray at most about `tolerance` mm, in as few and as short numbers as that allows. */
export function coarsePen(tolerance: number): Pen {
  const print = printer(Math.max(0, Math.min(EXACT_DECIMALS, Math.ceil(-Math.log10(tolerance)))));
  const part = tolerance / 3;
  return {
    path: (path) => {
      const points = thinned(flattenPath(path, part), part);
      return path.closed ? polygon(simplifyLoop(points, part), print) : polyline(simplifyPolyline(points, part), print);
    },
    loop: (loop) => (loop.length === 0 ? '' : polygon(simplifyLoop(thinned(loop, part), part), print)),
  };
}

/** Without points nearer than `step` to the one before: quick, and leaves less for the slower simplification. The last point stays. */
function thinned(points: readonly Point[], step: number): readonly Point[] {
  const kept: Point[] = [];
  let last: Point | undefined;
  for (const point of points) {
    if (last !== undefined && Math.abs(point.x - last.x) + Math.abs(point.y - last.y) < step) continue;
    kept.push(point);
    last = point;
  }
  const end = points.at(-1);
  return end === undefined || end === last ? kept : [...kept, end];
}

function polyline(points: readonly Point[], print: Print): string {
  const places = distinct(points.map(print));
  return `M${places.length > 1 ? places.join('L') : `${places[0]}L${places[0]}`}`;
}

function polygon(points: readonly Point[], print: Print): string {
  return `${polyline(points, print)}Z`;
}

function distinct(places: readonly string[]): string[] {
  return places.filter((place, i) => place !== places[i - 1]);
}

function printer(decimals: number): Print {
  return ({ x, y }) => `${shortNumber(x, decimals)} ${shortNumber(y, decimals)}`;
}

/** A number without trailing zeros, the same in every locale; `String` alone would show the noise of floating point. */
function shortNumber(value: number, decimals: number): string {
  const factor = 10 ** decimals;
  const rounded = Math.round(value * factor) / factor;
  return String(Number.isFinite(rounded) ? rounded : value);
}
