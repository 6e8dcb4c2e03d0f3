import { boxOfPoints, cubicPoint, growBox, type Point } from '../geometry/index.ts';
import type { Course, Sample } from './course.ts';
import { alongCircle, courseAtEnd } from './ends.ts';
import type { Knot } from './junctions.ts';
import { eachPieceNear, nearestOf, type Pieces, piecesOf } from './pieces.ts';
import type { Settled } from './settle.ts';

/** How far a lone arm is run on beyond the middle of its junction, in the junction's radius, to meet its partner. */
const BEYOND = 1.3;

/** The course's samples with each lone end run on into its junction, for the walls there to place. */
export function runIn({ samples, ends, closed }: Course, knots: readonly Knot[]): Sample[] {
  if (closed) return [...samples];
  const head = ends[0].kind === 'lone' ? tail([...samples].reverse(), knots[ends[0].knot]!) : [];
  const last = ends[1].kind === 'lone' ? tail(samples, knots[ends[1].knot]!) : [];
  return [...head.reverse(), ...samples, ...last];
}

function tail(samples: readonly Sample[], knot: Knot): Sample[] {
  const last = samples.at(-1)!;
  const course = samples.length > 2 ? courseAtEnd(samples, 2 * last.half) : { heading: Math.atan2(knot.at.y - last.y, knot.at.x - last.x), curvature: 0 };
  const way = tailLength(last, knot);
  const count = Math.max(2, Math.min(200, Math.ceil((way / last.half) * 3.5)));
  return Array.from({ length: count }, (_, k): Sample => ({ ...last, left: [], right: [], ...alongCircle(last, course.heading, course.curvature, ((k + 1) * way) / count) }));
}

const tailLength = (from: Point, { at, radius }: Knot) => Math.min(Math.hypot(at.x - from.x, at.y - from.y), radius) + BEYOND * radius;

/** Where a lone end meets a stroke. */
export interface Meeting {
  readonly line: readonly Settled[];
  readonly stroke: number;
  readonly at: Point;
}

/** A stroke that others may end on. */
export interface Partner {
  readonly stroke: number;
  readonly line: readonly Point[];
  readonly closed: boolean;
  readonly pieces: Pieces;
}

export const partnerOf = (stroke: number, line: readonly Point[], closed: boolean): Partner => ({ stroke, line, closed, pieces: piecesOf(line, closed) });

/** The line's last part cut where it first crosses a partner's line, or bent onto the nearest one where it crosses none. What its other end left of it may be short. */
export function meet(line: readonly Settled[], way: number, partners: readonly Partner[], fallback: Point): Meeting | { readonly line: readonly Settled[] } {
  if (line.length < 2) return { line };
  const from = Math.min(line.length - 1, Math.max(2, indexBack(line, way)));
  const crossed = crossingOf(line, from, partners);
  const merging = crossed && crossed.angle > STEEP ? undefined : merge(line, from, partners);
  if (merging) return merging;
  if (crossed) return { line: [...withoutTouching(line.slice(0, crossed.index), crossed.at), { ...line[crossed.index]!, ...crossed.at }], stroke: crossed.stroke, at: crossed.at };
  const near = nearestApproach(line, from, partners);
  if (near === undefined) return { line: landed(line, from, closestIndex(line, from, fallback), fallback) };
  return { line: landed(line, from, near.index, near.at), stroke: near.stroke, at: near.at };
}

/** A crossing at more than this, radians, ends a line where it is. */
const STEEP = 0.26;

function crossingOf(line: readonly Settled[], from: number, partners: readonly Partner[]): (Crossing & { index: number }) | undefined {
  for (let index = from; index < line.length; index++) {
    const crossing = firstCrossing(line[index - 1]!, line[index]!, partners);
    if (crossing) return { ...crossing, index };
  }
  return undefined;
}

/** A line that comes this near a partner, in half-widths, and this nearly along it (radians) merges with it. */
const [ALONGSIDE, ALIKE] = [0.3, 0.35];

