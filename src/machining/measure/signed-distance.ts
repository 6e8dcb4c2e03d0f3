import { type Point, type RegionIndex } from '../../geometry/index.ts';

/** Distance from a point to a region's boundary, mm, positive inside. */
export function signedDistance(index: RegionIndex, point: Point): number {
  return index.distanceToBoundary(point) * (index.contains(point) ? 1 : -1);
}
