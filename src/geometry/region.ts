import { type Box } from './box.ts';
import { isLoopInside } from './containment.ts';
import { type Point } from './point.ts';

/** The vertices of a closed polygon; the edge from last to first is implied, no vertex is repeated. */
export type Loop = readonly Point[];

/**
 * A part of the plane bounded by polygons that do not cross: outer loops counter-clockwise, holes clockwise.
 * Curved boundaries are chords within the tolerance of whoever made the region.
 */
export interface Region {
  readonly loops: readonly Loop[];
}

/** The region without a point. */
export const emptyRegion: Region = { loops: [] };

/** Whether a region has no area at all. */
export const isEmptyRegion = (region: Region): boolean => region.loops.every((loop) => loop.length < 3);

/** Signed area of a loop in mm2, positive when counter-clockwise (the shoelace formula of Meister and Gauss). */
export function loopArea(loop: Loop): number {
  const origin = loop[0];
  if (origin === undefined) return 0;
  let sum = 0;
  let last = origin;
  for (const point of loop) {
    // Relative to the first vertex: far from the origin the products would lose the area's digits.
    sum += (last.x - origin.x) * (point.y - origin.y) - (last.y - origin.y) * (point.x - origin.x);
    last = point;
  }
  return sum / 2;
}

/** Area of a region in mm2; holes count against it. */
export const regionArea = (region: Region): number => region.loops.reduce((sum, loop) => sum + loopArea(loop), 0);

/** The centre of area of a region; holes count against it. Undefined when it has no area. */
export function regionCentroid(region: Region): Point | undefined {
  const origin = region.loops[0]?.[0];
  const area = regionArea(region);
  if (origin === undefined || area === 0) return undefined;
  // Relative to one vertex, as for the area.
  const moments = region.loops.map((loop) => loopMoments(loop, origin));
  const sum = (axis: 'x' | 'y') => moments.reduce((total, moment) => total + moment[axis], 0);
  return { x: origin.x + sum('x') / area, y: origin.y + sum('y') / area };
}

/** First moments of the area inside a loop about an origin, mm3 (Green's theorem applied to each edge). */
function loopMoments(loop: Loop, origin: Point): Point {
  let x = 0, y = 0;
  loop.forEach((point, i) => {
    const next = loop[(i + 1) % loop.length]!;
    const [ax, ay, bx, by] = [point.x - origin.x, point.y - origin.y, next.x - origin.x, next.y - origin.y];
    const cross = ax * by - bx * ay;
    x += ((ax + bx) * cross) / 6;
    y += ((ay + by) * cross) / 6;
  });
  return { x, y };
}

/** Length of a loop in mm, the closing edge included. */
export function loopPerimeter(loop: Loop): number {
  let last = loop[loop.length - 1];
  let sum = 0;
  for (const point of loop) {
    sum += Math.hypot(point.x - last!.x, point.y - last!.y);
    last = point;
  }
  return sum;
}

/** Length of all boundaries of a region in mm, those of holes included. */
export const regionPerimeter = (region: Region): number =>
  region.loops.reduce((sum, loop) => sum + loopPerimeter(loop), 0);

/** The smallest box around some loops, or undefined when they have no points. */
export function loopsBounds(loops: readonly Loop[]): Box | undefined {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
  for (const loop of loops) {
    for (const { x, y } of loop) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return minX <= maxX ? { minX, minY, maxX, maxY } : undefined;
}

/** The smallest box around a region, or undefined when it is empty. */
export const regionBounds = (region: Region): Box | undefined => loopsBounds(region.loops);

interface Outer {
  readonly loop: Loop;
  readonly area: number;
  readonly bounds: Box;
  readonly holes: Loop[];
}

/**
 * The connected parts of a region, each one outer loop first and then its holes. A part that lies in a hole of
 * another is a part of its own. Order follows the outer loops. A hole outside every outer loop belongs to nothing and is left out.
 */
export function components(region: Region): Region[] {
  const loops = region.loops.filter((loop) => loop.length > 2).map((loop) => ({ loop, area: loopArea(loop) }));
  const outers = loops.filter(({ area }) => area > 0)
    .map(({ loop, area }): Outer => ({ loop, area, bounds: loopsBounds([loop])!, holes: [] }));
  const only = outers.length === 1 ? outers[0] : undefined;
  const bySize = [...outers].sort((a, b) => a.area - b.area);
  for (const { loop } of loops.filter(({ area }) => area < 0)) {
    const owner = only ?? smallestAround(bySize, loop);
    owner?.holes.push(loop);
  }
  return outers.map(({ loop, holes }) => ({ loops: [loop, ...holes] }));
}

function smallestAround(bySize: readonly Outer[], hole: Loop): Outer | undefined {
  const box = loopsBounds([hole])!;
  return bySize.find(({ bounds, loop }) => bounds.minX <= box.minX && bounds.maxX >= box.maxX
    && bounds.minY <= box.minY && bounds.maxY >= box.maxY && isLoopInside(hole, loop));
}
