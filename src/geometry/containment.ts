import { type Point } from './point.ts';
import { type Loop } from './region.ts';

/** Where a point lies with respect to an area: strictly inside, strictly outside, or on its boundary. */
export type Location = 'inside' | 'outside' | 'on';

/** Squared distance from a point to the straight line between two others, ends included. */
export function squaredDistanceToEdge(point: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / squared;
  const t = along < 0 ? 0 : along > 1 ? 1 : along;
  const ex = a.x + t * dx - point.x;
  const ey = a.y + t * dy - point.y;
  return ex * ex + ey * ey;
}

/**
 * How many times an edge winds about a point, counted along the ray in direction +x: 1 when it passes upwards, -1 downwards.
 * An edge owns its lower end and not its upper one, so chains of edges are counted once.
 */
function windingOfEdge(point: Point, a: Point, b: Point): -1 | 0 | 1 {
  const up = a.y <= point.y && b.y > point.y;
  if (!up && !(b.y <= point.y && a.y > point.y)) return 0;
  const side = (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
  return up ? (side > 0 ? 1 : 0) : side < 0 ? -1 : 0;
}

/** Winding number of loops about a point, and whether the point is within `reach` mm of their edges. */
export function windingAt(loops: readonly Loop[], point: Point, reach: number): { winding: number; on: boolean } {
  let winding = 0;
  for (const loop of loops) {
    let last = loop[loop.length - 1]!;
    for (const next of loop) {
      const near = Math.min(last.y, next.y) - reach <= point.y && Math.max(last.y, next.y) + reach >= point.y
        && Math.max(last.x, next.x) + reach >= point.x;
      if (near) {
        if (squaredDistanceToEdge(point, last, next) <= reach * reach) return { winding, on: true };
        winding += windingOfEdge(point, last, next);
      }
      last = next;
    }
  }
  return { winding, on: false };
}

/**
 * Whether one loop lies within another, for two loops that do not cross. They may touch, so the first
 * point of the inner one that is clear of the outer one decides: vertices, then middles of edges.
 */
export function isLoopInside(inner: Loop, outer: Loop): boolean {
  for (const point of inner) {
    const { winding, on } = windingAt([outer], point, 0);
    if (!on) return winding !== 0;
  }
  for (let i = 0; i < inner.length; i += 1) {
    const a = inner[i]!;
    const b = inner[(i + 1) % inner.length]!;
    const { winding, on } = windingAt([outer], { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, 0);
    if (!on) return winding !== 0;
  }
  return true;
}
