import type { Point, RegionIndex } from '../geometry/index.ts';
import type { Shore } from './crotch.ts';
import { relaxed, type Settled, USUAL } from './settle.ts';

/** Heading and bend, and the law of the half-width, are read over so many half-widths before the place where the end's own shape begins. */
const STRETCH = 1.6;

/** A line is cut back at most so many half-widths: an end cut at 60 degrees bends it over nearly four. */
const MOST_CUT = 4.2;

/** So near the tip, in half-widths, a line has no direction of its own. */
const TIP = 0.2;

/** How far ahead, in half-widths, a line must still be where its bend leads, and how far off it may be there. */
const [AHEAD, ASTRAY] = [0.7, 0.06];

/** Smoothing carries an end's bend so far inwards, in half-widths, from where it shows. */
const CLEAR = 0.5;

/** A disc wider by this share than those further in, and widening faster than this per length, belongs to the end's flare. */
const [FLARE, STEEP_FLARE] = [0.1, 0.3];

/** And only so many half-widths from the tip: a drop's head is the stroke's own. */
const MOST_FLARE = 2.5;

/** A line and the half-width at its end. */
export interface FreeEnd {
  readonly line: readonly Settled[];
  readonly half: number;
}

/**
 * Cuts the last places off where the end's own shape bends or widens them, runs on in an even bend to the outline, and stops
 * where a round cap of the stroke's own width would reach as far as the lettering does. Where the width falls to nothing that is the tip.
 */
export function finishEnd(ground: Ground, line: readonly Settled[]): FreeEnd {
  const along = backFrom(line);
  for (let from = 0; ; ) {
    const cut = cutIndex(ground.index, line, along, from);
    const end = endedAt(ground, line, along, cut);
    const missed = lastLeftOut(line, cut, end.line);
    if (missed === undefined) return end;
    from = Math.max(from, missed) + 1;
  }
}

/** What is cut off may lie so far beside what runs on instead, in half-widths, when it is as wide; the thinner the farther. The corner of an end cut at 60 degrees comes to 0.55, at 70 to 0.64. */
const LEFT_OUT = 0.75;

/** The last place that was cut off and lies too far from the line that runs on instead: then it belongs to a hook of the stroke, not to the shape of its end. */
function lastLeftOut(line: readonly Settled[], cut: number, instead: readonly Settled[]): number | undefined {
  const { half } = line[cut]!;
  const near = instead.slice(-2 * AGAIN);
  for (let i = line.length - 1; i > cut; i--) {
    const place = line[i]!;
    const far = near.reduce((least, other) => Math.min(least, Math.hypot(place.x - other.x, place.y - other.y)), Infinity);
    if (far * Math.min(1, place.half / half) > LEFT_OUT * half) return i;
  }
  return undefined;
}

function endedAt({ index, shore }: Ground, line: readonly Settled[], along: readonly number[], cut: number): FreeEnd {
  const whole = cut === line.length - 1;
  const clear = withoutTip(whole ? line : resettled(shore, line.slice(0, cut + 1)), along);
  const law = halfLaw(clear, along, whole);
  const run = runOut(index, clear, law);
  const done = stopped(run);
  return { line: done, half: done.at(-1)!.half };
}

/** What ends are judged by: the region, and its boundary. */
export interface Ground {
  readonly index: RegionIndex;
  readonly shore: Shore;
}

/** So many places at the end of a cut line are settled again; the first of them stay. */
const [AGAIN, HELD] = [32, 6];

/** Settling again moves a place no farther than this, in half-widths. */
const MOST_MOVED = 0.3;

/** A line settled once more without what was cut off, which had bent it a little farther in. */
function resettled(shore: Shore, line: readonly Settled[]): readonly Settled[] {
  const from = Math.max(0, line.length - AGAIN);
  if (line.length - from < 6) return line;
  const again = relaxed(shore, line.slice(from), USUAL, from > 0 ? HELD : 0);
  const strayed = again.some((place, i) => {
    const before = line[from + i]!;
    return Math.hypot(place.x - before.x, place.y - before.y) > MOST_MOVED * before.half || Math.abs(place.half - before.half) > MOST_MOVED * before.half;
  });
  return strayed ? line : [...line.slice(0, from), ...again];
}

/** A line without its last places that are so near its tip that they have no direction of their own. */
function withoutTip(line: readonly Settled[], along: readonly number[]): readonly Settled[] {
  let last = line.length - 1;
  while (last > 2 && along[last]! < TIP * line[last]!.half) last--;
  return line.slice(0, last + 1);
}

/** Length from each place to the end. */
function backFrom(line: readonly Settled[]): number[] {
  const along = line.map(() => 0);
  for (let i = line.length - 2; i >= 0; i--) along[i] = along[i + 1]! + Math.hypot(line[i]!.x - line[i + 1]!.x, line[i]!.y - line[i + 1]!.y);
  return along;
}

/** A corner's bisector has a disc of at least this share of the way left to the corner; what is thinner is a hairline of its own. */
const CORNER = 0.2;

/** In a corner discs shrink at least to this share. */
const SHRUNK = 0.7;

