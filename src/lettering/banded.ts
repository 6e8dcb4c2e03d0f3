/**
 * Normal equations of a least-squares problem whose unknowns only meet others at most `reach` places away, gathered row by row.
 * Symmetric and banded: `at[i * (reach + 1) + k]` couples unknown i with unknown i - k.
 */
export interface Normals {
  readonly count: number;
  readonly reach: number;
  readonly at: Float64Array;
  readonly side: Float64Array;
}

export const emptyNormals = (count: number, reach: number): Normals =>
  ({ count, reach, at: new Float64Array(count * (reach + 1)), side: new Float64Array(count) });

/** Adds the equation sum(factors[k] * unknown[places[k]]) = value with a weight; places must rise. */
export function addEquation({ reach, at, side }: Normals, places: readonly number[], factors: readonly number[], value: number, weight: number): void {
  for (let a = 0; a < places.length; a++) {
    const [i, wa] = [places[a]!, weight * factors[a]!];
    side[i]! += wa * value;
    for (let b = 0; b <= a; b++) at[i * (reach + 1) + (i - places[b]!)]! += wa * factors[b]!;
  }
}

/** Solves by Cholesky's decomposition within the band, in time proportional to count times reach squared. A tiny ridge keeps empty rows solvable. */
export function solveNormals({ count, reach, at, side }: Normals): Float64Array {
  const width = reach + 1;
  const root = Float64Array.from(at);
  const x = Float64Array.from(side);
  for (let i = 0; i < count; i++) {
    for (let k = Math.min(reach, i); k >= 0; k--) {
      const j = i - k;
      let sum = root[i * width + k]!;
      for (let m = Math.max(0, i - reach, j - reach); m < j; m++) sum -= root[i * width + (i - m)]! * root[j * width + (j - m)]!;
      root[i * width + k] = k === 0 ? Math.sqrt(Math.max(sum, 1e-12 * at[i * width]! + 1e-300)) : sum / root[j * width]!;
    }
    for (let m = Math.max(0, i - reach); m < i; m++) x[i]! -= root[i * width + (i - m)]! * x[m]!;
    x[i]! /= root[i * width]!;
  }
  for (let i = count - 1; i >= 0; i--) {
    for (let m = i + 1; m <= Math.min(count - 1, i + reach); m++) x[i]! -= root[m * width + (m - i)]! * x[m]!;
    x[i]! /= root[i * width]!;
  }
  return x;
}
