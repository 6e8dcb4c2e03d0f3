import { boxOfPoints } from './box.ts';
import { columnOf, rowOf, segmentEdges, sortEdges } from './edge-grid.ts';
import { type Accepts, type Best, searchRing } from './grid-nearest.ts';
import type { Point } from './point.ts';

/** A straight piece of something, told apart by its place in the list it came in. */
export interface IndexedSegment {
  readonly from: Point;
  readonly to: Point;
}

export interface Nearest {
  /** Place of the segment in the list the index was made from. */
  readonly segment: number;
  /** The nearest point on it. */
  readonly point: Point;
  readonly distance: number;
}

/** Answers "which segment is nearest to this point" without looking at all of them. */
export interface SegmentIndex {
  /** The nearest segment among those `accepts` lets through, no farther off than `within` mm. */
  nearest(point: Point, within: number, accepts?: Accepts): Nearest | undefined;
}

/** Sorts segments into cells, in time proportional to the segments and the cells they cross. */
export function makeSegmentIndex(segments: readonly IndexedSegment[]): SegmentIndex {
  const box = boxOfPoints(segments.flatMap(({ from, to }) => [from, to]));
  if (!box) return { nearest: () => undefined };
  const grid = sortEdges(segmentEdges(segments), box);
  const nearest: SegmentIndex['nearest'] = (point, within, accepts) => {
    const start = { column: columnOf(grid, point.x), row: rowOf(grid, point.y) };
    // A hair of slack, so that what lies exactly at the distance counts.
    const best: Best = { squared: within * within * (1 + 1e-12), point, edge: -1 };
    const rings = Math.max(grid.columns, grid.rows);
    // Ring r is at least r - 1 cells away from the point, also for a point outside the grid.
    for (let ring = 0; ring <= rings && (ring - 1) * grid.cell <= Math.sqrt(best.squared); ring += 1)
      searchRing(grid, start, ring, point, best, accepts);
    return best.edge < 0 ? undefined : { segment: best.edge, point: best.point, distance: Math.sqrt(best.squared) };
  };
  return { nearest };
}
