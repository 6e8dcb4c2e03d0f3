import type { Point, Vector } from '../../geometry/index.ts';
import { addEquation, emptyNormals, type Normals, solveNormals } from '../banded.ts';

/** A place between a sample and the next (`share` of the way) that must not move. */
export interface Hold {
  readonly sample: number;
  readonly share: number;
}

const THIRD = [-1, 3, -3, 1] as const;

/**
 * The penalised least-squares smoother of E. Whittaker (1923) with third differences keeps, of a wave that advances by k radians
 * from sample to sample, the share h = 1 / (1 + stiffness (2 sin(k / 2))^6). Applied again to what it took away and added, it keeps
 * 1 - (1 - h)^2 (J. Tukey's twicing): nearly all of what is longer than the wave that is halved, nearly nothing of what is shorter.
 */
export const keptShare = (stiffness: number, k: number): number => 1 - (1 - 1 / (1 + stiffness * (2 * Math.sin(k / 2)) ** 6)) ** 2;

/** The stiffness that halves a wave of so many samples: there h is 1 - sqrt(1/2). */
export const stiffnessFor = (samples: number): number => (1 / (1 - Math.SQRT1_2) - 1) / (2 * Math.sin(Math.PI / samples)) ** 6;

/** A hold outweighs all else by this much. */
const HELD = 1e7;

/** How far each sample is to be moved so that the line through them loses its short waves. `weights`: how firmly each sample is tied to where it is. */
export function smoothingMoves(points: readonly Point[], weights: ArrayLike<number>, stiffness: number, holds: readonly Hold[]): Vector[] {
  const [x, y] = (['x', 'y'] as const).map((axis) => twiced(points.map((point) => point[axis]), weights, stiffness, holds));
  return points.map((_, i) => ({ x: x![i]!, y: y![i]! }));
}

function twiced(values: readonly number[], weights: ArrayLike<number>, stiffness: number, holds: readonly Hold[]): number[] {
  const bend = (i: number) => THIRD.reduce((sum, factor, k) => sum - factor * values[i + k]!, 0);
  const first = solveNormals(systemOf(weights, stiffness, holds, () => 0, bend));
  const again = solveNormals(systemOf(weights, stiffness, holds, (i) => -first[i]!, () => 0));
  return values.map((_, i) => first[i]! + again[i]!);
}

function systemOf(weights: ArrayLike<number>, stiffness: number, holds: readonly Hold[], value: (i: number) => number, third: (i: number) => number): Normals {
  const system = emptyNormals(weights.length, 3);
  for (let i = 0; i < weights.length; i++) addEquation(system, [i], [1], value(i), weights[i]!);
  for (let i = 0; i + 3 < weights.length; i++) addEquation(system, [i, i + 1, i + 2, i + 3], THIRD, third(i), stiffness);
  const firm = HELD * (1 + stiffness);
  for (const { sample, share } of holds) {
    if (share === 0) addEquation(system, [sample], [1], 0, firm);
    else addEquation(system, [sample, sample + 1], [1 - share, share], 0, firm);
  }
  return system;
}
