import type { Point, Vector } from '../geometry/index.ts';
import type { Boundary } from './boundary.ts';

/** The nearest place of a wall. */
export interface Foot {
  readonly index: number;
  readonly distance: number;
  /** Unit vector towards it. */
  readonly toward: Vector;
}

/** Looking ahead so many points past a local minimum: noise makes small ones. */
const LOOK_AHEAD = 3;
const MOST_STEPS = 400;

/** The wall's nearest place to a point, found by walking downhill from one of its points. */
export const footFrom = (boundary: Boundary, start: number, point: Point): Foot => exactFoot(boundary, descend(boundary, start, point), point);

function descend(boundary: Boundary, start: number, point: Point): number {
  let [best, least] = [start, squared(boundary, start, point)];
  for (const lead of [boundary.next, boundary.previous]) {
    let [i, waited] = [best, 0];
    for (let step = 0; step < MOST_STEPS && waited < LOOK_AHEAD; step++) {
      i = lead[i]!;
      const here = squared(boundary, i, point);
      waited = here < least ? 0 : waited + 1;
      if (here < least) [best, least] = [i, here];
    }
  }
  return best;
}

const squared = ({ places }: Boundary, i: number, { x, y }: Point) => (places[2 * i]! - x) ** 2 + (places[2 * i + 1]! - y) ** 2;

function exactFoot({ places, next, previous }: Boundary, index: number, { x, y }: Point): Foot {
  const [px, py] = [places[2 * index]!, places[2 * index + 1]!];
  let [fx, fy, least] = [px, py, (px - x) ** 2 + (py - y) ** 2];
  for (const other of [next[index]!, previous[index]!]) {
    const [dx, dy] = [places[2 * other]! - px, places[2 * other + 1]! - py];
    const t = Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy || 1)));
    const [qx, qy] = [px + t * dx, py + t * dy];
    const gap = (qx - x) ** 2 + (qy - y) ** 2;
    if (gap < least) [fx, fy, least] = [qx, qy, gap];
  }
  const distance = Math.sqrt(least);
  return { index, distance, toward: { x: (fx - x) / (distance || 1), y: (fy - y) / (distance || 1) } };
}
