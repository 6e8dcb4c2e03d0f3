import { makeRegionIndex, offsetRegion, type Point, type Region } from '../../geometry/index.ts';
import { regionToFrame } from './frame.ts';

/**
 * How deep (mm) a point lies inside what a cutter can reach of a channel, negative outside; never more than the true
 * distance to the boundary of the reachable part.
 */
export type ReachDepth = (point: Point) => number;

/**
 * Whether the second, eased erosion may speak is decided this many tolerances outside what the exact one reaches: an eased
 * cutter gets further into a corner by 1 / sin(half its angle) - 1 tolerances, which is less for corners above 11 degrees.
 */
const CORNER_ZONE = 10;

/**
 * The reachable part is the channel opened by the cutter's disc (eroded, then dilated): points within the radius of some
 * place where the whole disc fits. Where the channel is just as wide as the cutter, exact erosion leaves nothing or crumbs
 * of its chords; there a radius smaller by `tolerance` decides. Points are in the proof's frame, as `channel` is not.
 */
export function makeReach(channel: Region, radius: number, tolerance: number): ReachDepth {
  const exact = depthIntoOpening(channel, radius, tolerance);
  const zone = CORNER_ZONE * tolerance;
  const eased = depthIntoOpening(channel, Math.max(radius - tolerance, radius / 2), tolerance);
  return (point) => {
    const depth = exact(point);
    const beyondZone = -depth - zone;
    // Made to pass through 0 wherever the answer changes, so that it never changes within its own size of a point.
    if (depth > 0) return depth;
    return beyondZone < 0 ? Math.max(depth, beyondZone) : Math.min(eased(point), beyondZone);
  };
}

/** Radius minus the distance to the eroded region (which is negative inside): by the triangle inequality at most the true depth. */
function depthIntoOpening(channel: Region, radius: number, tolerance: number): ReachDepth {
  const eroded = regionToFrame(offsetRegion(channel, -radius, { join: 'round', tolerance: tolerance / 4 }));
  const index = makeRegionIndex(eroded);
  return (point) => {
    const distance = index.distanceToBoundary(point);
    return radius + (index.contains(point) ? distance : -distance);
  };
}
