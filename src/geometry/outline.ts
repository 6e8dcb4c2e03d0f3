import { isLoopInside } from './containment.ts';
import { turn } from './kernel.ts';
import { type Point } from './point.ts';
import { type Loop, loopArea, loopsBounds, type Region } from './region.ts';

/** A region with its holes filled: the outer loops that lie in no other one. */
export function outerContour(region: Region): Region {
  const outers = region.loops.map((loop) => ({ loop, area: loopArea(loop) })).filter(({ area }) => area > 0)
    .map(({ loop, area }) => ({ loop, area, bounds: loopsBounds([loop])! }));
  const isCovered = (inner: (typeof outers)[number]): boolean => outers.some(({ loop, area, bounds }) => area > inner.area
    && bounds.minX <= inner.bounds.minX && bounds.maxX >= inner.bounds.maxX
    && bounds.minY <= inner.bounds.minY && bounds.maxY >= inner.bounds.maxY && isLoopInside(inner.loop, loop));
  return { loops: outers.filter((outer) => !isCovered(outer)).map(({ loop }) => loop) };
}

function halfHull(points: readonly Point[]): Point[] {
  const hull: Point[] = [];
  for (const point of points) {
    while (hull.length > 1 && turn(hull[hull.length - 2]!, hull[hull.length - 1]!, point) <= 0) hull.pop();
    hull.push(point);
  }
  return hull.slice(0, -1);
}

/**
 * The convex hull of points, counter-clockwise, without points on its edges (A. M. Andrew, Another efficient algorithm for convex
 * hulls in two dimensions, Information Processing Letters 9, 1979). Points on one line give that line's two ends, one place gives itself.
 */
export function convexHull(points: readonly Point[]): Loop {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y)
    .filter(({ x, y }, i, all) => i === 0 || x !== all[i - 1]!.x || y !== all[i - 1]!.y);
  if (sorted.length < 2) return sorted;
  return [...halfHull(sorted), ...halfHull([...sorted].reverse())];
}
