import type { Outline } from '../../src/artwork/artwork.ts';
import { type Box, boxOfPoints, flattenPath, type Loop } from '../../src/geometry/index.ts';

/** A drawing in square pixels: 1 where a pixel's middle is filled. A border of two empty pixels lies around it. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly pixel: number;
  /** Middle of the first pixel, mm; rows go up. */
  readonly x0: number;
  readonly y0: number;
  readonly ink: Uint8Array;
}

interface Drawn {
  readonly loops: readonly Loop[];
  readonly box: Box;
}

/** The outlines filled by the non-zero rule, those whose boxes overlap together in one raster. Chords stray a tenth of a pixel at most. */
export function rasters(outlines: readonly Outline[], pixel: number): Raster[] {
  const drawn = outlines.map(({ paths }): Drawn => {
    const loops = paths.map((path) => flattenPath(path, pixel / 10));
    return { loops, box: boxOfPoints(loops.flat())! };
  });
  return groups(drawn).map((group) => rasterOf(group.flatMap(({ loops }) => loops), pixel));
}

/** Letters from left to right, cut where no box spans the gap. */
function groups(drawn: readonly Drawn[]): Drawn[][] {
  const sorted = [...drawn].sort((a, b) => a.box.minX - b.box.minX);
  const found: Drawn[][] = [];
  let right = -Infinity;
  for (const one of sorted) {
    if (one.box.minX > right) found.push([one]);
    else found.at(-1)!.push(one);
    right = Math.max(right, one.box.maxX);
  }
  return found;
}

function rasterOf(loops: readonly Loop[], pixel: number): Raster {
  const { minX, minY, maxX, maxY } = boxOfPoints(loops.flat())!;
  const [columns, rows] = [Math.ceil((maxX - minX) / pixel) + 5, Math.ceil((maxY - minY) / pixel) + 5];
  const [x0, y0] = [minX - 2 * pixel, minY - 2 * pixel];
  const ink = new Uint8Array(columns * rows);
  cutsOf(loops, rows, pixel, y0).forEach((cuts, row) => { fillRow(ink.subarray(row * columns, (row + 1) * columns), cuts, pixel, x0); });
  return { columns, rows, pixel, x0, y0, ink };
}

interface Cut {
  readonly x: number;
  readonly turn: number;
}

/** Where loops cross the middles of the rows, and whether up or down. */
function cutsOf(loops: readonly Loop[], rows: number, pixel: number, y0: number): Cut[][] {
  const cuts = Array.from({ length: rows }, (): Cut[] => []);
  for (const loop of loops) {
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length]!;
      const [low, high] = a.y < b.y ? [a, b] : [b, a];
      for (let row = Math.ceil((low.y - y0) / pixel); row * pixel + y0 < high.y; row++) {
        cuts[row]!.push({ x: low.x + ((row * pixel + y0 - low.y) * (high.x - low.x)) / (high.y - low.y), turn: a.y < b.y ? 1 : -1 });
      }
    });
  }
  return cuts;
}

function fillRow(row: Uint8Array, cuts: Cut[], pixel: number, x0: number): void {
  cuts.sort((a, b) => a.x - b.x);
  let winding = 0;
  cuts.forEach(({ x, turn }, i) => {
    winding += turn;
    if (winding !== 0) row.fill(1, Math.ceil((x - x0) / pixel), Math.ceil(((cuts[i + 1]?.x ?? x) - x0) / pixel));
  });
}

/** For every pixel the distance from its middle to that of the nearest empty one, in pixels: exact (P. Felzenszwalb and D. Huttenlocher, Theory of Computing 8, 2012, 415-428). */
export function distancesOf({ columns, rows, ink }: Raster): Float32Array {
  const squares = columnSquares(columns, rows, ink);
  const scratch = { places: new Int32Array(columns), bounds: new Float64Array(columns + 1), values: new Float64Array(columns) };
  for (let row = 0; row < rows; row++) envelope(squares.subarray(row * columns, (row + 1) * columns), scratch);
  return squares;
}

/** Squares of the distances up or down a column. */
function columnSquares(columns: number, rows: number, ink: Uint8Array): Float32Array {
  const far = new Float32Array(columns * rows);
  for (let at = columns; at < far.length; at++) far[at] = ink[at] ? far[at - columns]! + 1 : 0;
  for (let at = far.length - columns - 1; at >= 0; at--) far[at] = Math.min(far[at]!, far[at + columns]! + 1);
  for (let at = 0; at < far.length; at++) far[at]! *= far[at]!;
  return far;
}

interface Scratch {
  readonly places: Int32Array;
  readonly bounds: Float64Array;
  readonly values: Float64Array;
}

/** The lower envelope of parabolas over a row; its roots take the row's place. */
function envelope(row: Float32Array, { places, bounds, values }: Scratch): void {
  values.set(row);
  let k = 0;
  [places[0], bounds[0], bounds[1]] = [0, -Infinity, Infinity];
  for (let i = 1; i < row.length; i++) {
    const own = values[i]! + i * i;
    const meet = () => (own - values[places[k]!]! - places[k]! * places[k]!) / (2 * (i - places[k]!));
    let at = meet();
    while (at <= bounds[k]!) { k--; at = meet(); }
    k += 1;
    places[k] = i;
    bounds[k] = at;
    bounds[k + 1] = Infinity;
  }
  k = 0;
  for (let x = 0; x < row.length; x++) {
    while (bounds[k + 1]! < x) k += 1;
    row[x] = Math.sqrt((x - places[k]!) ** 2 + values[places[k]!]!);
  }
}
