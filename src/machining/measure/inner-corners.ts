import { type Point, type Region, distance, makeRegionIndex, offsetRegion } from '../../geometry/index.ts';

/** An inner corner of a board that a round cutter leaves rounded. */
export interface RoundedCorner {
  readonly at: Point;
  /** From the corner as drawn to the nearest place that the cutter reaches, mm. */
  readonly left: number;
}

/**
 * Inner corners, and bends tighter than the cutter's radius, that leave more than `least` mm; worst first, one for each place. What the cutter
 * leaves is the closing of the board by the cutter's disc (Serra, Image Analysis and Mathematical Morphology, 1982).
 */
export function roundedCorners(board: Region, cutterDiameter: number, least: number): RoundedCorner[] {
  const radius = cutterDiameter / 2;
  const options = { join: 'round', miterLimit: 2, tolerance: least / 8 } as const;
  const left = makeRegionIndex(offsetRegion(offsetRegion(board, radius, options), -radius, options));
  const corners = board.loops.flat().map((at) => ({ at, left: left.contains(at) ? left.distanceToBoundary(at) : 0 }));
  return corners.filter((corner) => corner.left > least).sort((a, b) => b.left - a.left)
    .reduce<RoundedCorner[]>((kept, corner) => (kept.some(({ at }) => distance(at, corner.at) < cutterDiameter) ? kept : [...kept, corner]), []);
}
