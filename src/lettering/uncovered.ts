import { type Point, samplePath } from '../geometry/index.ts';
import { widthAt } from './edit/carry.ts';
import type { Track } from './track.ts';
import type { TracedStroke } from './types.ts';

/**
 * So far outside of all strokes, in the lettering's usual half-width, the middle of a part that is as wide must lie to count as left out; the thinner
 * it is the farther. In the corner of an end cut at 60 degrees it comes to 0.24, at most.
 */
const OUTSIDE = 0.3;

/** Thinner parts, in the usual half-width, are corners. */
const THIN = 0.15;

/** Strokes are looked at so many times per usual width. */
const LOOKS = 6;

interface Disc extends Point {
  readonly half: number;
  readonly stroke: number;
}

/** A part of the lettering that no stroke covers, by a place in its middle, and the stroke nearest to that. */
export interface Uncovered {
  readonly at: Point;
  readonly stroke: number;
}

/** The parts of the axis that lie outside of what the strokes cover with their own widths; parts nearer to each other than a width are one. */
export function uncoveredParts(tracks: readonly Track[], strokes: readonly TracedStroke[], width: number): Uncovered[] {
  const discs = discsOf(strokes, width / LOOKS);
  if (discs.length === 0) return [];
  const covers = coverOf(discs, width);
  const middles = tracks.flatMap((track) => runsOutside(track, width / 2, covers));
  const apart = middles.filter((at, i) => middles.slice(0, i).every((other) => Math.hypot(other.x - at.x, other.y - at.y) > width));
  return apart.map((at) => ({ at, stroke: nearest(discs, at).stroke }));
}

function discsOf(strokes: readonly TracedStroke[], step: number): Disc[] {
  return strokes.flatMap(({ path, widths }, stroke) =>
    samplePath(path, step).map(({ point: { x, y }, distance }): Disc => ({ x, y, half: (widthAt(widths, distance) ?? 0) / 2, stroke })));
}

/** Tells whether strokes come as near to a place as `more` mm, by cells as wide as the lettering: each disc is entered in all cells that it can come near to. */
type Covers = (at: Point, more: number) => boolean;

function coverOf(discs: readonly Disc[], width: number): Covers {
  const cells = new Map<string, Disc[]>();
  const cell = (v: number) => Math.floor(v / width);
  const most = allowed(0, width / 2);
  for (const disc of discs) {
    const reach = disc.half + most;
    for (let i = cell(disc.x - reach); i <= cell(disc.x + reach); i++) for (let j = cell(disc.y - reach); j <= cell(disc.y + reach); j++) enter(cells, `${i} ${j}`, disc);
  }
  return ({ x, y }, more) => cells.get(`${cell(x)} ${cell(y)}`)?.some((disc) => Math.hypot(disc.x - x, disc.y - y) <= disc.half + more) === true;
}

function enter(cells: Map<string, Disc[]>, key: string, disc: Disc): void {
  const list = cells.get(key);
  if (list === undefined) cells.set(key, [disc]);
  else list.push(disc);
}

/** How far outside of all strokes the middle of a disc may lie. */
const allowed = (radius: number, half: number): number => OUTSIDE * half * Math.max(1, half / Math.max(radius, THIN * half));

/** The middle place of each run of places that are not covered. */
function runsOutside({ x, y, radius }: Track, half: number, covers: Covers): Point[] {
  const outside = x.map((_, i) => radius[i]! > THIN * half && !covers({ x: x[i]!, y: y[i]! }, allowed(radius[i]!, half)));
  const middles: Point[] = [];
  for (let i = 0; i < outside.length; i++) {
    if (!outside[i]) continue;
    const from = i;
    while (outside[i + 1] === true) i++;
    const middle = (from + i) >> 1;
    middles.push({ x: x[middle]!, y: y[middle]! });
  }
  return middles;
}

const nearest = (discs: readonly Disc[], { x, y }: Point): Disc =>
  discs.reduce((best, disc) => (Math.hypot(disc.x - x, disc.y - y) - disc.half < Math.hypot(best.x - x, best.y - y) - best.half ? disc : best));