/** Where a line comes alongside a partner: cut there and brought onto it in an even bend, tangent to it. */
export function merge(line: readonly Settled[], from: number, partners: readonly Partner[]): Meeting | undefined {
  for (let i = Math.max(from, 2); i < line.length; i++) {
    const place = line[i]!;
    const heading = Math.atan2(place.y - line[i - 1]!.y, place.x - line[i - 1]!.x);
    for (const { stroke, line: other, closed, pieces } of partners) {
      const near = footOn(pieces, place, ALONGSIDE * place.half);
      if (near === undefined) continue;
      const off = wrapped(near.heading - heading);
      const turned = Math.abs(off) > Math.PI / 2;
      const angle = turned ? wrapped(off + Math.PI) : off;
      if (Math.abs(angle) > ALIKE) continue;
      const way = Math.min(4 * place.half, Math.max(1.2 * place.half, (2 * near.distance) / Math.max(1e-6, Math.abs(angle))));
      const goal = placeAlong(other, closed, near, turned ? -way : way);
      const arriving = goal.heading + (turned ? Math.PI : 0);
      return { line: bentOnto(line, goal.short ? roomBefore(line, i, goal.at, way) : i, goal.at, arriving), stroke, at: goal.at };
    }
  }
  return undefined;
}

const wrapped = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

interface OnLine {
  readonly piece: number;
  readonly at: Point;
  readonly heading: number;
  readonly distance: number;
}

/** The nearest place on a line, no farther than `within`. */
function footOn(pieces: Pieces, point: Point, within: number): OnLine | undefined {
  const piece = nearestOf(pieces, point, within, (k) => (k < pieces.first ? Infinity : footOnPiece(pieces.line, k, point).distance));
  return piece === undefined ? undefined : footOnPiece(pieces.line, piece, point);
}

function footOnPiece(line: readonly Point[], piece: number, { x, y }: Point): OnLine {
  const [a, b] = [line.at(piece - 1)!, line[piece]!];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  const at = { x: a.x + t * dx, y: a.y + t * dy };
  return { piece, at, heading: Math.atan2(dy, dx), distance: Math.hypot(at.x - x, at.y - y) };
}

/** The place a signed length further along a line; its end, should that come first: it is short then. */
function placeAlong(line: readonly Point[], closed: boolean, from: OnLine, way: number): { at: Point; heading: number; short: boolean } {
  const sign = Math.sign(way);
  let [at, left, heading, k] = [from.at, Math.abs(way), from.heading, sign > 0 ? from.piece : from.piece - 1];
  for (let guard = 0; guard < line.length; guard++, k += sign) {
    if (!closed && (k < 0 || k >= line.length)) break;
    const next = line.at(((k % line.length) + line.length) % line.length)!;
    const piece = Math.hypot(next.x - at.x, next.y - at.y);
    if (piece > 1e-9) heading = sign > 0 ? Math.atan2(next.y - at.y, next.x - at.x) : Math.atan2(at.y - next.y, at.x - next.x);
    if (piece >= left) return { at: { x: at.x + (left / piece) * (next.x - at.x), y: at.y + (left / piece) * (next.y - at.y) }, heading, short: false };
    left -= piece;
    at = next;
  }
  return { at, heading, short: true };
}

const headingAt = (line: readonly Point[], i: number): number => Math.atan2(line[i]!.y - line[i - 1]!.y, line[i]!.x - line[i - 1]!.x);

/** The line up to an index and from there in an even bend to a point. */
const bentOnto = (line: readonly Settled[], from: number, at: Point, arriving: number): Settled[] =>
  [...line.slice(0, from + 1), ...blend(line[from]!, headingAt(line, from), at, arriving)];

/** The last index, no later than one given, from which a point is so far away that a bend has room. */
function roomBefore(line: readonly Settled[], last: number, at: Point, way: number): number {
  let i = last;
  while (i > 1 && Math.hypot(line[i]!.x - at.x, line[i]!.y - at.y) < way) i--;
  return i;
}

/** Places on the cubic from one place and heading to another, the start left out. */
function blend(from: Settled, heading: number, to: Point, arriving: number): Settled[] {
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  const handle = apart / 3;
  const [c, d] = [{ x: from.x + handle * Math.cos(heading), y: from.y + handle * Math.sin(heading) }, { x: to.x - handle * Math.cos(arriving), y: to.y - handle * Math.sin(arriving) }];
  const count = Math.max(4, Math.round((3.5 * apart) / from.half));
  return Array.from({ length: count }, (_, k): Settled => ({ ...from, seen: 0, ...cubicPoint([from, c, d, to], (k + 1) / count) }));
}

