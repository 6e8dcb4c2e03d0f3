import { type Box, offsetPaths, type Path, type Region } from '../../src/geometry/index.ts';
import { groovePasses, type Hole, holePasses, orderPasses, outlinePasses, type Pass, type Seam, type Stock, type Tab, type Tile, type Tiling } from '../../src/machining/index.ts';
import { mill, RETRACT, GREATEST_FEED } from './passes-fixture.ts';

export const CUTTER = mill(6);
export const LAP = 6;
export const TOLERANCE = 0.004;

export interface Job {
  readonly stock: Stock;
  readonly centreLines: readonly Path[];
  readonly region: Region;
  readonly board: Region;
  readonly holes: readonly Hole[];
}

export const jobOf = (stock: Stock, centreLines: readonly Path[], board: Region, holes: readonly Hole[] = [], width = 10): Job =>
  ({ stock, centreLines, board, holes, region: offsetPaths(centreLines, width / 2, { cap: 'round', join: 'round', tolerance: TOLERANCE }) });

const cores = (seams: readonly number[], end: number): (readonly [number, number])[] => [0, ...seams].map((at, i) => [at, seams[i] ?? end]);

/** Seams where they are put, for sheets of any size; set-ups row by row. */
export function tilingAt({ width, height }: Pick<Stock, 'width' | 'height'>, x: readonly number[], y: readonly number[], lap = LAP): Tiling {
  const rows = cores(y, height), columns = cores(x, width);
  const tiles = rows.flatMap(([minY, maxY], row) => columns.map(([minX, maxX], column): Tile => {
    const core: Box = { minX, minY, maxX, maxY };
    const window: Box = { minX: minX - (column > 0 ? lap : 0), minY: minY - (row > 0 ? lap : 0), maxX: maxX + (column < x.length ? lap : 0), maxY: maxY + (row < y.length ? lap : 0) };
    return { name: `set-up ${row * columns.length + column + 1}`, column, row, core, window, shift: [column > 0 ? window.minX : 0, row > 0 ? window.minY : 0] };
  }));
  const seam = (axis: Seam['axis']) => (at: number): Seam => ({ axis, at, crossings: [], cost: 0 });
  return { tiles, seams: [...x.map(seam('x')), ...y.map(seam('y'))], lap, travel: [width, height] };
}

/** All passes of a job, in one set-up or in those of a tiling. */
export function passesOf({ stock, centreLines, region, board, holes }: Job, tiling?: Tiling, finishingAllowance = 0.2, width = 10, depth = 6): { readonly passes: Pass[]; readonly tabs: readonly Tab[] } {
  const machine = { cutter: CUTTER, retract: RETRACT, greatestFeed: GREATEST_FEED, direction: 'climb' as const, ...(tiling && { tiling }) };
  const groove = groovePasses({ ...machine, centreLines, region, width, depth, tolerance: TOLERANCE, stepover: 0.4, finishingAllowance });
  const bored = holePasses({ ...machine, holes, throughDepth: stock.thickness + stock.thicknessTolerance + stock.breakthrough, peckDepth: 3 });
  const outline = outlinePasses({ ...machine, region: board, stock, tabs: { pitch: 120, width: 8, height: stock.thickness / 4 }, leadIn: 4, finishingAllowance, tolerance: 0.002 });
  if (!groove.ok || !bored.ok || !outline.ok) throw new Error(JSON.stringify([groove, bored, outline]));
  return { passes: orderPasses([...groove.passes, ...bored.passes, ...outline.passes], { x: 0, y: 0 }), tabs: outline.tabs };
}
