import { makeRegionIndex, type Point, type Region, type RegionIndex } from '../geometry/index.ts';
import type { Settled } from './settle.ts';

/** The half-width is read so far from the tip, in half-widths: clear of caps, flares and serifs. */
const [READ_FROM, READ_TO] = [0.2, 1.8];

/** A disc wider or narrower by this share than the width law further in belongs to the end's flare or cap. */
const FLARE = 0.12;

/** And only where it changes by more than this per length: a drop's head or a taper is the stroke's own. */
const STEEP_FLARE = 0.3;

/** A line is cut back at most so many half-widths before it is run out to the outline again. */
const MOST_CUT = 2.5;

/** A line and the half-width at its end. */
export interface FreeEnd {
  readonly line: readonly Settled[];
  readonly half: number;
}

/** Cuts the last places off where the end's own shape bends or widens them, and runs on in an even bend to half a width before the outline. */
export function finishEnd(index: RegionIndex, line: readonly Settled[]): FreeEnd {
  const along = backFrom(line);
  const total = along[0]!;
  const tip = line.length - 1;
  const rough = medianBetween(line, along, 0, Math.min(total, 4 * line[tip]!.half));
  const [from, to] = [Math.min(READ_FROM * rough, total / 2), Math.min(READ_TO * rough, total)];
  const middle = medianBetween(line, along, from, to);
  const cut = cutIndex(line, along, middle, Math.min(MOST_CUT * middle, 0.4 * total));
  const half = halfAtTip(line, along, from, to, middle);
  const kept = line.slice(0, cut + 1);
  return { line: runOut(index, kept, half), half };
}

/** Length from each place to the end. */
function backFrom(line: readonly Settled[]): number[] {
  const along = line.map(() => 0);
  for (let i = line.length - 2; i >= 0; i--) along[i] = along[i + 1]! + Math.hypot(line[i]!.x - line[i + 1]!.x, line[i]!.y - line[i + 1]!.y);
  return along;
}

function medianBetween(line: readonly Settled[], along: readonly number[], from: number, to: number): number {
  const halves = line.filter((_, i) => along[i]! >= from - 1e-9 && along[i]! <= to + 1e-9).map(({ half }) => half).sort((a, b) => a - b);
  return halves.length > 0 ? halves[halves.length >> 1]! : line.at(-1)!.half;
}

/** The half-width read over a stretch, run on to the tip; no more than a fifth off its median. */
function halfAtTip(line: readonly Settled[], along: readonly number[], from: number, to: number, middle: number): number {
  let [n, su, sv, suu, suv] = [0, 0, 0, 0, 0];
  line.forEach(({ half }, i) => {
    const u = along[i]!;
    if (u < from || u > to || Math.abs(half / middle - 1) > FLARE) return;
    n++; su += u; sv += half; suu += u * u; suv += u * half;
  });
  const spread = n * suu - su * su;
  if (n < 4 || spread <= 0) return middle;
  const tip = (sv - ((n * suv - su * sv) / spread) * su) / n;
  return Math.min(1.2 * middle, Math.max(0.8 * middle, tip));
}

/** The last place that is like those before it: at least half a half-width from the tip, further where discs flare. */
function cutIndex(line: readonly Settled[], along: readonly number[], half: number, most: number): number {
  let cut = line.length - 1;
  for (let i = line.length - 1; i > 2 && along[i]! < most; i--) {
    const before = Math.max(0, i - 3);
    const steep = Math.abs(line[i]!.half - line[before]!.half) > STEEP_FLARE * (along[before]! - along[i]!);
    const off = (steep && Math.abs(line[i]!.half / half - 1) > FLARE) || along[i]! < 0.5 * half;
    if (off) cut = i - 1;
  }
  return cut;
}

/** The line run on along the circle of its last stretch until half a width before the outline, or cut back to there. */
function runOut(index: RegionIndex, line: readonly Settled[], half: number): Settled[] {
  const last = line.at(-1)!;
  const { heading, curvature } = courseAtEnd(line, 1.6 * half);
  const reach = reachAlong(index, last, heading, curvature, half);
  const more = reach - half;
  if (more <= 0) return trimmed(line, -more);
  const step = Math.max(1e-9, Math.hypot(last.x - line.at(-2)!.x, last.y - line.at(-2)!.y));
  const count = Math.max(1, Math.round(more / step));
  const tail = Array.from({ length: count }, (_, k): Settled => {
    const at = alongCircle(last, heading, curvature, (more * (k + 1)) / count);
    return { ...last, x: at.x, y: at.y, half, seen: 0 };
  });
  return [...line, ...tail];
}

/** Heading and curvature at the end: the straight line through the headings of the last stretch's pieces, so that a circle comes out as itself. */
export function courseAtEnd(line: readonly Point[], stretch: number): { heading: number; curvature: number } {
  let [n, su, sv, suu, suv, along] = [0, 0, 0, 0, 0, 0];
  let heading: number | undefined;
  for (let i = line.length - 1; i > 0 && (along < stretch || n < 2); i--) {
    const [dx, dy] = [line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y];
    const piece = Math.hypot(dx, dy);
    const angle = Math.atan2(dy, dx);
    heading = heading === undefined ? angle : angle - 2 * Math.PI * Math.round((angle - heading) / (2 * Math.PI));
    const u = -(along + piece / 2);
    n++; su += u; sv += heading; suu += u * u; suv += u * heading;
    along += piece;
  }
  if (n === 0) return { heading: 0, curvature: 0 };
  const spread = n * suu - su * su;
  const curvature = n < 3 || spread <= 0 ? 0 : (n * suv - su * sv) / spread;
  return { heading: (sv - curvature * su) / n, curvature };
}

/** The place `way` along a circle from a point. */
export function alongCircle(from: Point, heading: number, curvature: number, way: number): Point {
  const half = (curvature * way) / 2;
  const chord = Math.abs(half) < 1e-6 ? way : (way * Math.sin(half)) / half;
  return { x: from.x + chord * Math.cos(heading + half), y: from.y + chord * Math.sin(heading + half) };
}

/** How far along the circle the outline is: by steps, then halving. */
function reachAlong(index: RegionIndex, from: Point, heading: number, curvature: number, half: number): number {
  const step = half / 4;
  let way = 0;
  while (way < 8 * half && index.contains(alongCircle(from, heading, curvature, way + step))) way += step;
  let [low, high] = [way, way + step];
  for (let k = 0; k < 24; k++) {
    const middle = (low + high) / 2;
    if (index.contains(alongCircle(from, heading, curvature, middle))) low = middle;
    else high = middle;
  }
  return low;
}

/** The line less its last `length` mm; at least its first two places stay. */
export function trimmed(line: readonly Settled[], length: number): Settled[] {
  let left = length;
  for (let i = line.length - 1; i > 1; i--) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const piece = Math.hypot(b.x - a.x, b.y - a.y);
    if (left < piece) {
      const t = 1 - left / piece;
      return [...line.slice(0, i), ...(t > 0.05 ? [{ ...b, x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), half: a.half + t * (b.half - a.half) }] : [])];
    }
    left -= piece;
  }
  return line.slice(0, 2);
}

export const indexOf = (region: Region): RegionIndex => makeRegionIndex(region);
