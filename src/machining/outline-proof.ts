import { offsetRegion, type Point } from '../geometry/index.ts';
import { type DesignSurface } from './design.ts';
import { toFrame } from './frame.ts';
import { type DepthGrid } from './removal.ts';
import { newTally, noteWorst, placeOf } from './tally.ts';

/** How well the board is parted from the sheet. */
export interface OutlineProof {
  /** Length of the cutter's way round the board, mm, along which the sheet is not cut through although there is no tab. */
  readonly uncut: { readonly mm: number; readonly at?: Point };
  /** Largest difference between the height of a tab, over its full-height length, and its design. */
  readonly tabError: { readonly mm: number; readonly at?: Point };
}

/** A place on the middle of the cut round the board: the length it stands for and the heights between which it is right. */
interface Probe extends Point {
  readonly length: number;
  /** Height of the tab's top face, where a tab must stand. */
  readonly tab?: number;
}

/** Looks at the middle of the outline's cut, grid by grid as the sheet is gone through from bottom to top. */
export interface OutlineWatch {
  look(grid: DepthGrid): void;
  found(): OutlineProof;
}

/** Distance between probes, mm; well under the width of any cutter. */
const PITCH = 0.1;

export function watchOutline(design: DesignSurface, tolerance: number, depthTolerance: number): OutlineWatch {
  const probes = probesOf(design, tolerance).sort((a, b) => a.y - b.y);
  const through = depthTolerance - design.stock.thickness - design.stock.thicknessTolerance;
  const [gap, tabError] = [newTally(), newTally()];
  let next = 0;
  const judge = (probe: Probe, z: number): void => {
    if (probe.tab !== undefined) noteWorst(tabError, Math.abs(z - probe.tab), probe.x, probe.y);
    else if (z > through) {
      if (gap.mm === 0) [gap.x, gap.y] = [probe.x, probe.y];
      gap.mm += probe.length;
    }
  };
  return {
    look: (grid) => {
      const top = grid.origin.y + grid.rows * grid.cell;
      for (; next < probes.length && probes[next]!.y < top; next++) judge(probes[next]!, heightAt(grid, probes[next]!));
    },
    found: () => ({ uncut: { mm: gap.mm, ...placeOf(gap) }, tabError: { mm: tabError.mm, ...placeOf(tabError) } }),
  };
}

/** Height left at the sample nearest to a place; beyond the grid nothing is left. */
function heightAt({ origin, cell, columns, rows, depth }: DepthGrid, { x, y }: Point): number {
  const [column, row] = [Math.floor((x - origin.x) / cell), Math.floor((y - origin.y) / cell)];
  return column >= 0 && column < columns && row >= 0 && row < rows ? depth[row * columns + column]! : -Infinity;
}

/** Probes along the board's boundary moved out by the cutter's radius, but for the ends of tabs, where any height is right. */
function probesOf({ outline, stock }: DesignSurface, tolerance: number): Probe[] {
  if (!outline) return [];
  const radius = outline.cutterDiameter / 2;
  const way = offsetRegion(outline.board, radius, { join: 'round', tolerance });
  return way.loops.flatMap((loop) => loop.flatMap((from, i) => alongEdge(from, loop[(i + 1) % loop.length]!)))
    .flatMap(({ at, length }) => {
      const near = outline.tabs.find((tab) => apart(tab.centre, at) <= tab.width / 2 + radius + outline.tabRun);
      if (!near) return [{ ...toFrame(at), length }];
      return apart(near.centre, at) <= near.width / 2 - PITCH ? [{ ...toFrame(at), length, tab: near.height - stock.thickness }] : [];
    });
}

function alongEdge(from: Point, to: Point): { at: Point; length: number }[] {
  const length = apart(from, to);
  const count = Math.max(1, Math.ceil(length / PITCH));
  return Array.from({ length: count }, (_, k) => {
    const share = (k + 0.5) / count;
    return { at: { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }, length: length / count };
  });
}

const apart = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
