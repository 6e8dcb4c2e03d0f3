import { type Box, boxHolds } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { type Piece, pointAt, type Track, trackPart } from './track.ts';

/** Parts shorter than this, mm, are left out: a track that only touches a side is not cut there. */
const SHORTEST = 1e-6;
/** How far outside a place may lie and still count as on the side, mm. */
const ON_SIDE = 1e-7;

export const isWithinBox = (box: Box, point: Point): boolean => boxHolds(box, point, ON_SIDE);

/** A stretch of a track, in distances from its start; past the end of a closed one it goes on from the start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretches of a track that lie in a box, in order; the whole of a track that never leaves it. */
export function stretchesWithin(track: Track, box: Box): Stretch[] {
  const cuts = [...new Set([0, ...crossings(track, box), track.length])].sort((a, b) => a - b);
  const inside: { from: number; to: number }[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i]!, cuts[i + 1]!];
    if (to - from < SHORTEST || !isWithinBox(box, pointAt(track, (from + to) / 2))) continue;
    const last = inside.at(-1);
    if (last && from - last.to < SHORTEST) last.to = to;
    else inside.push({ from, to });
  }
  return track.closed ? joinedOverStart(inside, track.length) : inside;
}

/** The parts of a track that lie in a box, each open unless it is the whole of a closed track. */
export function trackWithin(track: Track, box: Box): Track[] {
  return stretchesWithin(track, box).map(({ from, to }) => (from === 0 && to === track.length ? track : trackPart(track, from, to)));
}

/** On a closed track the last stretch goes on into the first where both touch the start. */
function joinedOverStart(stretches: readonly Stretch[], length: number): Stretch[] {
  const [first, last] = [stretches[0], stretches.at(-1)];
  if (!first || !last || first === last || first.from > SHORTEST || length - last.to > SHORTEST) return [...stretches];
  return [...stretches.slice(1, -1), { from: last.from, to: length + first.to }];
}

function crossings(track: Track, box: Box): number[] {
  return track.pieces.flatMap((piece, i) => shares(piece, box).map((share) => track.starts[i]! + share * piece.length));
}

/** Where a piece crosses the lines of the box's sides, as shares of its length strictly between its ends, and its ends where they are on one. */
function shares(piece: Piece, { minX, minY, maxX, maxY }: Box): number[] {
  const found = [...[minX, maxX].flatMap((at) => lineShares(piece, 'x', at)), ...[minY, maxY].flatMap((at) => lineShares(piece, 'y', at))];
  return found.filter((share) => share >= 0 && share <= 1);
}

function lineShares(piece: Piece, axis: 'x' | 'y', at: number): number[] {
  const { from, to, centre, turn } = piece;
  if (!centre) return to[axis] === from[axis] ? [] : [(at - from[axis]) / (to[axis] - from[axis])];
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const aside = (at - centre[axis]) / radius;
  if (Math.abs(aside) > 1) return [];
  const first = Math.atan2(from.y - centre.y, from.x - centre.x);
  const half = Math.acos(aside), middle = axis === 'x' ? 0 : Math.PI / 2;
  return [middle + half, middle - half].map((angle) => turnShare(angle - first, turn));
}

/** An angle ahead of an arc's start as a share of its turn; more than 1 when the arc does not get there. */
function turnShare(angle: number, turn: number): number {
  const full = 2 * Math.PI, ahead = turn > 0 ? angle : -angle;
  return (((ahead % full) + full) % full) / Math.abs(turn);
}
