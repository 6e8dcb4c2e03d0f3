import { columnOf, type EdgeGrid, nearestOnEdge, rowOf } from './edge-grid.ts';
import { type Point } from './point.ts';

/** For every cell the number of steps (also diagonal) to the nearest cell that holds an edge, by the two-pass chessboard distance transform. */
export function gapMap(grid: EdgeGrid): Int32Array {
  const { columns, rows, starts } = grid;
  const far = columns + rows;
  const map = Int32Array.from({ length: columns * rows }, (_, c) => (starts[c + 1]! > starts[c]! ? 0 : far));
  const relax = (row: number, column: number, dr: number, dc: number): void => {
    const r = row + dr;
    const c = column + dc;
    if (r < 0 || r >= rows || c < 0 || c >= columns) return;
    const at = row * columns + column;
    map[at] = Math.min(map[at]!, map[r * columns + c]! + 1);
  };
  const pass = (row: number, column: number, s: number): void => {
    relax(row, column, 0, -s);
    relax(row, column, -s, -1);
    relax(row, column, -s, 0);
    relax(row, column, -s, 1);
  };
  for (let row = 0; row < rows; row += 1) for (let column = 0; column < columns; column += 1) pass(row, column, 1);
  for (let row = rows - 1; row >= 0; row -= 1) for (let column = columns - 1; column >= 0; column -= 1) pass(row, column, -1);
  return map;
}

/** The nearest place found so far, and its edge. */
export interface Best {
  squared: number;
  point: Point;
  edge: number;
}

/** Whether an edge may be the answer. It is asked only of edges nearer than the best so far. */
export type Accepts = (edge: number) => boolean;

function searchCell(grid: EdgeGrid, cell: number, point: Point, best: Best, accepts: Accepts | undefined): void {
  for (let k = grid.starts[cell]!; k < grid.starts[cell + 1]!; k += 1) {
    const edge = grid.items[k]!;
    const candidate = nearestOnEdge(grid, edge, point);
    const dx = candidate.x - point.x;
    const dy = candidate.y - point.y;
    const squared = dx * dx + dy * dy;
    if (squared < best.squared && (!accepts || accepts(edge))) {
      best.squared = squared;
      best.point = candidate;
      best.edge = edge;
    }
  }
}

/** Searches the cells exactly `ring` steps away from a cell. */
export function searchRing(
  grid: EdgeGrid, { column, row }: { readonly column: number; readonly row: number }, ring: number, point: Point, best: Best, accepts?: Accepts,
): void {
  const lastRow = Math.min(grid.rows - 1, row + ring);
  for (let r = Math.max(0, row - ring); r <= lastRow; r += 1) {
    const whole = r === row - ring || r === row + ring;
    const step = whole || ring === 0 ? 1 : 2 * ring;
    for (let c = column - ring; c <= column + ring; c += step) {
      if (c >= 0 && c < grid.columns) searchCell(grid, r * grid.columns + c, point, best, accepts);
    }
  }
}

/**
 * The boundary point nearest to a point. Starts at the nearest ring of cells that holds an edge and goes on until no farther
 * ring can hold a nearer one; a point outside the grid is looked at from the grid's nearest point.
 */
export function nearestInGrid(grid: EdgeGrid, gaps: Int32Array, point: Point): Point {
  const { originX, originY, cell, columns, rows } = grid;
  const x = Math.min(originX + columns * cell, Math.max(originX, point.x));
  const y = Math.min(originY + rows * cell, Math.max(originY, point.y));
  const column = columnOf(grid, x);
  const row = rowOf(grid, y);
  const outside = (point.x - x) ** 2 + (point.y - y) ** 2;
  // From the nearest point of the grid, ring r starts r - 1 cells beyond the nearer border of the own cell.
  const margin = Math.min(x - originX - column * cell, originX + (column + 1) * cell - x,
    y - originY - row * cell, originY + (row + 1) * cell - y);
  const best: Best = { squared: Infinity, point, edge: -1 };
  for (let ring = gaps[row * columns + column]!; ; ring += 1) {
    const least = ring === 0 ? 0 : Math.max(0, margin + (ring - 1) * cell);
    // The angle at the grid's nearest point is a right one or wider, hence the sum of squares.
    if (best.squared <= outside + least * least || ring > columns + rows) return best.point;
    searchRing(grid, { column, row }, ring, point, best);
  }
}
