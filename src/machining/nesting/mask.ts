import { offsetRegion, type Region, regionBounds } from '../../geometry/index.ts';

/** A run of cells, its end left out. */
export type Run = readonly [from: number, to: number];

/** What a shape covers of a grid that begins at its box's lower left corner: for each row of cells, from below, the runs it touches. */
export interface Mask {
  /** Row and column of the first cell, counted from the corner: the shape's room reaches beyond its box. */
  readonly row: number;
  readonly rows: readonly (readonly Run[])[];
  readonly width: number;
  readonly height: number;
}

/** Chord deviation of the room around a shape, in cells. */
const TOLERANCE = 0.05;

/**
 * A shape with half of the spacing around it, as rows of cells. A cell's row is half a cell from its middle line at most, so runs are those of the middle line
 * through the shape grown by half a cell more: shapes whose runs do not meet stand the spacing apart.
 */
export function maskOf(shape: Region, spacing: number, cell: number): Mask {
  const { minX, minY, maxX, maxY } = regionBounds(shape)!;
  const grown = offsetRegion(shape, spacing / 2 + (0.5 + TOLERANCE) * cell, { join: 'round', tolerance: TOLERANCE * cell });
  const box = regionBounds(grown)!;
  const [row, last] = [Math.floor((box.minY - minY) / cell), Math.ceil((box.maxY - minY) / cell)];
  const rows = Array.from({ length: last - row }, (_, i) => runsAt(grown, minY + (row + i + 0.5) * cell).map(([a, b]): Run => [Math.floor((a - minX) / cell), Math.ceil((b - minX) / cell)]));
  return { row, rows: rows.map(merged), width: maxX - minX, height: maxY - minY };
}

/** Where a level line lies inside a region, from left to right. */
function runsAt({ loops }: Region, y: number): [number, number][] {
  const crossings: number[] = [];
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i++) {
      const [a, b] = [loop.at(i - 1)!, loop[i]!];
      if (a.y <= y !== b.y <= y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
    }
  }
  crossings.sort((a, b) => a - b);
  return Array.from({ length: crossings.length >> 1 }, (_, k) => [crossings[2 * k]!, crossings[2 * k + 1]!]);
}

function merged(runs: readonly Run[]): Run[] {
  const joined: [number, number][] = [];
  for (const [from, to] of runs) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}
