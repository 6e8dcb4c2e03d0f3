import { type Box } from '../../geometry/box.ts';
import { type Point, type Point3 } from '../../geometry/point.ts';
import { type Move } from '../job/pass.ts';
import { lowestOver, SPAN_NUMBERS, swathOf, swathSpans, type Swath } from './swath.ts';

/**
 * Material seen from above as square cells. Each holds the height of what is left at the cell's middle, mm below the top
 * face: 0 untouched, negative cut. Row by row from the lower left corner `origin`; 32-bit floats, so 30 mm is kept to 2e-6 mm.
 */
export interface DepthGrid {
  readonly origin: Point;
  /** Side of a cell, mm. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly depth: Float32Array;
}

/** A rapid that went through material: which of the moves, the place and thickness (mm) of the most it met. */
export interface RapidCut {
  readonly move: number;
  readonly at: Point;
  readonly thickness: number;
}

/** Most cells of one grid: 256 MB. */
export const GREATEST_CELLS = 2 ** 26;

/** A rapid that takes off less than this, mm, runs along a floor that is already there. */
const GRAZE = 0.001;

/** Untouched material over a box. Throws a RangeError when the grid would be empty or larger than `GREATEST_CELLS`. */
export function makeGrid(box: Box, cell: number): DepthGrid {
  const columns = Math.ceil((box.maxX - box.minX) / cell);
  const rows = Math.ceil((box.maxY - box.minY) / cell);
  if (!(cell > 0) || !(columns > 0) || !(rows > 0) || columns * rows > GREATEST_CELLS) {
    throw new RangeError(`A grid needs 1 to ${GREATEST_CELLS} cells, not ${columns} x ${rows} of ${cell} mm.`);
  }
  return { origin: { x: box.minX, y: box.minY }, cell, columns, rows, depth: new Float32Array(columns * rows) };
}

/**
 * Takes away what a flat-ended cutter of this diameter (mm) sweeps along the moves, changing the grid in place. Exact at
 * every cell's middle for straight, sloping, circular and helical moves; nothing is stamped. Tells the rapids that met material.
 */
export function sweepMoves(grid: DepthGrid, start: Point3, moves: readonly Move[], cutterDiameter: number): RapidCut[] {
  const cuts: RapidCut[] = [];
  moves.forEach((move, index) => {
    const swath = swathOf(moves[index - 1]?.to ?? start, move, cutterDiameter / 2);
    if (!swath) return;
    const met = move.kind === 'rapid' ? removeByRapid(grid, swath) : undefined;
    if (move.kind !== 'rapid') removeSwath(grid, swath);
    if (met) cuts.push({ move: index, ...met });
  });
  return cuts;
}

/** Lowers every covered cell to the swath's lowest z over it. */
export function removeSwath(grid: DepthGrid, swath: Swath): void {
  const { depth } = grid;
  const level = Math.fround(swath.low);
  const flat = swath.high === swath.low;
  forCoveredRuns(grid, swath, (from, to, x, y) => {
    if (!flat) return lowerSloping(grid, swath, from, to, x, y);
    for (let i = from; i <= to; i++) if (depth[i]! > level) depth[i] = level;
  });
}

function lowerSloping({ depth, cell }: DepthGrid, swath: Swath, from: number, to: number, x: number, y: number): void {
  for (let i = from; i <= to; i++) {
    // Most cells under a ramp are cut deeper by the moves before or after it.
    if (depth[i]! <= swath.low) continue;
    const level = lowestOver(swath, x + (i - from) * cell, y);
    if (depth[i]! > level) depth[i] = level;
  }
}

/** As `removeSwath`, and tells where the cutter took off most, if it took off anything. */
export function removeByRapid(grid: DepthGrid, swath: Swath): { at: Point; thickness: number } | undefined {
  const { depth, cell } = grid;
  let thickness = GRAZE;
  let at: Point | undefined;
  forCoveredRuns(grid, swath, (from, to, x, y) => {
    for (let i = from; i <= to; i++) {
      const place = x + (i - from) * cell;
      const level = lowestOver(swath, place, y);
      if (depth[i]! - level > thickness) {
        thickness = depth[i]! - level;
        at = { x: place, y };
      }
      if (depth[i]! > level) depth[i] = level;
    }
  });
  return at && { at, thickness };
}

/** Calls `visit` with first and last index, and the first cell's middle, of every run of covered cells. */
function forCoveredRuns(grid: DepthGrid, swath: Swath, visit: (from: number, to: number, x: number, y: number) => void): void {
  const { cell, columns, rows, origin } = grid;
  const [firstX, firstY] = [origin.x + cell / 2, origin.y + cell / 2];
  const spans = new Float64Array(SPAN_NUMBERS);
  const firstRow = Math.max(0, Math.ceil((swath.box.minY - firstY) / cell));
  const lastRow = Math.min(rows - 1, Math.floor((swath.box.maxY - firstY) / cell));
  for (let row = firstRow; row <= lastRow; row++) {
    const y = firstY + row * cell;
    const count = swathSpans(swath, y, spans);
    for (let k = 0; k < count; k += 2) {
      const from = Math.max(0, Math.ceil((spans[k]! - firstX) / cell));
      const to = Math.min(columns - 1, Math.floor((spans[k + 1]! - firstX) / cell));
      if (from <= to) visit(row * columns + from, row * columns + to, firstX + from * cell, y);
    }
  }
}
