import { type Box, boxSize, growBox, unionBoxes } from '../../geometry/box.ts';
import { movesReach } from '../../machining/job/moves.ts';
import type { Stock } from '../../machining/job/stock.ts';
import { type DepthGrid, makeGrid } from '../../machining/proof/removal.ts';
import { gridBox, makeCourse } from './removal-course.ts';
import { type CellWindow, shadeCells } from './shade.ts';
import type { SteppedProgram } from './steps.ts';

/** The sheet as a shaded relief after part of a program: RGBA rows from the top, and where they lie. */
export interface Relief {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
}

export interface ReliefMaker {
  /** The sheet after everything before `program`, and that program up to `seconds`; out of range counts as the nearest end. */
  readonly at: (program: number, seconds: number, dark: boolean) => Relief;
}

/** Cells along the longer side of the sheet. */
const RELIEF_CELLS = 1600;
/** Room around the cuts where the sheet is not known, mm. */
const MARGIN = 10;
/** A thinner strip of sheet than this part of its length is drawn wider. */
const THINNEST = 1e-3;

/** Follows programs as they cut a sheet; where the sheet is not known only the place they work at is shown. */
export function makeRelief(programs: readonly SteppedProgram[], stock: Pick<Stock, 'width' | 'height' | 'thickness'> | undefined): ReliefMaker {
  const box = proper(stock ? { minX: 0, minY: 0, maxX: stock.width, maxY: stock.height } : cutsBox(programs));
  const { width, height } = boxSize(box);
  const grid = makeGrid(box, Math.max(width, height) / RELIEF_CELLS);
  const course = makeCourse(programs, grid);
  const style = { deepest: deepest(programs), thickness: stock?.thickness ?? Infinity };
  const pixels = new Uint8ClampedArray(4 * grid.depth.length);
  let painted: boolean | undefined;
  return {
    at(program, seconds, dark) {
      const changed = course.go(program, seconds);
      const window = painted === dark ? changed && windowOf(grid, changed) : wholeWindow(grid);
      if (window) shadeCells(grid, { ...style, dark }, pixels, window);
      painted = dark;
      return { width: grid.columns, height: grid.rows, pixels: pixels.slice(), box: gridBox(grid) };
    },
  };
}

function cutsBox(programs: readonly SteppedProgram[]): Box {
  const boxes = programs.flatMap(({ steps, cutterDiameter }) => steps.flatMap(({ from, move }) => {
    if (from.z >= 0 && move.to.z >= 0) return [];
    const { min, max } = movesReach(from, [move]);
    return [growBox({ minX: min.x, minY: min.y, maxX: max.x, maxY: max.y }, cutterDiameter / 2)];
  }));
  return growBox(unionBoxes(boxes) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }, MARGIN);
}

/** The box with a breadth in both directions. */
function proper(box: Box): Box {
  const { width, height } = boxSize(box);
  const least = Math.max(width, height, MARGIN) * THINNEST;
  return { ...box, maxX: Math.max(box.maxX, box.minX + least), maxY: Math.max(box.maxY, box.minY + least) };
}

function deepest(programs: readonly SteppedProgram[]): number {
  let z = 0;
  for (const { steps } of programs) for (const { move } of steps) z = Math.min(z, move.to.z);
  return z < 0 ? -z : 1;
}

/** The cells whose shade a change within the box can alter: light looks one cell around. */
function windowOf({ origin, cell, columns, rows }: DepthGrid, box: Box): CellWindow {
  return {
    left: Math.max(0, Math.floor((box.minX - origin.x) / cell) - 1), right: Math.min(columns - 1, Math.ceil((box.maxX - origin.x) / cell) + 1),
    bottom: Math.max(0, Math.floor((box.minY - origin.y) / cell) - 1), top: Math.min(rows - 1, Math.ceil((box.maxY - origin.y) / cell) + 1),
  };
}

const wholeWindow = ({ columns, rows }: DepthGrid): CellWindow => ({ left: 0, right: columns - 1, bottom: 0, top: rows - 1 });
