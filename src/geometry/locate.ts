import { type Location, windingAt } from './containment.ts';
import { type EdgeGrid, makeEdgeGrid } from './edge-grid.ts';
import { firstCrossing } from './grid-ray.ts';
import { gapMap, nearestInGrid } from './grid-nearest.ts';
import { windingMap, windingWithin } from './grid-winding.ts';
import { UNITS_PER_MM } from './kernel.ts';
import { type Point, type Vector } from './point.ts';
import { type Region } from './region.ts';

/** A point this near to a boundary, in mm, is on it: boundaries are rounded to kernel units, so nearer is not known. */
const ON_BOUNDARY_MM = 0.5 / UNITS_PER_MM;

/** Where a point lies with respect to a region. Looks at every edge: for many points of one region make an index. */
export function pointInRegion(region: Region, point: Point): Location {
  const { winding, on } = windingAt(region.loops, point, ON_BOUNDARY_MM);
  return on ? 'on' : winding === 0 ? 'outside' : 'inside';
}

/** Answers many questions about one region quickly. Lengths in mm. */
export interface RegionIndex {
  /** Whether a point is inside. Points within rounding of the boundary may go either way. */
  readonly contains: (point: Point) => boolean;
  /** The point of the boundary nearest to a point; undefined when the region is empty. */
  readonly nearestBoundaryPoint: (point: Point) => Point | undefined;
  /** Distance to the boundary, not negative on either side; Infinity when the region is empty. */
  readonly distanceToBoundary: (point: Point) => number;
  /**
   * Distance from a point to the first boundary its ray in a direction (of any length but zero) meets, touched corners included; Infinity when
   * it meets none. A boundary the ray starts on, within ON_BOUNDARY_MM, does not count.
   */
  readonly castRay: (point: Point, direction: Vector) => number;
}

const emptyIndex: RegionIndex = {
  contains: () => false, nearestBoundaryPoint: () => undefined, distanceToBoundary: () => Infinity, castRay: () => Infinity,
};

/** Builds an index in time proportional to the edges and the cells they cross; answers look at a few cells each. */
export function makeRegionIndex(region: Region): RegionIndex {
  const grid = makeEdgeGrid(region);
  if (grid === undefined) return emptyIndex;
  const windings = windingMap(grid);
  const gaps = gapMap(grid);
  return {
    contains: (point) => isWithin(grid, point) && windingWithin(grid, windings, point) !== 0,
    nearestBoundaryPoint: (point) => nearestInGrid(grid, gaps, point),
    distanceToBoundary: (point) => {
      const nearest = nearestInGrid(grid, gaps, point);
      return Math.hypot(nearest.x - point.x, nearest.y - point.y);
    },
    castRay: (point, direction) => firstCrossing(grid, point, direction, ON_BOUNDARY_MM),
  };
}

/** Whether a point is in the grid at all; every edge is. */
function isWithin(grid: EdgeGrid, { x, y }: Point): boolean {
  return x >= grid.originX && x < grid.originX + grid.columns * grid.cell
    && y >= grid.originY && y < grid.originY + grid.rows * grid.cell;
}
