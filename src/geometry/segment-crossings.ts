import { boxOfPoints } from './box.ts';
import { columnOf, type EdgeGrid, rowOf, segmentEdges, sortEdges } from './edge-grid.ts';
import { add, cross, type Point, scale, subtract } from './point.ts';
import type { IndexedSegment } from './segment-index.ts';

/** A point that two straight segments share, told by their places in the list. */
export interface SegmentCrossing {
  readonly a: number;
  readonly b: number;
  readonly at: Point;
  /** Share of each segment's length at which it lies. */
  readonly alongA: number;
  readonly alongB: number;
}

/** How far beyond a segment's end, as a share of its length, rounding may put a point that lies on its end. */
const HAIR = 1e-9;

/**
 * All points in which two segments that `accepts` lets through cross or touch, in time proportional to the segments and the cells they share.
 * Segments that run along one another have none.
 */
export function segmentCrossings(segments: readonly IndexedSegment[], accepts: (a: number, b: number) => boolean): SegmentCrossing[] {
  const box = boxOfPoints(segments.flatMap(({ from, to }) => [from, to]));
  if (!box) return [];
  const grid = sortEdges(segmentEdges(segments), box);
  const found: SegmentCrossing[] = [];
  for (let cell = 0; cell + 1 < grid.starts.length; cell++) crossingsInCell(grid, cell, segments, accepts, found);
  return found.sort((one, other) => one.a - other.a || one.b - other.b);
}

function crossingsInCell(grid: EdgeGrid, cell: number, segments: readonly IndexedSegment[], accepts: (a: number, b: number) => boolean, found: SegmentCrossing[]): void {
  const [from, to] = [grid.starts[cell]!, grid.starts[cell + 1]!];
  for (let i = from; i < to; i++) {
    for (let k = i + 1; k < to; k++) {
      const [a, b] = [Math.min(grid.items[i]!, grid.items[k]!), Math.max(grid.items[i]!, grid.items[k]!)];
      const crossing = crossingOf(segments, a, b);
      // Two segments may share several cells; the point lies in one of them.
      if (crossing && rowOf(grid, crossing.at.y) * grid.columns + columnOf(grid, crossing.at.x) === cell && accepts(a, b)) found.push(crossing);
    }
  }
}

function crossingOf(segments: readonly IndexedSegment[], a: number, b: number): SegmentCrossing | undefined {
  const [first, second] = [segments[a]!, segments[b]!];
  const [u, v, w] = [subtract(first.to, first.from), subtract(second.to, second.from), subtract(second.from, first.from)];
  const turn = cross(u, v);
  if (Math.abs(turn) <= 1e-12 * (Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y))) return undefined;
  const [alongA, alongB] = [cross(w, v) / turn, cross(w, u) / turn];
  const within = (t: number) => t >= -HAIR && t <= 1 + HAIR;
  return within(alongA) && within(alongB) ? { a, b, at: add(first.from, scale(u, alongA)), alongA, alongB } : undefined;
}
