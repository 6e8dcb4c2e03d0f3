import type { Outline, Stroke } from '../../artwork/artwork.ts';
import { cosSin, type Point, polylinePath, type Vector } from '../../geometry/index.ts';
import { keptOf } from './carry.ts';
import { type Dot, shapeDots, strokeDots } from './dots.ts';
import { stretchesOf, type Stretches } from './landings.ts';
import { stemDirection } from './slant.ts';

/** Which way bars lie: along the dot where it has a direction (else along the stems), along the stems, level, or at a stated angle. */
export type BarDirection = 'dot' | 'stems' | 'level' | 'angle';

/** Lengths mm. */
export interface BarOptions {
  /** Strokes shorter than this are dots. */
  readonly shortest: number;
  /** Round shapes up to this size across are dots. */
  readonly largest: number;
  /** Least length of a bar, end to end of its centre line. */
  readonly length: number;
  readonly direction: BarDirection;
  /** Degrees counter-clockwise from +x, for bars at a stated angle. */
  readonly angle: number;
  /** A stroke nearer than this to another belongs to it and is no dot. */
  readonly reach: number;
}

/** A bar and the nearest other centre line. */
export interface Bar {
  readonly centre: Point;
  /** Distance to it, and where it is nearest; Infinity when there is nothing else. */
  readonly clearance: number;
  readonly at: Point;
}

export interface Barred {
  readonly strokes: readonly Stroke[];
  readonly rest: readonly Outline[];
  readonly bars: readonly Bar[];
}

/** Makes bars of dots: of short strokes in their places among the strokes, of round shapes after them. */
export function dotsToBars(strokes: readonly Stroke[], outlines: readonly Outline[], options: BarOptions): Barred {
  const dots = new Map(strokeDots(strokes, options.shortest, options.reach).map((dot) => [dot.stroke, dot]));
  const shapes = shapeDots(outlines, options.largest);
  const stems = stemDirection(strokes.filter((_, i) => !dots.has(i)));
  const changed = strokes.map((stroke, i): Stroke => {
    const dot = dots.get(i);
    return dot ? { ...keptOf(stroke), ...barOf(dot, stems, options) } : stroke;
  });
  const added = shapes.dots.map((dot): Stroke => ({ ...barOf(dot, stems, options), ...(dot.source !== undefined && { source: dot.source }) }));
  const all = [...changed, ...added];
  const places = [...dots.keys(), ...added.map((_, i) => changed.length + i)].sort((a, b) => a - b);
  const stretches = stretchesOf(all, CHORD);
  return { strokes: all, rest: shapes.rest, bars: places.map((i) => clearanceOf(all[i]!, i, stretches)) };
}

/** Chords that stand for strokes when clearances are measured stray at most this much, mm. */
const CHORD = 0.005;

function barOf(dot: Dot, stems: number, options: BarOptions): Pick<Stroke, 'path' | 'widths'> {
  const length = Math.max(options.length, dot.length);
  const { x, y } = directionOf(dot, stems, options);
  const [dx, dy] = [(x * length) / 2, (y * length) / 2];
  const path = polylinePath([{ x: dot.centre.x - dx, y: dot.centre.y - dy }, { x: dot.centre.x + dx, y: dot.centre.y + dy }], false);
  const { width } = dot;
  return { path, ...(width !== undefined && { widths: [{ along: 0, width }, { along: length, width }] }) };
}

function directionOf({ along }: Dot, stems: number, { direction, angle }: BarOptions): Vector {
  if (direction === 'dot' && along !== undefined) return along;
  const degrees = direction === 'level' ? 0 : direction === 'angle' ? angle : stems;
  const { cos, sin } = cosSin(degrees);
  return { x: cos, y: sin };
}

/** Places looked at along a bar. The distance to a line changes by no more than the way from one to the next. */
const LOOKS = 32;

function clearanceOf({ path }: Stroke, own: number, { list, index }: Stretches): Bar {
  const [from, to] = [path.start, path.segments[0]!.end];
  const centre = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  let best: Bar = { centre, clearance: Infinity, at: centre };
  for (let k = 0; k <= LOOKS; k++) {
    const point = { x: from.x + ((to.x - from.x) * k) / LOOKS, y: from.y + ((to.y - from.y) * k) / LOOKS };
    const near = index.nearest(point, best.clearance, (s) => list[s]!.stroke !== own);
    if (near === undefined) continue;
    const exact = between(from, to, list[near.segment]!);
    if (exact.clearance < best.clearance) best = { centre, ...exact };
  }
  return best;
}

/** Least distance between two straight pieces, and the place on the second: at one of the four ends, or nothing where they cross. */
function between(a: Point, b: Point, { from: c, to: d }: { readonly from: Point; readonly to: Point }): { clearance: number; at: Point } {
  const crossed = crossing(a, b, c, d);
  if (crossed) return { clearance: 0, at: crossed };
  const [fc, fd, fa, fb] = [foot(c, a, b), foot(d, a, b), foot(a, c, d), foot(b, c, d)];
  const gaps = [{ clearance: gap(c, fc), at: c }, { clearance: gap(d, fd), at: d }, { clearance: gap(a, fa), at: fa }, { clearance: gap(b, fb), at: fb }];
  return gaps.reduce((p, q) => (q.clearance < p.clearance ? q : p));
}

const gap = (p: Point, q: Point) => Math.hypot(p.x - q.x, p.y - q.y);

function foot(p: Point, a: Point, b: Point): Point {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return { x: a.x + t * dx, y: a.y + t * dy };
}

function crossing(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const [ux, uy, vx, vy, wx, wy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y, c.x - a.x, c.y - a.y];
  const det = ux * vy - uy * vx;
  if (det === 0) return undefined;
  const [t, s] = [(wx * vy - wy * vx) / det, (wx * uy - wy * ux) / det];
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? { x: a.x + t * ux, y: a.y + t * uy } : undefined;
}
