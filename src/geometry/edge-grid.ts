import { type Box } from './box.ts';
import { type Point } from './point.ts';
import { loopsBounds, type Region } from './region.ts';

/**
 * The edges of a region sorted into square cells. Coordinates and lists are flat typed arrays: edge `e` runs from
 * (ax[e], ay[e]) to (bx[e], by[e]); the edges that touch cell `c` are items[starts[c]] up to items[starts[c + 1]].
 */
export interface EdgeGrid {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly originX: number;
  readonly originY: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly starts: Int32Array;
  readonly items: Int32Array;
}

/** About as many cells as edges keep both the lists and the walks between them short; the bounds keep odd shapes in hand. */
const LEAST_CELLS = 16;
const MOST_CELLS = 1_000_000;

/** Edges as flat coordinates, before they are sorted. */
export type Edges = Pick<EdgeGrid, 'count' | 'ax' | 'ay' | 'bx' | 'by'>;

function edgesOf(region: Region): Edges {
  const count = region.loops.reduce((sum, loop) => sum + loop.length, 0);
  const [ax, ay, bx, by] = [new Float64Array(count), new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  let e = 0;
  for (const loop of region.loops) {
    let last = loop[loop.length - 1];
    for (const next of loop) {
      ax[e] = last!.x;
      ay[e] = last!.y;
      bx[e] = next.x;
      by[e] = next.y;
      last = next;
      e += 1;
    }
  }
  return { count, ax, ay, bx, by };
}

/** Straight segments as edges, in their order. */
export function segmentEdges(segments: readonly { readonly from: Point; readonly to: Point }[]): Edges {
  const flat = (coordinate: (segment: (typeof segments)[number]) => number) => Float64Array.from(segments, coordinate);
  return { count: segments.length, ax: flat(({ from }) => from.x), ay: flat(({ from }) => from.y), bx: flat(({ to }) => to.x), by: flat(({ to }) => to.y) };
}

function layout(count: number, box: Box): Pick<EdgeGrid, 'originX' | 'originY' | 'cell' | 'columns' | 'rows'> {
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const wanted = Math.min(MOST_CELLS, Math.max(LEAST_CELLS, count));
  // A long thin region gets cells along its length only, hence the second bound.
  const cell = Math.max(Math.sqrt((width * height) / wanted), Math.max(width, height) / wanted, 1e-6);
  // A rim keeps every edge clear of the border; its odd width keeps cell borders off round coordinates.
  const rim = cell * 0.5137;
  return {
    originX: box.minX - rim, originY: box.minY - rim, cell,
    columns: Math.floor((width + 2 * rim) / cell) + 1, rows: Math.floor((height + 2 * rim) / cell) + 1,
  };
}

/** The column of a cell for a coordinate, held within the grid. */
export const columnOf = (grid: Pick<EdgeGrid, 'originX' | 'cell' | 'columns'>, x: number): number =>
  Math.min(grid.columns - 1, Math.max(0, Math.floor((x - grid.originX) / grid.cell)));

/** The row of a cell for a coordinate, held within the grid. */
export const rowOf = (grid: Pick<EdgeGrid, 'originY' | 'cell' | 'rows'>, y: number): number =>
  Math.min(grid.rows - 1, Math.max(0, Math.floor((y - grid.originY) / grid.cell)));

/** Visits the cells an edge touches: row by row, the columns its part in that row spans, widened by a hair against rounding. */
function visitCells(edges: Edges, e: number, place: ReturnType<typeof layout>, visit: (cell: number) => void): void {
  const ax = edges.ax[e]!, ay = edges.ay[e]!, bx = edges.bx[e]!, by = edges.by[e]!;
  const hair = place.cell * 1e-6;
  const from = rowOf(place, Math.min(ay, by) - hair);
  const to = rowOf(place, Math.max(ay, by) + hair);
  const slope = by === ay ? 0 : (bx - ax) / (by - ay);
  const left = Math.min(ax, bx);
  const right = Math.max(ax, bx);
  for (let row = from; row <= to; row += 1) {
    const bottom = place.originY + row * place.cell - hair;
    const atBottom = ax + (bottom - ay) * slope;
    const atTop = ax + (bottom + place.cell + 2 * hair - ay) * slope;
    const low = by === ay ? left : Math.max(left, Math.min(atBottom, atTop));
    const high = by === ay ? right : Math.min(right, Math.max(atBottom, atTop));
    const last = columnOf(place, high + hair);
    for (let column = columnOf(place, low - hair); column <= last; column += 1) visit(row * place.columns + column);
  }
}

/** Sorts the edges of a region into cells, or gives undefined for a region without edges. */
export function makeEdgeGrid(region: Region): EdgeGrid | undefined {
  const box = loopsBounds(region.loops);
  return box && sortEdges(edgesOf(region), box);
}

/** Sorts edges that all lie within a box into cells. */
export function sortEdges(edges: Edges, box: Box): EdgeGrid {
  const place = layout(edges.count, box);
  const starts = new Int32Array(place.columns * place.rows + 1);
  for (let e = 0; e < edges.count; e += 1) visitCells(edges, e, place, (cell) => { starts[cell + 1]! += 1; });
  for (let c = 1; c < starts.length; c += 1) starts[c]! += starts[c - 1]!;
  const items = new Int32Array(starts[starts.length - 1]!);
  const next = starts.slice();
  for (let e = 0; e < edges.count; e += 1) visitCells(edges, e, place, (cell) => { items[next[cell]!++] = e; });
  return { ...edges, ...place, starts, items };
}

/** The point of edge `e` nearest to a point. */
export function nearestOnEdge(grid: EdgeGrid, e: number, point: Point): Point {
  const ax = grid.ax[e]!, ay = grid.ay[e]!;
  const dx = grid.bx[e]! - ax;
  const dy = grid.by[e]! - ay;
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((point.x - ax) * dx + (point.y - ay) * dy) / squared;
  const t = along < 0 ? 0 : along > 1 ? 1 : along;
  return { x: ax + t * dx, y: ay + t * dy };
}
