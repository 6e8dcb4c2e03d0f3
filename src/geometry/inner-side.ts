import { type Point, type Vector } from './point.ts';

/** One edge of a chain: its unit direction and its length in mm. */
export interface Leg {
  readonly direction: Vector;
  readonly length: number;
}

/** How far the right-hand side of a chain is to be filled, edge by edge. Leg `i` runs from point `i` to the next. */
export interface InnerSide {
  readonly legs: readonly Leg[];
  /** For each leg the height, in mm, up to which its strip is filled: the offset distance, or less where the strips of its neighbours meet above it. */
  readonly heights: Float64Array;
  /** For each point the tangent of half the turn where neighbouring strips are cut along the bisector of a right turn, else 0. */
  readonly cuts: Float64Array;
}

/** Sharper than a turn of about 160 degrees the bisector is too nearly along the legs to be worth finding. */
const LEAST_ONE_PLUS_COSINE = 0.06;

function legsOf(points: readonly Point[], closed: boolean): Leg[] {
  const count = closed ? points.length : points.length - 1;
  return Array.from({ length: count }, (_, i) => {
    const a = points[i]!;
    const b = points[(i + 1) % points.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return { direction: { x: (b.x - a.x) / length, y: (b.y - a.y) / length }, length };
  });
}

function halfTurnTangent(before: Leg | undefined, after: Leg | undefined): number {
  if (before === undefined || after === undefined) return 0;
  const u = before.direction;
  const v = after.direction;
  const sine = u.x * v.y - u.y * v.x;
  const onePlusCosine = 1 + u.x * v.x + u.y * v.y;
  return sine < 0 && onePlusCosine > LEAST_ONE_PLUS_COSINE ? -sine / onePlusCosine : 0;
}

/**
 * Finds how far the strips along a chain's right-hand side need to be filled so that together (with wedges outside left turns)
 * they cover every place within `distance` of the chain on that side.
 *
 * At a right turn, both neighbouring strips may end at the bisector, because a place beyond it is nearer to the other leg.
 * That holds as far up as the place's foot on the other leg is still on that leg; where it is not, both strips stay whole
 * at that corner. A strip cut at both ends may end in an apex below the distance. Doing without what folds
 * over above it spares the boolean kernel the crowds of crossings about centres of curvature.
 */
export function innerSide(points: readonly Point[], closed: boolean, distance: number): InnerSide {
  const legs = legsOf(points, closed);
  const count = points.length;
  const before = (i: number): number => (i > 0 ? i - 1 : closed ? count - 1 : -1);
  const after = (i: number): number => (i < legs.length ? i : -1);
  const cuts = Float64Array.from(points, (_, i) => halfTurnTangent(legs[before(i)], legs[after(i)]));
  const heightOf = (leg: number): number => Math.min(distance, legs[leg]!.length / (cuts[leg]! + cuts[(leg + 1) % count]!));
  const heights = Float64Array.from(legs, (_, leg) => heightOf(leg));
  const holds = (i: number, b: number, a: number): boolean =>
    heights[b]! * cuts[i]! <= legs[a]!.length && heights[a]! * cuts[i]! <= legs[b]!.length;
  // Giving up one cut raises the strips beside it, which may undo the cuts at their other ends; each is given up once at most.
  const doubtful = [...points.keys()];
  for (let i = doubtful.pop(); i !== undefined; i = doubtful.pop()) {
    const b = before(i);
    const a = after(i);
    if (cuts[i] === 0 || holds(i, b, a)) continue;
    cuts[i] = 0;
    heights[b] = heightOf(b);
    heights[a] = heightOf(a);
    doubtful.push(b, (a + 1) % count);
  }
  return { legs, heights, cuts };
}
