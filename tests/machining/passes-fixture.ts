import { expect } from 'vitest';
import { applyToPath, growBox, makeRegionIndex, offsetPaths, offsetRegion, polylinePath, unionBoxes, type Affine, type Box, type Path, type Point, type Point3, type Region } from '../../src/geometry/index.ts';
import { type Cutter, type DepthGrid, type GrooveRequest, type Move, type Pass, makeGrid, moveLength, movesReach, pointOnArc, sweepMoves } from '../../src/machining/index.ts';

export const RETRACT = 2;
export const GREATEST_FEED = 4000;

export const mill = (diameter: number, changes: Partial<Cutter> = {}): Cutter => ({
  name: `${diameter} mm end mill`, diameter, flutes: 1, chipLoad: 0.1, spindleSpeed: 18000, feedRate: 1800, plungeFeed: 500,
  depthOfCut: 2.5, cuttingLength: 22, rampAngle: 3, ...changes,
});

export const polyline = (points: readonly (readonly [number, number])[], closed = false): Path =>
  polylinePath(points.map(([x, y]) => ({ x, y })), closed);

export const pointPath = (x: number, y: number): Path => ({ start: { x, y }, segments: [], closed: false });

export const circlePath = (x: number, y: number, radius: number): Path => ({
  start: { x: x + radius, y }, closed: true,
  segments: [{ kind: 'arc', centre: { x, y }, clockwise: false, end: { x: x - radius, y } }, { kind: 'arc', centre: { x, y }, clockwise: false, end: { x: x + radius, y } }],
});

/** A smooth curve that crosses itself, as one cubic. */
export const loopedCubic: Path = {
  start: { x: 0, y: 0 }, closed: false,
  segments: [{ kind: 'cubic', control1: { x: 110, y: 70 }, control2: { x: -40, y: 70 }, end: { x: 70, y: 0 } }],
};

export function grooveRequest(centreLines: readonly Path[], width: number, diameter: number, changes: Partial<GrooveRequest> = {}): GrooveRequest {
  const tolerance = changes.tolerance ?? 0.004;
  return {
    centreLines, width, depth: 6, tolerance, cutter: mill(diameter), stepover: 0.45, finishingAllowance: 0.2, direction: 'climb',
    retract: RETRACT, greatestFeed: GREATEST_FEED,
    region: offsetPaths(centreLines, width / 2, { cap: 'round', join: 'round', tolerance }), ...changes,
  };
}

export const placed = (paths: readonly Path[], affine: Affine): Path[] => paths.map((path) => applyToPath(affine, path));

/** Every move of every pass with the place it starts from. */
export function* placedMovesOf(passes: readonly Pass[]): Generator<{ readonly pass: Pass; readonly from: Point3; readonly move: Move }> {
  for (const pass of passes) {
    let from = pass.start;
    for (const move of pass.moves) {
      yield { pass, from, move };
      from = move.to;
    }
  }
}

/** Places on a move at most `spacing` apart, both ends included. */
export function placesOn(from: Point3, move: Move, spacing: number): Point3[] {
  const count = Math.max(1, Math.ceil(moveLength(from, move) / spacing));
  return Array.from({ length: count + 1 }, (_, i) => {
    const t = i / count;
    if (move.kind === 'arc') return pointOnArc(from, move, t);
    return { x: from.x + (move.to.x - from.x) * t, y: from.y + (move.to.y - from.y) * t, z: from.z + (move.to.z - from.z) * t };
  });
}

const flat = (from: Point3, move: Move): number =>
  move.kind === 'arc' ? moveLength({ ...from, z: 0 }, { ...move, to: { ...move.to, z: 0 } }) : Math.hypot(move.to.x - from.x, move.to.y - from.y);

/** What every pass keeps to, whatever it cuts: heights, feeds, arcs a controller accepts, and ramps no steeper than allowed. */
export function expectSoundPasses(passes: readonly Pass[], depth: number): void {
  expect(passes.filter(({ start, moves }) => start.z !== RETRACT || moves.length === 0)).toEqual([]);
  const faults: unknown[] = [];
  for (const { pass, from, move } of placedMovesOf(passes)) {
    const fault = faultOfMove(pass.cutter, from, move, depth);
    if (fault) faults.push({ fault, name: pass.name, from, move });
  }
  expect(faults).toEqual([]);
}

function faultOfMove(cutter: Cutter, from: Point3, move: Move, depth: number): string | undefined {
  const { to } = move;
  if (![to.x, to.y, to.z].every(Number.isFinite)) return 'not a place';
  if (to.z < -depth - 1e-9) return 'too deep';
  if (move.kind === 'rapid') return to.x === from.x && to.y === from.y ? undefined : 'rapid across';
  if (!(move.feed > 0 && move.feed <= GREATEST_FEED)) return 'feed';
  const along = flat(from, move);
  const drop = from.z - to.z;
  if (along > 1e-9 && drop / along > Math.tan((cutter.rampAngle * Math.PI) / 180) * (1 + 1e-6) + 1e-12) return 'too steep';
  if (drop > 1e-9 && (move.feed * drop) / Math.hypot(along, drop) > cutter.plungeFeed * (1 + 1e-6)) return 'down too fast';
  return move.kind === 'arc' ? faultOfArc(from, move) : undefined;
}

