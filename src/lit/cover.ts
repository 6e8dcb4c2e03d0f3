import type { Loop, Point } from '../geometry/index.ts';
import { type Frame, inPixels } from './frame.ts';
import { type Raster, emptyRaster } from './raster.ts';

/**
 * How much of each pixel lies inside loops (outer ones counter-clockwise, holes clockwise, none overlapping), exactly: each edge adds to a pixel the signed area
 * between itself and the right side of the pixel, and its height to all pixels beyond; sums along the rows are the cover.
 */
export function coverOf(loops: readonly Loop[], frame: Frame): Raster {
  const raster = emptyRaster(frame);
  for (const loop of loops) {
    const points = loop.map((point) => inPixels(frame, point));
    points.forEach((from, i) => addEdge(raster, from, points[(i + 1) % points.length]!));
  }
  sumAlongRows(raster);
  return raster;
}

function sumAlongRows({ columns, rows, values }: Raster): void {
  for (let y = 0, i = 0; y < rows; y++) {
    let sum = 0;
    for (let x = 0; x < columns; x++, i++) {
      sum += values[i]!;
      values[i] = sum < 1e-4 ? 0 : Math.min(1, sum);
    }
  }
}

/** Going down a pixel counts positive: with y down, a counter-clockwise loop has its inside on the right of its downward edges. */
function addEdge(raster: Raster, from: Point, to: Point): void {
  if (from.y === to.y) return;
  const sign = to.y > from.y ? 1 : -1;
  const [top, foot] = sign > 0 ? [from, to] : [to, from];
  const slope = (foot.x - top.x) / (foot.y - top.y);
  const last = Math.min(raster.rows - 1, Math.ceil(foot.y) - 1);
  for (let row = Math.max(0, Math.floor(top.y)); row <= last; row++) {
    const [upper, lower] = [Math.max(top.y, row), Math.min(foot.y, row + 1)];
    if (lower > upper) addPiece(raster, row, { x: top.x + (upper - top.y) * slope, y: upper }, { x: top.x + (lower - top.y) * slope, y: lower }, sign);
  }
}

/** Adds a piece that lies within one row, pixel by pixel. */
function addPiece(raster: Raster, row: number, top: Point, foot: Point, sign: number): void {
  const height = foot.y - top.y;
  const [left, right] = top.x <= foot.x ? [top.x, foot.x] : [foot.x, top.x];
  const first = Math.floor(left);
  if (right <= first + 1) {
    put(raster, row, first, sign * height, (left + right) / 2);
    return;
  }
  for (let column = first; column < right; column++) {
    const [a, b] = [Math.max(left, column), Math.min(right, column + 1)];
    put(raster, row, column, (sign * height * (b - a)) / (right - left), (a + b) / 2);
  }
}

/** What lies to the right of `at` within the pixel is covered; all pixels beyond are. */
function put({ columns, values }: Raster, row: number, column: number, height: number, at: number): void {
  if (column >= columns) return;
  const inside = column < 0 ? 1 : column + 1 - at;
  const x = Math.max(0, column);
  values[row * columns + x]! += height * inside;
  if (x + 1 < columns) values[row * columns + x + 1]! += height * (1 - inside);
}
