import { type Box, unionBoxes } from '../../geometry/box.ts';
import { pathBounds } from '../../geometry/measure.ts';
import { type Point } from '../../geometry/point.ts';
import { type Piece, type Track, pointAt, wrapDistance } from './track.ts';

/** The place of a track nearest to a point. */
export interface NearestPlace {
  readonly point: Point;
  /** How far along the track, mm. */
  readonly at: number;
  /** How far from the point, mm. */
  readonly distance: number;
}

/** The nearest place of a track, or undefined when the track has no pieces. Checks every piece. */
export function nearestOnTrack(track: Track, point: Point): NearestPlace | undefined {
  let best: NearestPlace | undefined;
  for (let i = 0; i < track.pieces.length; i++) {
    const piece = track.pieces[i]!;
    const along = nearestAlong(piece, point);
    const place = pointAt(track, track.starts[i]! + along);
    const distance = Math.hypot(place.x - point.x, place.y - point.y);
    if (!best || distance < best.distance) best = { point: place, at: track.starts[i]! + along, distance };
  }
  return best;
}

/** The box around a track that has pieces. */
export function trackBox({ pieces }: Track): Box {
  return unionBoxes(pieces.map(({ from, to, centre, turn }) =>
    pathBounds({ start: from, segments: [centre ? { kind: 'arc', end: to, centre, clockwise: turn < 0 } : { kind: 'line', end: to }], closed: false })))!;
}

/** Distance along a piece of its place nearest to a point. */
function nearestAlong(piece: Piece, point: Point): number {
  const { from, to, centre, length } = piece;
  if (!centre) {
    const along = ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length;
    return Math.min(length, Math.max(0, along));
  }
  const fx = from.x - centre.x;
  const fy = from.y - centre.y;
  const px = point.x - centre.x;
  const py = point.y - centre.y;
  const side = Math.sign(piece.turn);
  const angle = side * Math.atan2(fx * py - fy * px, fx * px + fy * py);
  const forward = angle < 0 ? angle + 2 * Math.PI : angle;
  const sweep = Math.abs(piece.turn);
  if (forward <= sweep) return (length * forward) / sweep;
  return forward - sweep < 2 * Math.PI - forward ? length : 0;
}

/** How much the direction turns, left and right alike, within `reach` mm on both sides of a distance: radians. */
export function turningNear(track: Track, at: number, reach: number): number {
  let total = 0;
  for (let i = 0; i < track.pieces.length; i++) {
    const piece = track.pieces[i]!;
    const overlap = overlapOf(track, track.starts[i]!, piece.length, at, reach);
    total += Math.abs(piece.turn) * (overlap / piece.length);
    if (isWithin(track, track.starts[i]!, at, reach)) total += cornerBefore(track, i);
  }
  return total;
}

/** Length of the piece [start, start + length] within `reach` of `at`, counted round a closed track. */
function overlapOf(track: Track, start: number, length: number, at: number, reach: number): number {
  const low = wrapDistance(track, at) - reach;
  const shifts = track.closed ? [-track.length, 0, track.length] : [0];
  const parts = shifts.map((shift) => Math.min(start + shift + length, low + 2 * reach) - Math.max(start + shift, low));
  return Math.min(length, parts.reduce((sum, part) => sum + Math.max(0, part), 0));
}

function isWithin(track: Track, place: number, at: number, reach: number): boolean {
  const apart = Math.abs(place - wrapDistance(track, at));
  return Math.min(apart, track.closed ? track.length - apart : apart) <= reach;
}

/** Angle between the end of the piece before and the start of piece `index`, radians. */
function cornerBefore(track: Track, index: number): number {
  if (index === 0 && !track.closed) return 0;
  const before = track.pieces[(index + track.pieces.length - 1) % track.pieces.length]!;
  const a = heading(before, before.to);
  const b = heading(track.pieces[index]!, track.pieces[index]!.from);
  return Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
}

/** Direction of travel at one end of a piece; not of unit length. */
function heading(piece: Piece, place: Point): Point {
  if (!piece.centre) return { x: piece.to.x - piece.from.x, y: piece.to.y - piece.from.y };
  const side = Math.sign(piece.turn);
  return { x: (piece.centre.y - place.y) * side, y: (place.x - piece.centre.x) * side };
}
