import { type Point, type Region, regionBounds } from '../../../src/geometry/index.ts';

/** Distances from the middles of cells to the nearest cell outside, in cells. */
export interface DistanceGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cell: number;
  /** Middle of the first cell, mm. */
  readonly origin: Point;
  readonly distances: Float64Array;
}

/** The exact Euclidean distance transform of a region filled into cells by the even-odd rule on its loops. */
export function distanceGrid(region: Region, cell: number): DistanceGrid {
  const box = regionBounds(region)!;
  const columns = Math.ceil((box.maxX - box.minX) / cell) + 4;
  const rows = Math.ceil((box.maxY - box.minY) / cell) + 4;
  const origin = { x: box.minX - 1.5 * cell, y: box.minY - 1.5 * cell };
  const squares = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) fillRow(region, squares.subarray(row * columns, (row + 1) * columns), origin.x, origin.y + row * cell, cell);
  for (let column = 0; column < columns; column++) {
    const line = Float64Array.from({ length: rows }, (_, row) => squares[row * columns + column]!);
    envelope(line).forEach((value, row) => { squares[row * columns + column] = value; });
  }
  for (let row = 0; row < rows; row++) squares.set(envelope(squares.slice(row * columns, (row + 1) * columns)), row * columns);
  return { columns, rows, cell, origin, distances: squares.map(Math.sqrt) };
}

/** Large, but small enough that squares of places beside it keep their digits. */
const FAR = 1e10;

function fillRow({ loops }: Region, row: Float64Array, x0: number, y: number, cell: number): void {
  const cuts = loops.flatMap((loop) => loop.flatMap((a, i) => {
    const b = loop[(i + 1) % loop.length]!;
    return a.y > y === b.y > y ? [] : [a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)];
  })).sort((a, b) => a - b);
  for (let k = 0; k + 1 < cuts.length; k += 2) {
    const [from, to] = [Math.ceil((cuts[k]! - x0) / cell), Math.floor((cuts[k + 1]! - x0) / cell)];
    row.fill(FAR, from, to + 1);
  }
}

/** Lower envelope of the parabolas (x - i)^2 + f(i), at whole x (P. Felzenszwalb and D. Huttenlocher, Theory of Computing 8, 2012, 415-428). */
function envelope(f: Float64Array): Float64Array {
  const [places, bounds] = [new Int32Array(f.length), new Float64Array(f.length + 1)];
  const meet = (i: number, j: number) => (f[i]! + i * i - f[j]! - j * j) / (2 * (i - j));
  let k = 0;
  [bounds[0], bounds[1]] = [-Infinity, Infinity];
  for (let i = 1; i < f.length; i++) {
    let at = meet(i, places[k]!);
    while (at <= bounds[k]!) at = meet(i, places[--k]!);
    k += 1;
    [places[k], bounds[k], bounds[k + 1]] = [i, at, Infinity];
  }
  k = 0;
  return f.map((_, x) => {
    while (bounds[k + 1]! < x) k += 1;
    return (x - places[k]!) ** 2 + f[places[k]!]!;
  });
}

/** Cells from the ridge at which its two slopes are looked at, once and twice this far. */
const REACH = 4;

/**
 * Places of the ridge, where the distances fall like a roof on both sides along a row or a column: between the cells, where
 * both slopes meet. Where the outline only bends there is no roof. Strokes under twenty cells wide are not seen.
 */
export function ridge({ columns, rows, cell, origin, distances }: DistanceGrid): { readonly point: Point; readonly radius: number }[] {
  const found: { point: Point; radius: number }[] = [];
  for (let row = 2 * REACH; row < rows - 2 * REACH; row++) {
    for (let column = 2 * REACH; column < columns - 2 * REACH; column++) {
      const radius = distances[row * columns + column]! * cell;
      if (radius < (2 * REACH + 2) * cell) continue;
      for (const [dx, dy] of [[1, 0], [0, 1]] as const) {
        const [far, before, after, beyond] = [-2, -1, 1, 2].map((k) => distances[(row + k * REACH * dy) * columns + column + k * REACH * dx]!) as [number, number, number, number];
        const slopes = [(before - far) / REACH, (after - beyond) / REACH] as const;
        if (Math.min(...slopes) < 0.6) continue;
        const shift = (after - before) / (slopes[0] + slopes[1]);
        if (Math.abs(shift) <= 0.5) found.push({ point: { x: origin.x + (column + shift * dx) * cell, y: origin.y + (row + shift * dy) * cell }, radius });
      }
    }
  }
  return found;
}