function faultOfArc(from: Point3, move: Extract<Move, { kind: 'arc' }>): string | undefined {
  const before = Math.hypot(from.x - move.centre.x, from.y - move.centre.y);
  const after = Math.hypot(move.to.x - move.centre.x, move.to.y - move.centre.y);
  if (Math.abs(before - after) > 1e-4) return 'radii differ';
  return flat(from, move) > Math.PI * before * (1 + 1e-6) ? 'more than half a turn' : undefined;
}

export function movesBox(passes: readonly Pass[], margin: number): Box {
  const boxes = passes.map(({ start, moves }) => {
    const { min, max } = movesReach(start, moves);
    return { minX: min.x, minY: min.y, maxX: max.x, maxY: max.y };
  });
  return growBox(unionBoxes(boxes) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 }, margin);
}

/** Where a grid cell's middle lies. */
const cellPlace = (box: Box, cell: number, columns: number, i: number): Point => ({
  x: box.minX + ((i % columns) + 0.5) * cell, y: box.minY + (Math.floor(i / columns) + 0.5) * cell,
});

/**
 * Straight ways down that meet material, as the cutter runs the passes in their order: how much of the cutter's face,
 * short of `rim` mm at its edge, was not free.
 */
export function plungesIntoMaterial(passes: readonly Pass[], cell = 0.25, rim = 0.3): { readonly at: Point3; readonly thickness: number }[] {
  const box = movesBox(passes, 10);
  const grid = makeGrid(box, cell);
  const found: { at: Point3; thickness: number }[] = [];
  for (const { pass, from, move } of placedMovesOf(passes)) {
    if (flat(from, move) < 1e-9 && move.to.z < Math.min(0, from.z)) {
      const thickness = greatestUnder(grid, box, from, pass.cutter.diameter / 2 - rim, move.to.z);
      if (thickness > 1e-3) found.push({ at: move.to, thickness });
    }
    sweepMoves(grid, from, [move], pass.cutter.diameter);
  }
  return found;
}

/** Largest thickness of material above `z` within `radius` of a place. */
function greatestUnder({ depth, columns, cell }: DepthGrid, box: Box, { x, y }: Point, radius: number, z: number): number {
  let thickness = 0;
  for (let row = Math.floor((y - radius - box.minY) / cell); row <= (y + radius - box.minY) / cell; row++) {
    for (let column = Math.floor((x - radius - box.minX) / cell); column <= (x + radius - box.minX) / cell; column++) {
      const i = row * columns + column;
      const place = cellPlace(box, cell, columns, i);
      if (Math.hypot(place.x - x, place.y - y) <= radius) thickness = Math.max(thickness, depth[i]! - z);
    }
  }
  return thickness;
}

export interface Cut {
  /** Farthest a cut reaches outside the region, mm. */
  readonly outside: number;
  /** Largest thickness left above `depth` inside the part of the region that the cutter opens, and where. */
  readonly left: number;
  readonly leftAt?: Point;
  readonly rapids: number;
}

/** What the passes make of a region to be cut to `depth`, on a grid. `slack`: tolerances, sideways. */
export function cutOf(passes: readonly Pass[], region: Region, diameter: number, depth: number, slack: number, cell = 0.2): Cut {
  const box = movesBox(passes, diameter + 2);
  const grid = makeGrid(box, cell);
  let rapids = 0;
  for (const pass of passes) rapids += sweepMoves(grid, pass.start, pass.moves, diameter).length;
  const options = { join: 'round', tolerance: 0.002 } as const;
  const index = makeRegionIndex(region);
  const room = offsetRegion(region, slack - diameter / 2, options);
  const axis = room.loops.length > 0 ? makeRegionIndex(room) : undefined;
  const isOpened = (place: Point) => axis !== undefined && (axis.contains(place) || axis.distanceToBoundary(place) < diameter / 2 - 2 * slack);
  let [outside, left] = [0, 0];
  let leftAt: Point | undefined;
  for (let i = 0; i < grid.depth.length; i++) {
    const place = cellPlace(box, cell, grid.columns, i);
    const cut = grid.depth[i]!;
    const within = index.contains(place);
    if (cut < 0 && !within) outside = Math.max(outside, index.distanceToBoundary(place));
    if (within && depth + cut > Math.max(left, 1e-3) && isOpened(place)) [left, leftAt] = [depth + cut, place];
  }
  return { outside, left, rapids, ...(leftAt && { leftAt }) };
}
