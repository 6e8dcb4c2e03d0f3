import { type Point, type Region, makeRegionIndex } from '../../geometry/index.ts';
import type { Stock } from '../job/stock.ts';
import { signedDistance } from './signed-distance.ts';

export interface DistanceAt {
  /** Millimetres; negative when the place lies outside. */
  readonly distance: number;
  readonly at: Point;
}

/** Least distance from a region's boundary to the edge of the board around it, negative where it sticks out. */
export function leastEdgeDistance(region: Region, board: Region): DistanceAt | undefined {
  const edge = makeRegionIndex(board);
  const inner = makeRegionIndex(region);
  return nearer(
    least(region.loops.flat(), (point) => signedDistance(edge, point)),
    least(board.loops.flat(), (point) => -signedDistance(inner, point)),
  );
}

/** Least distance from the board to the edge of its sheet, negative where it sticks out. */
export function sheetMargin(board: Region, { width, height }: Pick<Stock, 'width' | 'height'>): DistanceAt | undefined {
  return least(board.loops.flat(), ({ x, y }) => Math.min(x, y, width - x, height - y));
}

function nearer(a: DistanceAt | undefined, b: DistanceAt | undefined): DistanceAt | undefined {
  return a && b ? (b.distance < a.distance ? b : a) : a ?? b;
}

function least(points: readonly Point[], distanceAt: (point: Point) => number): DistanceAt | undefined {
  let best: DistanceAt | undefined;
  for (const at of points) {
    const distance = distanceAt(at);
    if (!best || distance < best.distance) best = { distance, at };
  }
  return best;
}