/** Without a last place so near the new end that the direction between them would be noise. */
function withoutTouching(line: readonly Settled[], at: Point): readonly Settled[] {
  const last = line.at(-1)!;
  return line.length > 2 && Math.hypot(last.x - at.x, last.y - at.y) < 0.15 * last.half ? line.slice(0, -1) : line;
}

function indexBack(line: readonly Settled[], way: number): number {
  let [i, left] = [line.length - 1, way];
  while (i > 1 && left > 0) {
    left -= Math.hypot(line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y);
    i--;
  }
  return i;
}

interface Crossing {
  readonly at: Point;
  readonly stroke: number;
  /** Between the two lines, radians, no more than a right angle. */
  readonly angle: number;
}

/** Rounding may find a crossing this share of a piece outside its box. */
const HAIR = 1e-6;

function firstCrossing(a: Point, b: Point, partners: readonly Partner[]): Crossing | undefined {
  let best = undefined as (Crossing & { t: number }) | undefined;
  const box = growBox(boxOfPoints([a, b])!, HAIR * Math.hypot(b.x - a.x, b.y - a.y));
  for (const { stroke, line, pieces } of partners) {
    eachPieceNear(pieces, box, (k) => {
      const [c, d] = [line.at(k - 1)!, line[k]!];
      const t = crossingAt(a, b, c, d);
      if (t === undefined || (best !== undefined && t >= best.t)) return;
      const off = Math.abs(wrapped(Math.atan2(d.y - c.y, d.x - c.x) - Math.atan2(b.y - a.y, b.x - a.x)));
      best = { t, stroke, at: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, angle: Math.min(off, Math.PI - off) };
    });
  }
  return best;
}

/** Share of the way from a to b at which it crosses the piece from c to d. */
function crossingAt(a: Point, b: Point, c: Point, d: Point): number | undefined {
  const [ux, uy, vx, vy, wx, wy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y, c.x - a.x, c.y - a.y];
  const det = ux * vy - uy * vx;
  if (det === 0) return undefined;
  const [t, s] = [(wx * vy - wy * vx) / det, (wx * uy - wy * ux) / det];
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? t : undefined;
}

function nearestApproach(line: readonly Settled[], from: number, partners: readonly Partner[]): { index: number; stroke: number; at: Point } | undefined {
  let best: { index: number; stroke: number; at: Point; gap: number } | undefined;
  for (let index = from; index < line.length; index++) {
    for (const { stroke, line: other, pieces } of partners) {
      const gapTo = (k: number) => Math.hypot(other[k]!.x - line[index]!.x, other[k]!.y - line[index]!.y);
      const k = nearestOf(pieces, line[index]!, best?.gap ?? Infinity, gapTo);
      if (k === undefined || (best !== undefined && gapTo(k) >= best.gap)) continue;
      best = { index, stroke, at: { x: other[k]!.x, y: other[k]!.y }, gap: gapTo(k) };
    }
  }
  return best;
}

function closestIndex(line: readonly Settled[], from: number, point: Point): number {
  let best = line.length - 1;
  for (let i = from; i < line.length; i++) {
    if (Math.hypot(line[i]!.x - point.x, line[i]!.y - point.y) < Math.hypot(line[best]!.x - point.x, line[best]!.y - point.y)) best = i;
  }
  return best;
}

/** A landing's bend has at least this much room, in half-widths, and turns at its start by no more than this, radians. */
const [ROOM, MOST_TURN] = [1.2, 0.3];

/** A landing's bend begins no farther back than this before the junction, in half-widths. */
const FARTHEST = 4;

/** The line bent so that it ends at a point: on an arc that begins where the point lies nearly ahead. */
function landed(line: readonly Settled[], from: number, last: number, at: Point): Settled[] {
  const off = (i: number) => Math.abs(wrapped(Math.atan2(at.y - line[i]!.y, at.x - line[i]!.x) - headingAt(line, i)));
  const start = roomBefore(line, last, at, ROOM * line[last]!.half);
  const least = Math.max(1, indexBack(line.slice(0, from + 1), FARTHEST * line[from]!.half));
  let best = start;
  for (let i = start; i >= least && off(best) > MOST_TURN; i--) if (off(i) < off(best)) best = i;
  const chord = Math.atan2(at.y - line[best]!.y, at.x - line[best]!.x);
  return bentOnto(line, best, at, chord + wrapped(chord - headingAt(line, best)));
}
