import { type Point, type Point3 } from '../../geometry/point.ts';
import { type Region } from '../../geometry/region.ts';
import { type Move } from '../job/pass.ts';

/**
 * The proof's samples lie on rows that slope against the sheet. Were they level, a wrong cut narrower than a cell along a
 * level edge could hide between two rows for its whole length; so every edge crosses rows, and its samples lie at evenly
 * spread distances from it. The slope 1 / (2 + 0.618...) spreads them best along level and upright edges, because no
 * fraction comes close to it (its continued fraction ends in ones).
 */
const SLOPE = 2 / (3 + Math.sqrt(5));
const COS = 1 / Math.hypot(1, SLOPE);
const SIN = SLOPE * COS;

/** A place of the drawing as seen from the sloping rows. */
export const toFrame = ({ x, y }: Point): Point => ({ x: COS * x + SIN * y, y: COS * y - SIN * x });

export const fromFrame = ({ x, y }: Point): Point => ({ x: COS * x - SIN * y, y: COS * y + SIN * x });

export const regionToFrame = (region: Region): Region => ({ loops: region.loops.map((loop) => loop.map(toFrame)) });

/** A place of a program, moved by the set-up's shift into the drawing and then into the frame. */
export const placeToFrame = (p: Point3, shift: readonly [number, number]): Point3 =>
  ({ x: COS * (p.x + shift[0]) + SIN * (p.y + shift[1]), y: COS * (p.y + shift[1]) - SIN * (p.x + shift[0]), z: p.z });

export function moveToFrame(move: Move, shift: readonly [number, number]): Move {
  const to = placeToFrame(move.to, shift);
  if (move.kind !== 'arc') return { ...move, to };
  return { ...move, to, centre: toFrame({ x: move.centre.x + shift[0], y: move.centre.y + shift[1] }) };
}
