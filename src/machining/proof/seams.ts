import { type Box, distance, intersectBoxes, makeRegionIndex, type Point, type Region } from '../../geometry/index.ts';
import type { Channel } from '../job/channel.ts';
import { type Hole, holeEnds } from '../job/hole.ts';
import { displaceMoves, PROGRAM_START, replaceMoves, shiftMoves } from '../job/moves.ts';
import type { Move } from '../job/pass.ts';
import type { Displacement, Registration } from '../job/registration.ts';
import { placeOf, type SetUp } from '../job/setup.ts';
import type { Stock } from '../job/stock.ts';
import type { Seam, Tiling } from '../job/tiling.ts';
import { pinAngle, placingError } from '../registration/errors.ts';
import { neighboursAcross } from '../tiling/seam-line.ts';
import { beyondCapsule } from './capsule.ts';
import { type DepthGrid, GREATEST_CELLS, makeGrid, sweepMoves } from './removal.ts';

/** Moves in drawing coordinates, as one cutter makes them. */
export interface CutRun {
  readonly moves: readonly Move[];
  readonly cutterDiameter: number;
  /** Where the first of them begins. */
  readonly start: { readonly x: number; readonly y: number; readonly z: number };
}

export interface SeamDesign {
  readonly channel: Channel;
  readonly board: Region;
  readonly holes: readonly Hole[];
  readonly stock: Stock;
}

/** The largest difference between two cuts of one board, mm, and where. */
export interface Difference {
  readonly mm: number;
  readonly at?: Point;
}

/** The planned moves of a set-up's programs in drawing coordinates, any correction undone; displaced, in program coordinates, when the sheet lies so. */
export function runsOf({ shift, correction, programs }: SetUp, displacement?: Displacement): CutRun[] {
  const planned = (moves: readonly Move[]) => (correction ? replaceMoves(moves, correction) : moves);
  return programs.map(({ moves, cutter }) => ({
    moves: shiftMoves(displacement ? displaceMoves(planned(moves), displacement) : planned(moves), ...shift), cutterDiameter: cutter.diameter,
    start: { ...PROGRAM_START, x: shift[0], y: shift[1] },
  }));
}

/**
 * Cuts the board twice, on samples `cell` mm apart, and tells how far the cuts differ anywhere in it: the distance from the
 * nearest designed wall, or in depth, whichever is less. What lies outside the board is waste and does not count.
 */
export function compareCuts(one: readonly CutRun[], other: readonly CutRun[], design: SeamDesign, area: Box, cell: number, depthTolerance: number): Difference {
  const toWall = wallDistance(design);
  const board = makeRegionIndex(design.board);
  let worst: Difference = { mm: 0 };
  for (const box of bandsOf(area, cell)) {
    const [a, b] = [cutIn(box, cell, one), cutIn(box, cell, other)];
    forDifferences(a, b, depthTolerance, (at, apart) => {
      if (apart <= worst.mm || !board.contains(at)) return;
      const mm = Math.min(apart, toWall(at));
      if (mm > worst.mm) worst = { mm, at };
    });
  }
  return worst;
}

/** A grid takes at most this many samples at a time: 32 MB each. */
const BAND_CELLS = Math.min(GREATEST_CELLS, 2 ** 23);

function bandsOf({ minX, minY, maxX, maxY }: Box, cell: number): Box[] {
  if (!(maxX - minX > cell && maxY - minY > cell)) return [];
  const rows = Math.max(1, Math.floor(BAND_CELLS / Math.ceil((maxX - minX) / cell)));
  const count = Math.ceil((maxY - minY) / (rows * cell));
  return Array.from({ length: count }, (_, i) => ({ minX, maxX, minY: minY + i * rows * cell, maxY: Math.min(maxY, minY + (i + 1) * rows * cell) })).filter((box) => box.maxY - box.minY > cell / 2);
}

function cutIn(box: Box, cell: number, runs: readonly CutRun[]): DepthGrid {
  const grid = makeGrid(box, cell);
  for (const { start, moves, cutterDiameter } of runs) sweepMoves(grid, start, moves, cutterDiameter);
  return grid;
}

function forDifferences({ depth, columns, origin, cell }: DepthGrid, other: DepthGrid, tolerance: number, found: (at: Point, apart: number) => void): void {
  for (let i = 0; i < depth.length; i++) {
    const apart = Math.abs(depth[i]! - other.depth[i]!);
    if (apart > tolerance) found({ x: origin.x + ((i % columns) + 0.5) * cell, y: origin.y + (Math.floor(i / columns) + 0.5) * cell }, apart);
  }
}

/** Distance to the nearest wall that was designed: of the groove, of a hole, or the board's edge. */
function wallDistance({ channel, board, holes }: SeamDesign): (at: Point) => number {
  const regions = [channel.region, board].filter(({ loops }) => loops.length > 0).map(makeRegionIndex);
  const walls = holes.map((hole) => ({ ends: holeEnds(hole), radius: hole.diameter / 2 }));
  return (at) => Math.min(Infinity, ...regions.map((index) => index.distanceToBoundary(at)), ...walls.map((wall) => Math.abs(beyondCapsule(wall, at))));
}

/** What the worst registration does at a seam: the step as simulated. */
export interface SimulatedStep extends Difference {
  readonly seam: number;
}

/**
 * For each seam, cuts its lap once as planned and once with the set-ups beyond it displaced as far as their pins allow,
 * to both sides, and measures how far the cuts differ.
 */
export function simulateSteps(setups: readonly SetUp[], tiling: Tiling, registration: Registration, design: SeamDesign, cell: number, depthTolerance: number): SimulatedStep[] {
  const runs = (place: number, displacement?: Displacement) => setups.filter((setup, i) => placeOf(setup, i) === place).flatMap((setup) => runsOf(setup, displacement));
  return tiling.seams.map((seam, number) => {
    const found = neighboursAcross(tiling.tiles, seam).flatMap(([near, far]) => [1, -1].map((sign): Difference => {
      const area = lapOf(seam, tiling, near, far);
      const off = worstDisplacement(registration, far, seam.axis === 'x' ? [0, sign] : [sign, 0]);
      if (!area || !off) return { mm: 0 };
      return compareCuts([...runs(near), ...runs(far)], [...runs(near), ...runs(far, off)], design, area, cell, depthTolerance);
    }));
    return { seam: number, ...found.reduce((a, b) => (b.mm > a.mm ? b : a), { mm: 0 } as Difference) };
  });
}

function lapOf({ axis, at }: Seam, { tiles, lap }: Tiling, near: number, far: number): Box | undefined {
  const shared = intersectBoxes(tiles[near]!.core, tiles[far]!.core);
  return shared && (axis === 'x' ? { ...shared, minX: at - lap, maxX: at + lap } : { ...shared, minY: at - lap, maxY: at + lap });
}

/** Shifted along the seam by half the clearance and the holes' error, and turned about the first pin by twice that over the pin distance. */
function worstDisplacement(registration: Registration, setUp: number, [right, up]: readonly [number, number]): Displacement | undefined {
  const { pins, dowels } = registration;
  const [first, second] = dowels.filter(({ usedIn }) => usedIn === setUp).map(({ pin }) => pins[pin]!.at);
  if (!first || !second) return undefined;
  const error = placingError(registration);
  const angle = (right + up) * 2 * pinAngle(error, distance(first, second));
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { degrees: (angle * 180) / Math.PI, shift: [first.x - c * first.x + s * first.y + right * error, first.y - s * first.x - c * first.y + up * error] };
}

