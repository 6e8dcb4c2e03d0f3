import { add, distance, normalize, type Path, type Point, polylinePath, same, scale, type Segment, subtract, type Vector } from '../../../geometry/index.ts';
import { CORNER_DEGREES, turnAt } from './pen.ts';

/** A step so many times as long as the one beside it is a stem: the curve leaves it in its own direction, and it stays straight. */
const STEM = 2.5;

/** Lines through the points, closed where they end at their beginning. */
export const straightLines = (points: readonly Point[], reach: number): Path => polylinePath(points, isRound(points, reach));

/**
 * Curves through the points, each tangent to the circle through a point and its neighbours; corners stay corners, stems stay straight.
 * Passes through every point.
 */
export function roundLines(points: readonly Point[], reach: number): Path {
  const closed = isRound(points, reach);
  const ring = closed ? points.slice(0, -1) : points;
  const at = (i: number): Point | undefined => (closed ? ring[(i + ring.length) % ring.length] : ring[i]);
  const count = closed ? ring.length : ring.length - 1;
  const segments = Array.from({ length: count }, (_, i): Segment => {
    const [before, start, end, after] = [at(i - 1), at(i)!, at(i + 1)!, at(i + 2)];
    return segmentBetween(start, end, tangentAt(before, start, end, 'leaving'), tangentAt(start, end, after, 'arriving'));
  });
  return { start: ring[0]!, segments, closed };
}

/** Whether a line comes back to its beginning. */
const isRound = (points: readonly Point[], reach: number): boolean => points.length > 3 && same(points[0]!, points.at(-1)!, reach / 4);

/** The direction at a point; at a corner or an end that of the step itself. */
function tangentAt(before: Point | undefined, at: Point, after: Point | undefined, side: 'leaving' | 'arriving'): Vector | undefined {
  if (!before || !after || turnAt(before, at, after) >= CORNER_DEGREES) return undefined;
  const [u, v] = [subtract(at, before), subtract(after, at)];
  const [a, b] = [distance(at, before), distance(after, at)];
  if (a >= STEM * b) return side === 'leaving' ? normalize(u) : undefined;
  if (b >= STEM * a) return side === 'arriving' ? normalize(v) : undefined;
  return normalize(add(scale(normalize(u), b), scale(normalize(v), a)));
}

function segmentBetween(start: Point, end: Point, leaving: Vector | undefined, arriving: Vector | undefined): Segment {
  if (!leaving && !arriving) return { kind: 'line', end };
  const size = distance(start, end) / 3;
  const along = normalize(subtract(end, start));
  return { kind: 'cubic', control1: add(start, scale(leaving ?? along, size)), control2: subtract(end, scale(arriving ?? along, size)), end };
}
