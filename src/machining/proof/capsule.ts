import { distance, nearestOnSegment, type Point } from '../../geometry/point.ts';
import { type Hole, holeEnds } from '../job/hole.ts';
import { toFrame } from './frame.ts';

/** All places within a radius of a segment, mm: a round hole has both ends in one place. */
export interface Capsule {
  readonly ends: readonly [Point, Point];
  readonly radius: number;
}

/** A hole in the proof's frame. */
export function capsuleOf(hole: Hole): Capsule {
  const [a, b] = holeEnds(hole);
  return { ends: [toFrame(a), toFrame(b)], radius: hole.diameter / 2 };
}

/** Distance from a place to a capsule's edge, mm; negative inside. */
export const beyondCapsule = ({ ends: [a, b], radius }: Capsule, point: Point): number => distance(nearestOnSegment(a, b, point), point) - radius;

/** Where the row at height y crosses a capsule, left and right; undefined when it passes by. It is convex: one span. */
export function capsuleSpan({ ends: [a, b], radius }: Capsule, y: number): [number, number] | undefined {
  const xs = [...[a, b].flatMap((end) => discCrossings(end, radius, y)), ...sideCrossings(a, b, radius, y)];
  return xs.length === 0 ? undefined : [Math.min(...xs), Math.max(...xs)];
}

function discCrossings(centre: Point, radius: number, y: number): number[] {
  const half = radius ** 2 - (y - centre.y) ** 2;
  return half > 0 ? [centre.x - Math.sqrt(half), centre.x + Math.sqrt(half)] : [];
}

/** Crossings with the two straight sides. */
function sideCrossings(a: Point, b: Point, radius: number, y: number): number[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length === 0 || a.y === b.y) return [];
  return [1, -1].flatMap((side) => {
    const [dx, dy] = [(-side * radius * (b.y - a.y)) / length, (side * radius * (b.x - a.x)) / length];
    const t = (y - a.y - dy) / (b.y - a.y);
    return t >= 0 && t <= 1 ? [a.x + dx + t * (b.x - a.x)] : [];
  });
}
