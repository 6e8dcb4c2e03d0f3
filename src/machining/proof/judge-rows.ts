import { type Point, type Region } from '../../geometry/index.ts';
import { type DesignSurface } from './design.ts';
import { capsuleOf } from './capsule.ts';
import { regionToFrame } from './frame.ts';
import { ALLOWANCE, BOARD, CHANNEL, CLASSES, HOLE, type Judge, type Tallies } from './judge.ts';
import { capsuleCrossings, rowCrossings, type RowCrossings } from './region-rows.ts';
import { type DepthGrid } from './removal.ts';
import { noteWorst, type Tally } from './tally.ts';

/** What differs by less than this, mm, is how 32-bit heights round. */
const ROUNDING = 1e-5;

export interface RowRegions {
  readonly sheet: Region;
  readonly board: Region;
  /** The board and the waste around it that may be cut. */
  readonly allowance: Region;
}

/** One row of samples: the part of it inside the sheet, in samples of the grid's row, and the height of the row. */
interface Row {
  readonly grid: DepthGrid;
  readonly base: number;
  readonly y: number;
  readonly from: number;
  readonly to: number;
}

/** Clears rows to untouched sheet (nothing where there is no sheet) and judges them afterwards; rows go upward, once each. */
export interface RowJudge {
  /** Readies a grid whose rows follow those of the grid before it. */
  clear(grid: DepthGrid): void;
  /** Judges the grid made ready last. Returns how many samples of the sheet it looked at. */
  judge(grid: DepthGrid): number;
}

/** Who judges, where faults go, and the sideways tolerance, mm. */
export interface Court {
  readonly judge: Judge;
  readonly tallies: Tallies;
  readonly tolerance: number;
}

export function makeRowJudge(design: DesignSurface, regions: RowRegions, court: Court): RowJudge {
  const sheet = rowCrossings(regionToFrame(regions.sheet));
  const layers: readonly (readonly [number, RowCrossings])[] = [
    [BOARD, rowCrossings(regionToFrame(regions.board))],
    [ALLOWANCE, rowCrossings(regionToFrame(regions.allowance))],
    [CHANNEL, rowCrossings(regionToFrame(design.channel?.region ?? { loops: [] }))],
  ];
  const holes = design.holes.map(capsuleOf);
  let rows: Row[] = [];
  const clear = (grid: DepthGrid): void => {
    grid.depth.fill(-Infinity);
    rows = sheetRows(grid, sheet);
    for (const { base, from, to } of rows) grid.depth.fill(0, base + from, base + to);
  };
  const judgeRow = (row: Row): number => {
    const events: number[] = [];
    for (const [bit, crossings] of layers) addEvents(events, row, bit, crossings(row.y));
    addEvents(events, row, HOLE, capsuleCrossings(holes, row.y));
    events.sort((a, b) => a - b);
    let kind = 0;
    let from = row.from;
    for (const event of events) {
      const index = Math.floor(event / CLASSES);
      if (index > from) judgeRun(row, from, index, kind, court);
      from = Math.max(from, index);
      kind ^= event % CLASSES;
    }
    judgeRun(row, from, row.to, kind, court);
    return row.to - row.from;
  };
  return { clear, judge: () => rows.reduce((sum, row) => sum + judgeRow(row), 0) };
}

function sheetRows(grid: DepthGrid, sheet: RowCrossings): Row[] {
  const rows: Row[] = [];
  for (let j = 0; j < grid.rows; j++) {
    const y = grid.origin.y + (j + 0.5) * grid.cell;
    const [left, right] = sheet(y);
    if (left === undefined || right === undefined) continue;
    rows.push({ grid, base: j * grid.columns, y, from: firstSample(grid, left), to: firstSample(grid, right) });
  }
  return rows;
}

/** Index of the first sample of a row at or right of x, kept within the row. */
const firstSample = ({ origin, cell, columns }: DepthGrid, x: number): number =>
  Math.min(columns, Math.max(0, Math.ceil((x - origin.x) / cell - 0.5)));

/** Adds the changes of class at crossings: the sample's index times `CLASSES` plus the bit, so that they sort as numbers. */
function addEvents(events: number[], { grid, from, to }: Row, bit: number, crossings: readonly number[]): void {
  for (const x of crossings) events.push(Math.min(to, Math.max(from, firstSample(grid, x))) * CLASSES + bit);
}

/** Looks at the samples [from, to) of a row, all of one class. */
function judgeRun(row: Row, from: number, to: number, kind: number, court: Court): void {
  const { depth } = row.grid;
  const { limits } = court.judge;
  const low = limits.low[kind]!;
  const high = limits.high[kind]!;
  for (let i = from; i < to; i++) {
    const z = depth[row.base + i]!;
    if (z < low || z > high) i = tallyFrom(row, i, to, kind, court);
  }
  if ((kind & (BOARD | CHANNEL | HOLE)) === (BOARD | CHANNEL)) measureFloor(row, from, to, court);
}

/**
 * Tallies sample i and, unseen, those after it that cannot change the verdict: the size of a fault changes at most as fast as
 * the place does, so they neither cross the tolerance nor exceed the worst so far. Returns the last sample dealt with.
 */
function tallyFrom(row: Row, i: number, to: number, kind: number, { judge, tallies, tolerance }: Court): number {
  const { depth, cell } = row.grid;
  const z = depth[row.base + i]!;
  const place = placeAt(row, i);
  const { low, spoilboard } = judge.limits;
  if (z < spoilboard && low[kind] === spoilboard) {
    noteSpoilboard(tallies.spoilboardCut, spoilboard - z, 1, place);
    return i;
  }
  const { tally, mm, sure } = z < low[kind]! ? judge.below(place, z, kind) : judge.above(place, z, kind);
  noteWorst(tally, mm, place.x, place.y);
  const alike = Math.floor(Math.min(sure, Math.abs(mm - tolerance), tally.mm - mm) / cell - 1e-6);
  const end = Math.min(to, i + 1 + Math.max(0, alike));
  let last = i;
  while (last + 1 < end && depth[row.base + last + 1] === z) last++;
  if (mm > tolerance) tally.samples += last - i + 1;
  if (z < spoilboard) noteSpoilboard(tallies.spoilboardCut, spoilboard - z, last - i + 1, place);
  return last;
}

function noteSpoilboard(tally: Tally, mm: number, samples: number, { x, y }: Point): void {
  tally.samples += samples;
  noteWorst(tally, mm, x, y);
}

/** The floor's largest errors, both ways, away from walls and holes, over what was cut at all. */
function measureFloor(row: Row, from: number, to: number, { judge, tallies, tolerance }: Court): void {
  const { tooDeep, tooShallow } = tallies;
  const { depth } = row.grid;
  for (let i = from; i < to; i++) {
    const error = judge.floor - depth[row.base + i]!;
    const tally = error > 0 ? tooDeep : tooShallow;
    if (Math.abs(error) <= Math.max(tally.mm, ROUNDING) || depth[row.base + i] === 0) continue;
    const place = placeAt(row, i);
    if (judge.floorDistance(place) > tolerance) noteWorst(tally, Math.abs(error), place.x, place.y);
  }
}

const placeAt = ({ grid, y }: Row, i: number): Point => ({ x: grid.origin.x + (i + 0.5) * grid.cell, y });
