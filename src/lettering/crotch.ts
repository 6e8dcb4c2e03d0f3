import { cross, dot, subtract, type Vector } from '../geometry/index.ts';
import type { Boundary, Walk } from './boundary.ts';

/** A boundary together with the means to walk along it. */
export interface Shore {
  readonly boundary: Boundary;
  readonly walk: Walk;
}

/** What the boundary does between two neighbouring arms of a junction. */
export interface Crotch {
  /** The boundary point at its deepest. */
  readonly index: number;
  /** How far it turns inward there, radians, beyond what the walls on either side do by their own bend. */
  readonly turn: number;
  /** The rounding's length before and after the deepest point, mm. */
  readonly before: number;
  readonly after: number;
}

/** Directions on either side of a place are taken between these shares of the width away. */
const [NEAR, FAR] = [0.06, 0.42];

/** Below this turn, radians, a wall runs on. */
export const SMOOTH_TURN = 0.16;

export const isSmooth = ({ turn }: Crotch): boolean => turn < SMOOTH_TURN;

/** The crotch between boundary point `a` (on the left wall of one arm) and `b` further along (on the right wall of the next). */
export function crotchBetween(shore: Shore, a: number, b: number, width: number): Crotch {
  const { walk, boundary } = shore;
  const ahead = boundary.loop[a] === boundary.loop[b] ? walk.way(a, b) : 0;
  const [from, to] = [Math.min(0, ahead) - 0.4 * width, Math.max(0, ahead) + 0.4 * width];
  const step = width / 16;
  const count = Math.min(200, Math.ceil((to - from) / step));
  let [at, most] = [0, -Infinity];
  for (let k = 0; k <= count; k++) {
    const way = from + ((to - from) * k) / count;
    const turn = turnAt(shore, a, way, width) - 0.02 * Math.max(0, -way, way - ahead) / width;
    if (turn > most) [at, most] = [way, turn];
  }
  const turn = most - ownBend(shore, a, at, width);
  return { index: walk.indexFrom(a, at), turn, ...roundingAt(shore, a, at, width) };
}

const chord = ({ walk }: Shore, index: number, from: number, to: number): Vector => subtract(walk.from(index, to), walk.from(index, from));

/** Turn to the right, radians, from one direction to another. */
const rightTurn = (u: Vector, v: Vector) => -Math.atan2(cross(u, v), dot(u, v));

function turnAt(shore: Shore, index: number, way: number, width: number): number {
  return rightTurn(chord(shore, index, way - FAR * width, way - NEAR * width), chord(shore, index, way + NEAR * width, way + FAR * width));
}

/** What the walls would turn over the same length by the bend they have farther out. */
function ownBend(shore: Shore, index: number, way: number, width: number): number {
  const span = FAR - NEAR;
  const bend = (side: -1 | 1) => {
    const near = chord(shore, index, way + side * NEAR * width, way + side * FAR * width);
    const far = chord(shore, index, way + side * FAR * width, way + side * (FAR + span) * width);
    return side > 0 ? rightTurn(near, far) : -rightTurn(near, far);
  };
  const mean = (bend(-1) + bend(1)) / 2;
  return Math.min(1.2, Math.max(0, mean)) * ((NEAR + FAR) / span);
}

/** Where the turn begins and ends: a tenth of it done, a tenth left. */
function roundingAt(shore: Shore, index: number, way: number, width: number): { before: number; after: number } {
  const first = chord(shore, index, way - FAR * width, way - 0.7 * FAR * width);
  const whole = rightTurn(first, chord(shore, index, way + 0.7 * FAR * width, way + FAR * width));
  const turned = (off: number) => rightTurn(first, chord(shore, index, way + off - 0.05 * width, way + off + 0.05 * width));
  const step = width / 24;
  let [before, after] = [0, 0];
  while (before < 0.35 * width && turned(-before) > 0.12 * whole) before += step;
  while (after < 0.35 * width && turned(after) < 0.88 * whole) after += step;
  return { before: before + 0.02 * width, after: after + 0.02 * width };
}