/** The last place that is like those before it: inside, on their bend unless what follows is a hairline, and not in a flare; only places from `from` on are looked at. */
function cutIndex(index: RegionIndex, line: readonly Settled[], along: readonly number[], from: number): number {
  const first = Math.max(2, from, line.findIndex(({ half }, i) => along[i]! <= Math.min(MOST_CUT * half, 0.5 * along[0]!)));
  for (let i = first; i < line.length; i++) {
    const astray = line.at(-1)!.half < SHRUNK * line[i]!.half && isAstray(line, along, i) && slimness(line, along, i) > CORNER;
    if (!astray && !isFlared(line, along, i) && index.contains(line[i]!)) continue;
    let last = i;
    while (last > 2 && along[last]! < along[i]! + CLEAR * line[i]!.half) last--;
    return last;
  }
  return line.length - 1;
}

/** Mean half-width from a place on, by the mean length left to the tip. */
function slimness(line: readonly Settled[], along: readonly number[], from: number): number {
  let area = 0;
  for (let i = from; i + 1 < line.length; i++) area += ((line[i]!.half + line[i + 1]!.half) / 2) * (along[i]! - along[i + 1]!);
  return area / (along[from]! ** 2 / 2 || 1);
}

/** Whether the line, a little ahead, is no longer where the bend of the stretch before this place leads. */
function isAstray(line: readonly Settled[], along: readonly number[], i: number): boolean {
  const { half } = line[i]!;
  let ahead = i;
  while (ahead < line.length - 1 && along[i]! - along[ahead]! < AHEAD * half) ahead++;
  const way = along[i]! - along[ahead]!;
  if (way === 0) return false;
  const course = courseAtEnd(line.slice(Math.max(0, i - 40), i + 1), STRETCH * half);
  const guess = alongCircle(line[i]!, course.heading, course.curvature, way);
  return Math.hypot(line[ahead]!.x - guess.x, line[ahead]!.y - guess.y) > ASTRAY * half * Math.min(1, way / (AHEAD * half)) ** 2;
}

function isFlared(line: readonly Settled[], along: readonly number[], i: number): boolean {
  const { half } = line[i]!;
  if (along[i]! > MOST_FLARE * half) return false;
  let before = i;
  while (before > 0 && along[before]! - along[i]! < 0.5 * half) before--;
  const growth = half - line[before]!.half;
  let far = before;
  while (far > 0 && along[far]! - along[i]! < STRETCH * half) far--;
  return growth > STEEP_FLARE * (along[before]! - along[i]!) && half > (1 + FLARE) * line[far]!.half;
}

/** A half-width by length run on beyond a place. */
type HalfLaw = (way: number) => number;

/** The half-widths of the last stretch, as a straight line through them run on: from the last one's own where nothing was cut off beyond it. */
function halfLaw(kept: readonly Settled[], along: readonly number[], whole: boolean): HalfLaw {
  const cut = kept.length - 1;
  const last = kept[cut]!;
  let [n, su, sv, suu, suv] = [0, 0, 0, 0, 0];
  for (let i = cut; i >= 0 && (along[i]! - along[cut]! < STRETCH * last.half || n < 4); i--) {
    const [u, v] = [along[cut]! - along[i]!, kept[i]!.half];
    n++; su += u; sv += v; suu += u * u; suv += u * v;
  }
  const spread = n * suu - su * su;
  const slope = n < 4 || spread <= 0 ? 0 : Math.min(0.2, Math.max(-0.9, (n * suv - su * sv) / spread));
  const level = whole ? last.half : (sv - slope * su) / n;
  return (way) => Math.max(0.01 * last.half, level + slope * way);
}

/** The line run on along the circle of its last stretch as far as the outline. */
function runOut(index: RegionIndex, line: readonly Settled[], law: HalfLaw): Settled[] {
  const last = line.at(-1)!;
  const { heading, curvature } = courseAtEnd(line, STRETCH * last.half);
  const reach = reachAlong(index, last, heading, curvature, last.half);
  const step = Math.max(1e-9, Math.hypot(last.x - line.at(-2)!.x, last.y - line.at(-2)!.y));
  const count = Math.min(200, Math.max(1, Math.round(reach / Math.min(step, last.half / 2))));
  const tail = Array.from({ length: count }, (_, k): Settled => {
    const way = (reach * (k + 1)) / count;
    return { ...last, ...alongCircle(last, heading, curvature, way), half: law(way), seen: 0 };
  });
  return [...line, ...tail];
}

/** A line that runs to the outline, stopped where what is left is the half-width there. */
function stopped(run: readonly Settled[]): Settled[] {
  let left = 0;
  for (let i = run.length - 2; i > 0; i--) {
    const [a, b] = [run[i]!, run[i + 1]!];
    const piece = Math.hypot(b.x - a.x, b.y - a.y);
    if (left + piece >= a.half) {
      const t = Math.max(0, Math.min(1, (left + piece - a.half) / (piece + b.half - a.half || 1)));
      const end = { ...b, x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), half: a.half + t * (b.half - a.half) };
      return t * piece < 0.05 * a.half && i > 1 ? [...run.slice(0, i), end] : [...run.slice(0, i + 1), end];
    }
    left += piece;
  }
  return run.slice(0, 2);
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
  while (way < 12 * half && index.contains(alongCircle(from, heading, curvature, way + step))) way += step;
  let [low, high] = [way, way + step];
  for (let k = 0; k < 24; k++) {
    const middle = (low + high) / 2;
    if (index.contains(alongCircle(from, heading, curvature, middle))) low = middle;
    else high = middle;
  }
  return low;
}
