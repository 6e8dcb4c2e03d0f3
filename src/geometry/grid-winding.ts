import { columnOf, type EdgeGrid, rowOf } from './edge-grid.ts';
import { type Point } from './point.ts';

/** Where in a cell its winding number is known: off the middle, so that edges on a regular pitch miss it. */
const REFERENCE_X = 0.4871;
const REFERENCE_Y = 0.5273;

const referenceX = (grid: EdgeGrid, column: number): number => grid.originX + (column + REFERENCE_X) * grid.cell;
const referenceY = (grid: EdgeGrid, row: number): number => grid.originY + (row + REFERENCE_Y) * grid.cell;

/** Twice the signed area of the triangle from p over q to (x, y). */
const side = (px: number, py: number, qx: number, qy: number, x: number, y: number): number =>
  (qx - px) * (y - py) - (qy - py) * (x - px);

/**
 * How the winding number changes from p to q across edge `e`: plus one when the edge passes the segment from its right to
 * its left. Corners on the line pq count as right of it, for all edges alike, so a chain is counted once.
 */
function change(grid: EdgeGrid, e: number, px: number, py: number, qx: number, qy: number): number {
  const ax = grid.ax[e]!, ay = grid.ay[e]!, bx = grid.bx[e]!, by = grid.by[e]!;
  const fromLeft = side(px, py, qx, qy, ax, ay) > 0;
  if (fromLeft === side(px, py, qx, qy, bx, by) > 0) return 0;
  if (side(ax, ay, bx, by, px, py) > 0 === side(ax, ay, bx, by, qx, qy) > 0) return 0;
  return fromLeft ? 1 : -1;
}

/**
 * The winding number at each cell's reference point, row by row from the left, where it is zero. Each step between
 * neighbours looks at the edges of the two cells it crosses.
 */
export function windingMap(grid: EdgeGrid): Int16Array {
  const map = new Int16Array(grid.columns * grid.rows);
  const seen = new Int32Array(grid.count).fill(-1);
  for (let row = 0; row < grid.rows; row += 1) {
    const y = referenceY(grid, row);
    let winding = 0;
    let fromX = grid.originX;
    for (let column = 0; column < grid.columns; column += 1) {
      const cell = row * grid.columns + column;
      const x = referenceX(grid, column);
      const first = column === 0 ? cell : cell - 1;
      for (let k = grid.starts[first]!; k < grid.starts[cell + 1]!; k += 1) {
        const e = grid.items[k]!;
        if (seen[e] === cell) continue;
        seen[e] = cell;
        winding += change(grid, e, fromX, y, x, y);
      }
      map[cell] = winding;
      fromX = x;
    }
  }
  return map;
}

/** The winding number at a point of the grid: that of its cell's reference point and what the way from there to the point crosses. */
export function windingWithin(grid: EdgeGrid, map: Int16Array, point: Point): number {
  const column = columnOf(grid, point.x);
  const row = rowOf(grid, point.y);
  const cell = row * grid.columns + column;
  const x = referenceX(grid, column);
  const y = referenceY(grid, row);
  let winding = map[cell]!;
  for (let k = grid.starts[cell]!; k < grid.starts[cell + 1]!; k += 1) {
    winding += change(grid, grid.items[k]!, x, y, point.x, point.y);
  }
  return winding;
}
