import { type Region, distance, makeRegionIndex } from '../../geometry/index.ts';
import type { Hole } from '../job/hole.ts';
import { signedDistance } from './signed-distance.ts';

/** How well one hole keeps its distances, mm; infinite where there is nothing to keep them from. */
export interface HoleDistances {
  readonly hole: Hole;
  /** From the hole's centre to the edge of the board; negative outside. */
  readonly edge: number;
  /** Material between the hole and the groove; negative when they overlap. */
  readonly groove: number;
  /** How far the hole stays inside the groove's walls; negative when it cuts them or lies elsewhere. */
  readonly insideGroove: number;
  /** Material between the hole and its nearest neighbour; negative when they overlap. */
  readonly neighbour: number;
}

/** Measures every hole against the board's edge, the groove and the other holes. */
export function holeDistances(holes: readonly Hole[], board: Region, groove: Region): HoleDistances[] {
  const edge = makeRegionIndex(board);
  const walls = makeRegionIndex(groove);
  return holes.map((hole, i) => {
    const inGroove = signedDistance(walls, hole.centre);
    return {
      hole,
      edge: signedDistance(edge, hole.centre),
      groove: -inGroove - hole.diameter / 2,
      insideGroove: inGroove - hole.diameter / 2,
      neighbour: Math.min(...holes.map((other, j) => (i === j ? Infinity : between(hole, other)))),
    };
  });
}

function between(a: Hole, b: Hole): number {
  return distance(a.centre, b.centre) - (a.diameter + b.diameter) / 2;
}
