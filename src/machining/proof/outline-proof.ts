import { type Loop, offsetRegion, type Point } from '../../geometry/index.ts';
import { type DesignSurface } from './design.ts';
import { toFrame } from './frame.ts';
import { type DepthGrid } from './removal.ts';
import { throughDepth } from '../job/stock.ts';
import { type Tab } from '../job/tab.ts';
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

export function watchOutline(design: DesignSurface, tolerance: number, depthTolerance: number, cell: number): OutlineWatch {
  const probes = probesOf(design, tolerance, PITCH + cell).sort((a, b) => a.y - b.y);
  const through = depthTolerance - design.stock.thickness - design.stock.thicknessTolerance;
  const [gap, tabError] = [newTally(), newTally()];
  let next = 0;
  const judge = (probe: Probe, z: number): void => {
    // A tab that is cut away, or lies beyond the sheet, lacks its height. 32-bit heights are off by less than a micrometre.
    const error = probe.tab === undefined ? 0 : Math.abs(Math.max(z, -throughDepth(design.stock)) - probe.tab);
    if (probe.tab !== undefined) noteWorst(tabError, error > 1e-6 ? error : 0, probe.x, probe.y);
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

/** Probes along the board's boundary moved out by the cutter's radius; within `slack` of a tab's ends a sample may lie on either side. */
function probesOf({ outline, stock }: DesignSurface, tolerance: number, slack: number): Probe[] {
  if (!outline) return [];
  const radius = outline.cutterDiameter / 2;
  const ways = offsetRegion(outline.board, radius, { join: 'round', tolerance }).loops.map(placesAlong);
  const held = outline.tabs.map((tab) => ({ ...nearestPlace(ways, tab), tab }));
  return ways.flatMap((way) => way.places.flatMap(({ at, along, length }) => {
    const probe = { ...toFrame(at), length };
    const near = held.filter((hold) => hold.way === way)
      .map(({ tab, along: middle }) => ({ tab, apart: aroundLoop(way.length, along - middle) }))
      .find(({ tab, apart }) => apart <= tab.width / 2 + radius + slack);
    if (!near) return [probe];
    // Beside a tab's full height the round cutter leaves its flanks, where any height is right.
    return near.apart <= near.tab.width / 2 - slack ? [{ ...probe, tab: near.tab.height - stock.thickness }] : [];
  }));
}

/** One way of the cutter round the board: places at an even pitch and how far along it they are. */
interface Way {
  readonly length: number;
  readonly places: readonly { readonly at: Point; readonly along: number; readonly length: number }[];
}

function placesAlong(loop: Loop): Way {
  let travelled = 0;
  const places = loop.flatMap((from, i) => {
    const to = loop[(i + 1) % loop.length]!;
    const [start, span] = [travelled, apart(from, to)];
    travelled += span;
    const count = Math.max(1, Math.ceil(span / PITCH));
    return Array.from({ length: count }, (_, k) => {
      const share = (k + 0.5) / count;
      return { at: { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }, along: start + share * span, length: span / count };
    });
  });
  return { length: travelled, places };
}

/** The way a tab lies on, and how far along it. */
function nearestPlace(ways: readonly Way[], { centre }: Tab): { way?: Way; along: number } {
  let nearest: { way?: Way; along: number } = { along: 0 };
  let least = Infinity;
  for (const way of ways) {
    for (const { at, along } of way.places) {
      if (apart(at, centre) >= least) continue;
      least = apart(at, centre);
      nearest = { way, along };
    }
  }
  return nearest;
}

const aroundLoop = (length: number, along: number): number => Math.min(Math.abs(along), length - Math.abs(along));
const apart = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
