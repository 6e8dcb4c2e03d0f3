import { type Point, type Point3 } from '../../geometry/point.ts';
import { type Move, type Pass } from './pass.ts';
import type { Displacement } from './registration.ts';
import type { SetUp } from './setup.ts';

export type ArcMove = Extract<Move, { kind: 'arc' }>;

/** Where the cutter is taken to stand before a program: at the datum, on the sheet's top face, where the operator set it. */
export const PROGRAM_START: Point3 = { x: 0, y: 0, z: 0 };

/** An arc that ends nearer to its start than this, in mm, is one full turn. */
const SAME_PLACE = 1e-9;

/** Rounding noise in a turn, degrees, that must not cost another chord. */
const SWEEP_NOISE = 1e-6;

/** The place a move begins at, and the move. */
export interface PlacedMove {
  readonly from: Point3;
  readonly move: Move;
}

/** Where move number `index` begins: the end of the one before it, or `start`. */
export const startOf = (start: Point3, moves: readonly Move[], index: number): Point3 => moves[index - 1]?.to ?? start;

/** Every move with the place it begins at. */
export const placedMoves = (start: Point3, moves: readonly Move[]): PlacedMove[] =>
  moves.map((move, index) => ({ from: startOf(start, moves, index), move }));

/** Radius of an arc at its start, mm. */
export const arcRadius = (from: Point, arc: ArcMove): number =>
  Math.hypot(from.x - arc.centre.x, from.y - arc.centre.y);

/** Turn of an arc about its centre in the direction it takes: over 0 and up to 360 degrees, 360 when it ends where it starts. */
export function arcSweep(from: Point, arc: ArcMove): number {
  return (sweepRadians(from, arc) * 180) / Math.PI;
}

function sweepRadians(from: Point, { to, centre, clockwise }: ArcMove): number {
  if (Math.hypot(to.x - from.x, to.y - from.y) <= SAME_PLACE) return 2 * Math.PI;
  const ax = from.x - centre.x, ay = from.y - centre.y, bx = to.x - centre.x, by = to.y - centre.y;
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * (clockwise ? -1 : 1);
  return turn > 0 ? turn : turn + 2 * Math.PI;
}

/**
 * The place a fraction (0 to 1) of an arc's turn after its start; height rises evenly with the turn, and so does the
 * radius when start and end are not equally far from the centre.
 */
export function pointOnArc(from: Point3, arc: ArcMove, fraction: number): Point3 {
  if (fraction <= 0) return from;
  if (fraction >= 1) return arc.to;
  const { centre, to } = arc;
  const turn = sweepRadians(from, arc) * (arc.clockwise ? -1 : 1);
  const radius = arcRadius(from, arc);
  const angle = Math.atan2(from.y - centre.y, from.x - centre.x) + turn * fraction;
  const here = radius + (arcRadius(to, arc) - radius) * fraction;
  return {
    x: centre.x + here * Math.cos(angle),
    y: centre.y + here * Math.sin(angle),
    z: from.z + (to.z - from.z) * fraction,
  };
}

/** Length of the cutter's way in mm; that of a helical arc is sqrt((r phi)^2 + dz^2). */
export function moveLength(from: Point3, move: Move): number {
  const rise = move.to.z - from.z;
  if (move.kind === 'arc') return Math.hypot(arcRadius(from, move) * sweepRadians(from, move), rise);
  return Math.hypot(move.to.x - from.x, move.to.y - from.y, rise);
}

/** Chords of equal turn that stay within `tolerance` of an arc: e = r (1 - cos(turn / 2)). At least four to a circle. */
export function chordCount(radius: number, sweep: number, tolerance: number): number {
  const turn = Math.min(90, (2 * Math.acos(Math.max(-1, 1 - tolerance / radius)) * 180) / Math.PI);
  return radius > 0 ? Math.max(1, Math.ceil(sweep / turn - SWEEP_NOISE)) : 1;
}

/** A box in space, mm. */
export interface Reach {
  readonly min: Point3;
  readonly max: Point3;
}

