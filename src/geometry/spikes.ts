import { type Point } from './point.ts';
import { distanceToChord } from './simplify.ts';

/** A loop turns back on itself where the angle between the two edges at a vertex has a cosine above this: under 120 degrees, so that the blunt end of a slit counts too. */
const TURNS_BACK = -0.5;

/**
 * The loop without its spikes and slits thinner than `tolerance` mm: wherever it turns back so close along itself that the
 * nearer neighbour of the turning point lies within the tolerance of the other edge, the turning point is left out, again and again,
 * as a zip closes. Repeated points go with them. What is left keeps its order and its vertices; a loop that is thin all over comes back empty.
 * Linear in the points, whose first is as good as any other.
 */
export function withoutSpikes(loop: readonly Point[], tolerance: number): Point[] {
  const kept: Point[] = [];
  for (const point of loop) {
    while (kept.length > 1 && turnsBack(kept.at(-2)!, kept.at(-1)!, point, tolerance)) kept.pop();
    if (kept.length === 0 || !isSame(kept.at(-1)!, point)) kept.push(point);
  }
  return withoutSeamSpikes(kept, tolerance);
}

/** The same for a list whose only spikes left are those about its start. */
function withoutSeamSpikes(points: readonly Point[], tolerance: number): Point[] {
  let [from, to] = [0, points.length];
  while (to - from > 2) {
    const [first, last] = [points[from]!, points[to - 1]!];
    if (isSame(first, last) || turnsBack(points[to - 2]!, last, first, tolerance)) to--;
    else if (turnsBack(last, first, points[from + 1]!, tolerance)) from++;
    else return points.slice(from, to);
  }
  return [];
}

const isSame = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

/** Whether at `b`, between `a` and `c`, a line comes back along itself. */
function turnsBack(a: Point, b: Point, c: Point, tolerance: number): boolean {
  const [ux, uy, vx, vy] = [a.x - b.x, a.y - b.y, c.x - b.x, c.y - b.y];
  const [u, v] = [Math.hypot(ux, uy), Math.hypot(vx, vy)];
  if (ux * vx + uy * vy <= TURNS_BACK * u * v) return false;
  return (u < v ? distanceToChord(a, b, c) : distanceToChord(c, b, a)) <= tolerance;
}
