import { type Segment } from './path.ts';
import { add, cross, distance, dot, leftNormal, normalize, type Point, scale, subtract, type Vector } from './point.ts';

/** A straight piece of a fitted path. */
export interface FitLine {
  readonly kind: 'line';
  readonly start: Point;
  readonly end: Point;
  /** Unit vector from start to end. */
  readonly tangent: Vector;
}

/** An arc of a fitted path, in the form that makes distances to it cheap. */
export interface FitArc {
  readonly kind: 'arc';
  readonly start: Point;
  readonly end: Point;
  readonly centre: Point;
  readonly radius: number;
  readonly clockwise: boolean;
  /** Unit vector from the centre to the arc's middle. */
  readonly middle: Vector;
  /** Half the arc's turn in radians, positive. */
  readonly half: number;
  readonly cosHalf: number;
}

export type FitPiece = FitLine | FitArc;

/** A flatter arc than this (turn from chord to end tangent, radians) is written as a line: 0.01 degree no machine notices. */
const STRAIGHT_TURN = 1.7e-4;

export const lineBetween = (start: Point, end: Point): FitLine => ({ kind: 'line', start, end, tangent: normalize(subtract(end, start)) });

/** The arc that leaves `start` along the unit vector `tangent` and ends at `end`; a line where it would be straight. */
export function arcToward(start: Point, tangent: Vector, end: Point): FitPiece {
  const chord = subtract(end, start);
  const size = Math.hypot(chord.x, chord.y);
  const unit = normalize(chord);
  const half = Math.atan2(cross(tangent, unit), dot(tangent, unit));
  if (size === 0 || Math.abs(half) <= STRAIGHT_TURN) return lineBetween(start, end);
  const radius = size / (2 * Math.sin(half));
  const centre = add(start, scale(leftNormal(tangent), radius));
  const middle = scale(leftNormal(unit), -Math.sign(half));
  return { kind: 'arc', start, end, centre, radius: Math.abs(radius), clockwise: half < 0, middle, half: Math.abs(half), cosHalf: Math.cos(half) };
}

/** The arc of at most half a turn about a centre. */
export function arcAbout(centre: Point, start: Point, end: Point, clockwise: boolean): FitArc {
  const radius = distance(start, centre);
  const chord = subtract(end, start);
  const middle = scale(leftNormal(normalize(chord)), clockwise ? 1 : -1);
  const cosHalf = Math.min(1, dot(subtract(start, centre), middle) / radius);
  return { kind: 'arc', start, end, centre, radius, clockwise, middle, half: Math.acos(cosHalf), cosHalf };
}

export function pieceEndTangent(piece: FitPiece): Vector {
  return piece.kind === 'line' ? piece.tangent : radiusTurned(piece, piece.end);
}

const radiusTurned = (arc: FitArc, p: Point): Vector =>
  scale(leftNormal(normalize(subtract(p, arc.centre))), arc.clockwise ? -1 : 1);

/** The piece as a path's segment. */
export const pieceSegment = (piece: FitPiece): Segment =>
  piece.kind === 'line' ? { kind: 'line', end: piece.end } : { kind: 'arc', end: piece.end, centre: piece.centre, clockwise: piece.clockwise };

/** Length of the piece in mm. */
export const pieceLength = (piece: FitPiece): number => (piece.kind === 'line' ? distance(piece.start, piece.end) : 2 * piece.half * piece.radius);
