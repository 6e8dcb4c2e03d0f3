import { type Point, type Region, distance, lerp, makeRegionIndex } from '../../geometry/index.ts';
import { type Hole, holeEnds } from '../job/hole.ts';
import { signedDistance } from './signed-distance.ts';

/** Hole centres nearer to the edge than this many diameters are refused, or worth a caution (common practice, no source). */
export const EDGE_DIAMETERS = { refuse: 1.5, caution: 2 } as const;

/** How well one hole keeps its distances, mm; infinite where there is nothing to keep them from. */
export interface HoleDistances {
  readonly hole: Hole;
  /** From the hole's centre (the nearest place between the middles of a slot's ends) to the edge of the board; negative outside. */
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
    const along = placesAlong(hole);
    const inGroove = along.map((place) => signedDistance(walls, place));
    return {
      hole,
      edge: Math.min(...along.map((place) => signedDistance(edge, place))),
      groove: -Math.max(...inGroove) - hole.diameter / 2,
      insideGroove: Math.min(...inGroove) - hole.diameter / 2,
      neighbour: Math.min(...holes.map((other, j) => (i === j ? Infinity : between(hole, other)))),
    };
  });
}

/** Farthest apart, mm, places looked at along a slot's middle may be. */
const SPACING = 0.5;

/** The centre of a round hole; places from end to end along the middle of a slot. */
function placesAlong(hole: Hole): Point[] {
  const [a, b] = holeEnds(hole);
  const count = Math.ceil((hole.slot?.length ?? 0) / SPACING);
  return Array.from({ length: count + 1 }, (_, i) => lerp(a, b, count > 0 ? i / count : 0));
}

function between(a: Hole, b: Hole): number {
  const others = placesAlong(b);
  const apart = placesAlong(a).flatMap((place) => others.map((other) => distance(place, other)));
  return Math.min(...apart) - (a.diameter + b.diameter) / 2;
}
