import { type Path, type Segment } from '../../geometry/path.ts';
import { type Point } from '../../geometry/point.ts';
import { type Move } from '../job/pass.ts';

/** A straight line, or a circular arc of at most half a turn when it has a centre. */
export interface Piece {
  readonly from: Point;
  readonly to: Point;
  /** Arc length, mm, above 0. */
  readonly length: number;
  /** Signed turn of the arc in radians, counter-clockwise positive; 0 on a line. */
  readonly turn: number;
  readonly centre?: Point;
}

/** Where the cutter's axis goes, seen from above: connected lines and arcs, measured by arc length. */
export interface Track {
  readonly pieces: readonly Piece[];
  /** Distance of each piece's start from the track's start, mm. */
  readonly starts: readonly number[];
  readonly length: number;
  readonly closed: boolean;
}

/** Pieces shorter than this (mm) vanish: far below any controller's resolution. */
const SHORTEST = 1e-7;

/** The track that follows a path of lines and arcs. Throws a RangeError on a cubic: fit arcs first. */
export function trackOf(path: Path): Track {
  const pieces: Piece[] = [];
  let from = path.start;
  for (const segment of path.segments) {
    pieces.push(...piecesOf(from, segment));
    from = segment.end;
  }
  return trackFromPieces(pieces, path.closed);
}

export function trackFromPieces(pieces: readonly Piece[], closed: boolean): Track {
  const kept = pieces.filter((piece) => piece.length > SHORTEST);
  const starts: number[] = [];
  let length = 0;
  for (const piece of kept) {
    starts.push(length);
    length += piece.length;
  }
  return { pieces: kept, starts, length, closed };
}

export function linePiece(from: Point, to: Point): Piece {
  return { from, to, length: Math.hypot(to.x - from.x, to.y - from.y), turn: 0 };
}

/** The arc from `from` turning by `turn` radians about `centre`, in pieces of at most half a turn; the last ends at `to`. */
export function arcPieces(from: Point, to: Point, centre: Point, turn: number): Piece[] {
  const count = Math.max(1, Math.ceil(Math.abs(turn) / Math.PI - 1e-9));
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const pieces: Piece[] = [];
  let start = from;
  for (let i = 1; i <= count; i++) {
    const end = i === count ? to : turned(from, centre, (turn * i) / count);
    pieces.push({ from: start, to: end, centre, turn: turn / count, length: (radius * Math.abs(turn)) / count });
    start = end;
  }
  return pieces;
}

function piecesOf(from: Point, segment: Segment): Piece[] {
  if (segment.kind === 'line') return [linePiece(from, segment.end)];
  if (segment.kind === 'cubic') throw new RangeError('a track is made of lines and arcs, not cubics');
  return arcPieces(from, segment.end, segment.centre, arcTurn(from, segment.end, segment.centre, segment.clockwise));
}

/** Signed turn of an arc, radians; equal ends mean a full turn. */
export function arcTurn(from: Point, to: Point, centre: Point, clockwise: boolean): number {
  const fx = from.x - centre.x;
  const fy = from.y - centre.y;
  const tx = to.x - centre.x;
  const ty = to.y - centre.y;
  const angle = Math.atan2(fx * ty - fy * tx, fx * tx + fy * ty);
  if (clockwise) return angle < 0 ? angle : angle - 2 * Math.PI;
  return angle > 0 ? angle : angle + 2 * Math.PI;
}

function turned(point: Point, centre: Point, radians: number): Point {
  const c = Math.cos(radians);
  const s = Math.sin(radians);
  const dx = point.x - centre.x;
  const dy = point.y - centre.y;
  return { x: centre.x + dx * c - dy * s, y: centre.y + dx * s + dy * c };
}

