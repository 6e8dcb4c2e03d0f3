import { offsetPath, type Path, polylinePath, type Point, type Point3, type Region } from '../../src/geometry/index.ts';
import { type DesignSurface } from '../../src/machining/proof/design.ts';
import { type Move } from '../../src/machining/job/pass.ts';
import { type ProofOptions, type ProvenProgram } from '../../src/machining/proof/prove.ts';
import { type Stock } from '../../src/machining/job/stock.ts';

export const STOCK: Stock = { width: 120, height: 80, thickness: 10, thicknessTolerance: 0.4, density: 1190, breakthrough: 0.3 };
/** Down through the thickest sheet and into the spoilboard. */
export const THROUGH = -10.7;
export const DEPTH = 6;
export const TOLERANCE = 0.02;

export const line = (x: number, y: number, z: number): Move => ({ kind: 'line', to: { x, y, z }, feed: 1000 });
export const rapid = (x: number, y: number, z: number): Move => ({ kind: 'rapid', to: { x, y, z } });
export const arc = (x: number, y: number, z: number, centre: Point, clockwise = false): Move =>
  ({ kind: 'arc', to: { x, y, z }, centre, clockwise, feed: 1000 });

/** Comes down by feed at the first point, follows the others at one height and leaves by a rapid. */
export function follow(points: readonly (readonly [number, number])[], z: number): Move[] {
  const [x, y] = points[0]!;
  const [lastX, lastY] = points[points.length - 1]!;
  return [rapid(x, y, 5), line(x, y, z), ...points.slice(1).map(([px, py]) => line(px, py, z)), rapid(lastX, lastY, 5)];
}

export const program = (cutterDiameter: number, ...moves: Move[]): ProvenProgram =>
  ({ start: { x: 0, y: 0, z: 20 }, moves, cutterDiameter, shift: [0, 0] });

export const openPath = (...points: readonly (readonly [number, number])[]): Path =>
  polylinePath(points.map(([x, y]) => ({ x, y })), false);

export const rectangle = (minX: number, minY: number, maxX: number, maxY: number): Region =>
  ({ loops: [[{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }]] });

/** The groove of this width along straight lines between points, with round ends and joins. */
export const tube = (width: number, ...points: readonly (readonly [number, number])[]): Region =>
  offsetPath(openPath(...points), width / 2, { cap: 'round', join: 'round', tolerance: TOLERANCE / 8 });

/** A 10 mm groove from (30, 40) to (90, 40), cut by a 6 mm cutter with one ring 2 mm from the centre line. */
export const GROOVE = tube(10, [30, 40], [90, 40]);
export const ring = (z: number, dy = 0): Move[] => [
  rapid(30, 38 + dy, 5), line(30, 38 + dy, z), line(90, 38 + dy, z), arc(90, 42 + dy, z, { x: 90, y: 40 + dy }),
  line(30, 42 + dy, z), arc(30, 38 + dy, z, { x: 30, y: 40 + dy }), rapid(30, 38 + dy, 5)];

export const design = (parts: Partial<DesignSurface> = {}): DesignSurface =>
  ({ stock: STOCK, channel: { region: GROOVE, depth: DEPTH, cutterDiameter: 6 }, holes: [], ...parts });

export const options = (parts: Partial<ProofOptions>): ProofOptions =>
  ({ design: design(), programs: [program(6, ...ring(-3), ...ring(-DEPTH))], cell: 0.1, tolerance: TOLERANCE, depthTolerance: 0.05, ...parts });

/** A way the same job may lie on the sheet. */
export interface Motion {
  readonly name: string;
  readonly point: (p: Point) => Point;
  readonly mirrored: boolean;
  /** Brings straight walls parallel to the proof's rows of samples, where areas are known to half a row. */
  readonly alongRows?: boolean;
}

const turn = (degrees: number, dx: number, dy: number, mirrored: boolean) => (p: Point): Point => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const x = mirrored ? -p.x : p.x;
  return { x: c * x - s * p.y + dx, y: s * x + c * p.y + dy };
};

/** On a sheet of 200 x 200 mm. */
export const MOTIONS: readonly Motion[] = [
  { name: 'as drawn', point: (p) => p, mirrored: false },
  { name: 'shifted by fractions of a cell', point: turn(0, 7.0317, 11.049, false), mirrored: false },
  { name: 'turned by 90 degrees', point: turn(90, 150, 10, false), mirrored: false },
  { name: 'turned by 33 degrees', point: turn(33, 60, 15, false), mirrored: false },
  { name: 'mirrored', point: turn(0, 150, 20, true), mirrored: true },
  { name: 'mirrored and turned along the rows of samples', point: turn(20.905, 140, 25, true), mirrored: true, alongRows: true },
];

export const movedRegion = (region: Region, { point, mirrored }: Motion): Region =>
  ({ loops: region.loops.map((loop) => (mirrored ? [...loop].reverse() : [...loop]).map(point)) });

export function movedMoves(moves: readonly Move[], { point, mirrored }: Motion): Move[] {
  const place = (p: Point3): Point3 => ({ ...point(p), z: p.z });
  return moves.map((move) => (move.kind === 'arc'
    ? { ...move, to: place(move.to), centre: point(move.centre), clockwise: move.clockwise !== mirrored } : { ...move, to: place(move.to) }));
}