/** The box that holds `start` and everything the cutter's tip passes, the bulges of arcs included. */
export function movesReach(start: Point3, moves: readonly Move[]): Reach {
  const min = { ...start }, max = { ...start };
  for (const { from, move } of placedMoves(start, moves)) {
    const places = move.kind === 'arc' ? [move.to, ...quadrantPoints(from, move)] : [move.to];
    for (const { x, y, z } of places) {
      min.x = Math.min(min.x, x); min.y = Math.min(min.y, y); min.z = Math.min(min.z, z);
      max.x = Math.max(max.x, x); max.y = Math.max(max.y, y); max.z = Math.max(max.z, z);
    }
  }
  return { min, max };
}

/** The points of an arc furthest in x and y, apart from its ends. */
function quadrantPoints(from: Point3, arc: ArcMove): Point3[] {
  const { centre, clockwise } = arc;
  const radius = arcRadius(from, arc);
  const sweep = sweepRadians(from, arc);
  const first = Math.atan2(from.y - centre.y, from.x - centre.x);
  const found: Point3[] = [];
  for (const [ux, uy] of [[1, 0], [0, 1], [-1, 0], [0, -1]] as const) {
    const turn = (Math.atan2(uy, ux) - first) * (clockwise ? -1 : 1);
    const after = turn - Math.floor(turn / (2 * Math.PI)) * 2 * Math.PI;
    if (after < sweep) found.push({ x: centre.x + radius * ux, y: centre.y + radius * uy, z: from.z + (arc.to.z - from.z) * (after / sweep) });
  }
  return found;
}

const shifted = <P extends Point>(point: P, dx: number, dy: number): P => ({ ...point, x: point.x + dx, y: point.y + dy });

/** The same moves, displaced in the plane by mm. */
export const shiftMoves = (moves: readonly Move[], dx: number, dy: number): Move[] => moves.map((move) =>
  move.kind === 'arc'
    ? { ...move, to: shifted(move.to, dx, dy), centre: shifted(move.centre, dx, dy) }
    : { ...move, to: shifted(move.to, dx, dy) });

/** The same moves, turned about the origin of the plane, counter-clockwise. */
function turnMoves(moves: readonly Move[], degrees: number): Move[] {
  const turn = turning(degrees);
  return moves.map((move) => (move.kind === 'arc' ? { ...move, to: turn(move.to), centre: turn(move.centre) } : { ...move, to: turn(move.to) }));
}

function turning(degrees: number): <P extends Point>(point: P) => P {
  const angle = (degrees * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return (point) => ({ ...point, x: c * point.x - s * point.y, y: s * point.x + c * point.y });
}

/** The same moves, displaced as a sheet was found to lie. */
export const displaceMoves = (moves: readonly Move[], { degrees, shift: [dx, dy] }: Displacement): Move[] => shiftMoves(turnMoves(moves, degrees), dx, dy);

/** Undoes `displaceMoves`. */
export const replaceMoves = (moves: readonly Move[], { degrees, shift: [dx, dy] }: Displacement): Move[] => turnMoves(shiftMoves(moves, -dx, -dy), -degrees);

/** Moves of a set-up's programs, in drawing coordinates: where they cut the sheet. */
export const drawnMoves = ({ shift: [dx, dy], correction }: Pick<SetUp, 'shift' | 'correction'>, moves: readonly Move[]): Move[] =>
  shiftMoves(correction ? replaceMoves(moves, correction) : moves, dx, dy);

/** The same pass, displaced as a sheet was found to lie; everything in program coordinates. */
export const displacePass = (pass: Pass, displacement: Displacement): Pass => {
  const { x, y } = turning(displacement.degrees)(pass.start);
  return { ...pass, start: { ...pass.start, x: x + displacement.shift[0], y: y + displacement.shift[1] }, moves: displaceMoves(pass.moves, displacement) };
};

/** The same pass, displaced in the plane by mm. */
export const shiftPass = (pass: Pass, dx: number, dy: number): Pass =>
  ({ ...pass, start: shifted(pass.start, dx, dy), moves: shiftMoves(pass.moves, dx, dy) });