function pointOnPiece(piece: Piece, distance: number): Point {
  if (distance <= 0) return piece.from;
  if (distance >= piece.length) return piece.to;
  const t = distance / piece.length;
  if (piece.centre) return turned(piece.from, piece.centre, piece.turn * t);
  return { x: piece.from.x + (piece.to.x - piece.from.x) * t, y: piece.from.y + (piece.to.y - piece.from.y) * t };
}

/** The part of a piece between two distances from its start. */
function cutPiece(piece: Piece, begin: number, end: number): Piece {
  if (begin <= 0 && end >= piece.length) return piece;
  const length = Math.min(end, piece.length) - Math.max(begin, 0);
  const ends = { from: pointOnPiece(piece, begin), to: pointOnPiece(piece, end), length };
  if (!piece.centre) return { ...ends, turn: 0 };
  return { ...ends, turn: (piece.turn * length) / piece.length, centre: piece.centre };
}

/** Brings a distance along a closed track into [0, length); on an open one into [0, length]. */
export function wrapDistance(track: Track, distance: number): number {
  if (!track.closed) return Math.min(track.length, Math.max(0, distance));
  const wrapped = distance % track.length;
  return wrapped < 0 ? wrapped + track.length : wrapped;
}

/** Index of the piece that holds a distance within [0, length]. */
function pieceIndex(track: Track, distance: number): number {
  let low = 0;
  let high = track.pieces.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (track.starts[middle]! <= distance) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The place at a distance along a track that has length; distances wrap on closed tracks and are held to the ends of open ones. */
export function pointAt(track: Track, distance: number): Point {
  const at = wrapDistance(track, distance);
  const index = pieceIndex(track, at);
  return pointOnPiece(track.pieces[index]!, at - track.starts[index]!);
}

/** Unit direction of travel at a distance along a track that has length. */
export function directionAt(track: Track, distance: number): Point {
  const at = wrapDistance(track, distance);
  const piece = track.pieces[pieceIndex(track, at)]!;
  if (!piece.centre) return { x: (piece.to.x - piece.from.x) / piece.length, y: (piece.to.y - piece.from.y) / piece.length };
  const place = pointAt(track, at);
  const radius = Math.hypot(place.x - piece.centre.x, place.y - piece.centre.y);
  const side = Math.sign(piece.turn) / radius;
  return { x: (piece.centre.y - place.y) * side, y: (place.x - piece.centre.x) * side };
}

/** The track from one distance forward to another; on closed tracks `to` may lie any number of turns ahead. */
export function trackPart(track: Track, from: number, to: number): Track {
  const pieces: Piece[] = [];
  let left = track.closed ? to - from : Math.min(to, track.length) - Math.max(0, from);
  let at = wrapDistance(track, from);
  let index = track.pieces.length > 0 ? pieceIndex(track, at) : 0;
  while (left > SHORTEST && track.pieces.length > 0) {
    const piece = track.pieces[index]!;
    const begin = at - track.starts[index]!;
    const end = Math.min(piece.length, begin + left);
    pieces.push(cutPiece(piece, begin, end));
    left -= end - begin;
    index = (index + 1) % track.pieces.length;
    at = track.starts[index]!;
  }
  return trackFromPieces(pieces, false);
}

export function reverseTrack(track: Track): Track {
  const pieces = track.pieces.map((piece): Piece => ({ ...piece, from: piece.to, to: piece.from, turn: -piece.turn })).reverse();
  return trackFromPieces(pieces, track.closed);
}

/** The moves that follow a track while the height goes evenly from `zFrom` to `zTo`. */
export function movesAlong(track: Track, zFrom: number, zTo: number, feed: number): Move[] {
  return track.pieces.map((piece, i): Move => {
    const done = i === track.pieces.length - 1 ? 1 : (track.starts[i]! + piece.length) / track.length;
    const to = { x: piece.to.x, y: piece.to.y, z: zFrom + (zTo - zFrom) * done };
    if (!piece.centre) return { kind: 'line', to, feed };
    return { kind: 'arc', to, centre: piece.centre, clockwise: piece.turn < 0, feed };
  });
}
