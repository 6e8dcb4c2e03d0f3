import { type Point, flattenPath, simplifyLoop, simplifyPolyline } from '../../geometry/index.ts';
import { printPoint } from './pen.ts';
import type { ShapedItem } from './shapes.ts';

/** A line or a loop as points, for drawing it small. */
export interface Polyline {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** Shares of the tolerance: chords, points left out on the way, and the simplification each stray by as much at most. */
const SHARES = 3;
const MOST_DECIMALS = 12;

/** A shape as few points that stray at most about `tolerance` mm from it. */
export function polylinesOf(shape: ShapedItem['shape'], tolerance: number): Polyline[] {
  const part = tolerance / SHARES;
  const lines = 'loops' in shape
    ? shape.loops.filter((loop) => loop.length > 0).map((points) => ({ points, closed: true }))
    : shape.paths.map((path) => ({ points: flattenPath(path, part), closed: path.closed }));
  return lines.map((line) => coarser({ ...line, points: thinned(line.points, part) }, tolerance));
}

/** The same with fewer points. */
export function coarser({ points, closed }: Polyline, tolerance: number): Polyline {
  const part = tolerance / SHARES;
  return { closed, points: closed ? simplifyLoop(points, part) : simplifyPolyline(points, part) };
}

/** Path data with as few decimals as the tolerance allows. A single point is a line of no length. */
export function polylineData(line: Polyline, tolerance: number): string {
  const places = placesOf(line, tolerance);
  return `M${places.length > 1 ? places.join('L') : `${places[0]}L${places[0]}`}${line.closed ? 'Z' : ''}`;
}

/** The same for many lines that are not filled: a stretch that was drawn before, in either direction, is left out. */
export function linesData(lines: readonly Polyline[], tolerance: number): string {
  const drawn = new Set<string>();
  return lines.map((line) => newStretches(line, placesOf(line, tolerance), drawn)).join('');
}

function newStretches({ closed }: Polyline, places: readonly string[], drawn: Set<string>): string {
  const ends = closed || places.length === 1 ? [...places, places[0]!] : places;
  let data = '';
  let at: string | undefined;
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1]!, ends[i]!];
    const stretch = from < to ? `${from} ${to}` : `${to} ${from}`;
    if (drawn.has(stretch)) continue;
    drawn.add(stretch);
    data += at === from ? `L${to}` : `M${from}L${to}`;
    at = to;
  }
  return data;
}

/** The points as they are printed, to a grid of half the tolerance at most, none twice in a row. */
function placesOf({ points }: Polyline, tolerance: number): string[] {
  const { step, decimals } = gridOf(tolerance / 2);
  const snap = (value: number) => Math.round(value / step) * step;
  const printed = points.map(({ x, y }) => printPoint({ x: snap(x), y: snap(y) }, decimals));
  return printed.filter((place, i) => place !== printed[i - 1]);
}

/** The widest step of 1, 2 or 5 of a power of ten that is not above `most`, and the decimals it needs. */
function gridOf(most: number): { readonly step: number; readonly decimals: number } {
  const power = Math.floor(Math.log10(most));
  const lead = [5, 2, 1].find((one) => one * 10 ** power <= most * (1 + 1e-9)) ?? 1;
  return { step: lead * 10 ** power, decimals: Math.min(MOST_DECIMALS, Math.max(0, -power)) };
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
