import { columnOf, type EdgeGrid, rowOf } from './edge-grid.ts';
import { type Point, type Vector } from './point.ts';

/** How much beyond an edge's ends, as a part of its length, still meets it: no ray slips through a corner. */
const CORNER_SLACK = 1e-9;

/** Distance along a ray (unit direction) to edge `e`, or Infinity. Of an edge along the ray, the nearer end counts. */
function meet(grid: EdgeGrid, e: number, from: Point, d: Vector, least: number): number {
  const ex = grid.bx[e]! - grid.ax[e]!;
  const ey = grid.by[e]! - grid.ay[e]!;
  const wx = grid.ax[e]! - from.x;
  const wy = grid.ay[e]! - from.y;
  const det = d.x * ey - d.y * ex;
  if (Math.abs(det) <= 1e-14 * (Math.abs(ex) + Math.abs(ey))) {
    if (Math.abs(d.x * wy - d.y * wx) > 1e-9) return Infinity;
    const ends = [wx * d.x + wy * d.y, (wx + ex) * d.x + (wy + ey) * d.y].filter((t) => t > least);
    return Math.min(Infinity, ...ends);
  }
  const onEdge = (wx * d.y - wy * d.x) / det;
  if (onEdge < -CORNER_SLACK || onEdge > 1 + CORNER_SLACK) return Infinity;
  const t = (wx * ey - wy * ex) / det;
  return t > least ? t : Infinity;
}

/** Where the ray is within the grid: distances of entry and exit, entry beyond exit when it misses. */
function span(grid: EdgeGrid, from: Point, d: Vector): { enter: number; leave: number } {
  const clip = (origin: number, size: number, at: number, step: number): [number, number] => {
    if (step === 0) return at >= origin && at <= origin + size ? [0, Infinity] : [Infinity, 0];
    const a = (origin - at) / step;
    const b = (origin + size - at) / step;
    return [Math.min(a, b), Math.max(a, b)];
  };
  const [x0, x1] = clip(grid.originX, grid.columns * grid.cell, from.x, d.x);
  const [y0, y1] = clip(grid.originY, grid.rows * grid.cell, from.y, d.y);
  return { enter: Math.max(0, x0, y0), leave: Math.min(x1, y1) };
}

function meetInCell(grid: EdgeGrid, cell: number, from: Point, d: Vector, least: number): number {
  let nearest = Infinity;
  for (let k = grid.starts[cell]!; k < grid.starts[cell + 1]!; k += 1) {
    nearest = Math.min(nearest, meet(grid, grid.items[k]!, from, d, least));
  }
  return nearest;
}

/**
 * Distance from a point to the first edge in a direction, beyond `least`, or Infinity. Walks the grid cell by cell
 * (J. Amanatides and A. Woo, A fast voxel traversal algorithm for ray tracing, Eurographics 1987).
 */
export function firstCrossing(grid: EdgeGrid, from: Point, direction: Vector, least: number): number {
  const length = Math.hypot(direction.x, direction.y);
  if (!(length > 0 && length < Infinity)) throw new RangeError(`ray direction (${direction.x}, ${direction.y}): expected a finite vector that is not zero`);
  const d = { x: direction.x / length, y: direction.y / length };
  const { enter, leave } = span(grid, from, d);
  if (!(enter <= leave)) return Infinity;
  let column = columnOf(grid, from.x + d.x * enter);
  let row = rowOf(grid, from.y + d.y * enter);
  const next = (origin: number, index: number, at: number, step: number): number =>
    step === 0 ? Infinity : (origin + (index + (step > 0 ? 1 : 0)) * grid.cell - at) / step;
  let nearest = Infinity;
  while (column >= 0 && column < grid.columns && row >= 0 && row < grid.rows) {
    nearest = Math.min(nearest, meetInCell(grid, row * grid.columns + column, from, d, least));
    const nextX = next(grid.originX, column, from.x, d.x);
    const nextY = next(grid.originY, row, from.y, d.y);
    if (nearest <= Math.min(nextX, nextY)) return nearest;
    if (nextX < nextY) column += Math.sign(d.x);
    else row += Math.sign(d.y);
  }
  return nearest;
}
