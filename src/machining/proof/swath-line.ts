import { type Box } from '../../geometry/box.ts';
import { type Point } from '../../geometry/point.ts';

/** A straight swath, seen from above a capsule; z falls evenly from `high` at `start` to `low` at `end`. */
export interface LineSwath {
  readonly kind: 'line';
  readonly radius: number;
  readonly start: Point;
  readonly end: Point;
  readonly length: number;
  readonly alongX: number;
  readonly alongY: number;
  readonly high: number;
  readonly low: number;
  readonly box: Box;
}

/** A capsule is convex, so a row meets it in one interval: the hull of those of its two discs and its straight part. */
export function lineSpans(swath: LineSwath, y: number, out: Float64Array): number {
  const { start, end, radius } = swath;
  let left = Infinity;
  let right = -Infinity;
  const half = radius * radius - (y - start.y) ** 2;
  if (half >= 0) {
    left = start.x - Math.sqrt(half);
    right = start.x + Math.sqrt(half);
  }
  const halfEnd = radius * radius - (y - end.y) ** 2;
  if (halfEnd >= 0) {
    left = Math.min(left, end.x - Math.sqrt(halfEnd));
    right = Math.max(right, end.x + Math.sqrt(halfEnd));
  }
  // The straight part touches the row where its two long sides do; elsewhere the discs reach further.
  const rise = end.y - start.y;
  for (let side = -radius; rise !== 0 && side <= radius; side += 2 * radius) {
    const share = (y - start.y - side * swath.alongX) / rise;
    if (share < 0 || share > 1) continue;
    const x = start.x - side * swath.alongY + share * (end.x - start.x);
    left = Math.min(left, x);
    right = Math.max(right, x);
  }
  out[0] = left;
  out[1] = right;
  return left <= right ? 2 : 0;
}

/**
 * The disc covers a point for as long as its centre is within `radius` of it, an interval of the move; z falls along
 * the move, so it is lowest where the disc leaves the point, or where the move ends if that comes first.
 */
export function lowestOverLine(swath: LineSwath, x: number, y: number): number {
  if (swath.length === 0) return swath.low;
  const [px, py] = [x - swath.start.x, y - swath.start.y];
  const across = py * swath.alongX - px * swath.alongY;
  const leaves = px * swath.alongX + py * swath.alongY + Math.sqrt(Math.max(0, swath.radius ** 2 - across ** 2));
  const share = Math.min(1, Math.max(0, leaves / swath.length));
  return swath.high + share * (swath.low - swath.high);
}
