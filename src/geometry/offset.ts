import { attemptRegion, subtractRegion, unionRegions } from './boolean.ts';
import { flattenPath } from './flatten.ts';
import { COORDINATE_LIMIT_MM, UNITS_PER_MM } from './kernel.ts';
import { type Path } from './path.ts';
import { type Point } from './point.ts';
import { type OffsetCap, type OffsetJoin, type RawOffset, rawSide } from './raw-offset.ts';
import { components, emptyRegion, type Loop, type Region, regionBounds } from './region.ts';
import { simplifyLoop, simplifyPolyline } from './simplify.ts';
import { type Chain, isGentle, strokeRegion } from './stroke.ts';

/** How a region's boundary is offset. */
export interface RegionOffsetOptions {
  /** How outside corners are filled; the inside of a corner is always sharp. */
  readonly join: OffsetJoin;
  /** Greatest ratio of a miter's length to the stroke width, at least 1; a corner beyond it is bevelled. 4 when absent. */
  readonly miterLimit?: number;
  /** Greatest distance, in mm, between the outline and the true one, inside or outside; below 0.001 it is taken as that. */
  readonly tolerance: number;
}

/** How a path is offset. */
export interface PathOffsetOptions extends RegionOffsetOptions {
  /** How the ends of an open path are closed. */
  readonly cap: OffsetCap;
}

/** As in SVG: miters up to corners of 29 degrees. */
const USUAL_MITER_LIMIT = 4;

/**
 * Finer tolerances, in mm, are taken as this one: ten kernel units. Below it the directions of short edges are rounding noise, and every
 * noisy corner would have to be joined.
 */
const FINEST_TOLERANCE_MM = 10 / UNITS_PER_MM;

// The tolerance is spent in four places that add up: chords for the curve, joins and caps, points left out, points merged.
const FLATTEN_SHARE = 0.45;
const JOIN_SHARE = 0.45;
const SIMPLIFY_SHARE = 0.05;
const MERGE_SHARE = 0.05;

function checkOptions(distance: number, options: RegionOffsetOptions): void {
  if (!(Math.abs(distance) <= COORDINATE_LIMIT_MM)) {
    throw new RangeError(`offset distance ${distance} mm: expected at most ${COORDINATE_LIMIT_MM}`);
  }
  if (!(options.tolerance > 0 && options.tolerance < Infinity)) {
    throw new RangeError(`tolerance ${options.tolerance} mm: expected a number above 0`);
  }
  if (options.miterLimit !== undefined && !(options.miterLimit >= 1)) {
    throw new RangeError(`miter limit ${options.miterLimit}: expected at least 1`);
  }
}

const effective = (tolerance: number): number => Math.max(tolerance, FINEST_TOLERANCE_MM);

function rawOf(distance: number, { join, miterLimit, tolerance }: RegionOffsetOptions): RawOffset {
  return { distance, join, miterLimit: miterLimit ?? USUAL_MITER_LIMIT, tolerance: effective(tolerance) * JOIN_SHARE };
}

/** Drops points within `reach` of the point kept before them, because the direction of so short an edge is noise. The last point stays. */
function mergePoints(points: readonly Point[], closed: boolean, reach: number): Point[] {
  const kept: Point[] = [];
  const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= reach;
  for (const point of points) if (kept.length === 0 || !near(kept[kept.length - 1]!, point)) kept.push(point);
  const last = points[points.length - 1];
  if (closed) while (kept.length > 1 && near(kept[kept.length - 1]!, kept[0]!)) kept.pop();
  else if (last !== undefined && kept.length > 1) {
    kept[kept.length - 1] = last;
    if (kept.length > 2 && near(kept[kept.length - 2]!, last)) kept.splice(kept.length - 2, 1);
  }
  return kept;
}

/** The points of a chain that matter at a tolerance. */
function chainOf(points: readonly Point[], closed: boolean, tolerance: number): Chain {
  const fewer = (closed ? simplifyLoop : simplifyPolyline)(points, tolerance * SIMPLIFY_SHARE);
  return { points: mergePoints(fewer, closed, tolerance * MERGE_SHARE), closed };
}

const reversed = (points: readonly Point[]): Point[] => [...points].reverse();

/**
 * The stroke of half-width `distance` (mm, not negative) along a path. A closed path gives the ring to both of its sides; a path
 * without length gives a disc under round caps, an upright square under square caps and nothing under butt caps, as in SVG.
 * Every part may overlap any other. The outline is within `tolerance` of the true one, on either side, and one kernel unit.
 */
export function offsetPath(path: Path, distance: number, options: PathOffsetOptions): Region {
  checkOptions(distance, options);
  if (distance <= 0) return emptyRegion;
  const tolerance = effective(options.tolerance);
  const chain = chainOf(flattenPath(path, tolerance * FLATTEN_SHARE), path.closed, tolerance);
  return strokeRegion(chain, options.cap, rawOf(distance, options));
}

/** The union of the strokes of half-width `distance` along paths: each stroke is made on its own, then they are joined. */
export function offsetPaths(paths: readonly Path[], distance: number, options: PathOffsetOptions): Region {
  return unionRegions(paths.map((path) => offsetPath(path, distance, options)));
}

/** A raw boundary moved by a signed distance. Moving inwards subtracts exactly what moving outwards, seen from the other side, would add. */
function movedLoops(chains: readonly Chain[], distance: number, raw: RawOffset): Loop[] {
  return chains.map(({ points }) => (distance > 0 ? rawSide(points, raw) : reversed(rawSide(reversed(points), raw))));
}

/** The same by way of the stroke along the boundary, for boundaries that fold over too often to be moved in one go. */
function movedByStroke(component: Region, chains: readonly Chain[], distance: number, raw: RawOffset): Region {
  const rim = unionRegions(chains.map((chain) => strokeRegion(chain, 'butt', raw)));
  return distance > 0 ? unionRegions([component, rim]) : subtractRegion(component, rim);
}

function offsetComponent(component: Region, distance: number, options: RegionOffsetOptions): Region {
  const { minX, minY, maxX, maxY } = regionBounds(component)!;
  if (-2 * distance >= Math.min(maxX - minX, maxY - minY)) return emptyRegion;
  const raw = rawOf(Math.abs(distance), options);
  const chains = component.loops.map((loop) => chainOf(loop, true, effective(options.tolerance)));
  const moved = chains.every((chain) => isGentle(chain, raw.distance))
    ? attemptRegion(movedLoops(chains, distance, raw), 'positive') : undefined;
  return moved ?? movedByStroke(component, chains, distance, raw);
}

/**
 * A region grown (distance above 0) or shrunk (below 0) by a distance in mm. The boundary is within `tolerance` of the true
 * parallel of the given polygons, on either side, and one kernel unit. Works component by component.
 */
export function offsetRegion(region: Region, distance: number, options: RegionOffsetOptions): Region {
  checkOptions(distance, options);
  if (distance === 0) return region;
  const parts = components(region).map((part) => offsetComponent(part, distance, options));
  return distance > 0 ? unionRegions(parts) : { loops: parts.flatMap(({ loops }) => loops) };
}
