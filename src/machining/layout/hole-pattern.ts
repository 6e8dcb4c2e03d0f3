import {
  type Path, type Point, type Region, distance, flattenPath, isEmptyRegion, offsetRegion, pathEnd, pointInRegion, regionFromLoops, subtractRegion, unionRegions,
} from '../../geometry/index.ts';
import { type Hole, holePath } from '../job/hole.ts';

/** Holes' centres that were found, and those places that had to be given up or are not clear. */
export interface Pattern {
  readonly centres: readonly Point[];
  readonly unclear: readonly Point[];
}

interface ClearOptions {
  /** Least distance from a hole's centre to the board's edge, mm. */
  readonly edgeDistance: number;
  /** Least distance from a hole's centre to the groove and to other holes, mm. */
  readonly apart: number;
  readonly tolerance: number;
}

/** Where a hole's centre may lie: inside the board, away from its edge, from the groove and from holes that are there. */
export function clearArea(board: Region, groove: Region | undefined, others: readonly Hole[], { edgeDistance, apart, tolerance }: ClearOptions): Region {
  const options = { join: 'round', miterLimit: 2, tolerance } as const;
  const taken = unionRegions([...(groove ? [groove] : []), holesRegion(others, tolerance)]);
  return subtractRegion(offsetRegion(board, -edgeDistance, options), offsetRegion(taken, apart, options));
}

/** All that holes take away of a board, as a region within `tolerance` mm. */
export function holesRegion(holes: readonly Pick<Hole, 'centre' | 'diameter' | 'slot'>[], tolerance: number): Region {
  return regionFromLoops(holes.map((hole) => flattenPath(holePath(hole), tolerance)), 'nonzero');
}

/**
 * One place at each end of every open stroke and at the start of every closed one. Ends nearer to each other than `apart`
 * share the first one's place: one hole serves both.
 */
export function strokeEnds(centreLines: readonly Path[], apart: number): Point[] {
  const ends = centreLines.flatMap((path) => (path.closed ? [path.start] : [path.start, pathEnd(path)]));
  return spaced(ends, apart);
}

/** The four places of the clear area farthest towards its corners; fewer when they fall together. */
export function cornerPlaces(clear: Region, apart: number): Pattern {
  if (isEmptyRegion(clear)) return { centres: [], unclear: [] };
  const vertices = clear.loops.flat();
  const corners = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const;
  const farthest = corners.map(([right, up]) => vertices.reduce((a, b) => (towards(b, right, up) > towards(a, right, up) ? b : a)));
  return { centres: spaced(farthest, apart), unclear: [] };
}

/** Places put by hand: all are kept, and those that are not clear are named. */
export function placesByHand(points: readonly Point[], clear: Region): Pattern {
  return { centres: points, unclear: points.filter((point) => !isClear(clear, point)) };
}

function isClear(clear: Region, point: Point): boolean {
  return pointInRegion(clear, point) !== 'outside';
}

function towards({ x, y }: Point, right: number, up: number): number {
  return x * right + y * up;
}

/** Drops every place nearer than `apart` to one before it. */
function spaced(points: readonly Point[], apart: number): Point[] {
  return points.filter((point, i) => !points.slice(0, i).some((earlier) => distance(earlier, point) < apart));
}
