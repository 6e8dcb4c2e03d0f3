import type { Frame } from './frame.ts';

/** How rough the wall looks: bumps of so many mm change its light by such a share (common practice, no source). */
const BUMPS = [[1.7, 0.05], [6.3, 0.035], [41, 0.05]] as const;

/** By column, for one row of the picture: light sent back beside a smooth wall. The same place on the wall always looks the same. */
export function plasterRow({ box, scale, columns }: Frame, row: number, into: Float32Array): void {
  into.fill(1);
  const y = box.maxY - (row + 0.5) / scale;
  for (const [size, share] of BUMPS) addBumps(into, { x: box.minX / size, y: y / size, step: 1 / (scale * size), columns }, share);
}

function addBumps(into: Float32Array, { x, y, step, columns }: { readonly x: number; readonly y: number; readonly step: number; readonly columns: number }, share: number): void {
  const row = Math.floor(y);
  const up = smooth(y - row);
  const corner = (column: number) => height(column, row) * (1 - up) + height(column, row + 1) * up;
  let column = NaN;
  let [left, right] = [0, 0];
  for (let i = 0; i < columns; i++) {
    const at = x + (i + 0.5) * step;
    if (Math.floor(at) !== column) {
      column = Math.floor(at);
      [left, right] = [corner(column), corner(column + 1)];
    }
    into[i]! += share * (left + (right - left) * smooth(at - column));
  }
}

const smooth = (t: number): number => t * t * (3 - 2 * t);

/** A number between -1 and 1 for each place of a lattice, without any order to be seen: its coordinates, mixed bit by bit. */
function height(column: number, row: number): number {
  let mixed = Math.imul(column, 0x27d4eb2f) ^ Math.imul(row, 0x165667b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
  mixed = Math.imul(mixed ^ (mixed >>> 12), 0x297a2d39);
  return (mixed ^ (mixed >>> 15)) / 2 ** 31;
}
