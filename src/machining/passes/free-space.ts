import { distance, lerp, makeRegionIndex, type Point, type Region } from '../../geometry/index.ts';
import { type Track, pointAt } from './track.ts';
import { nearestOnTrack } from './track-query.ts';

/** Asks how far places lie inside a region. */
export interface DepthInside {
  /** Distance to the region's boundary, mm, negative outside. */
  depthAt(point: Point): number;
}

export function makeDepthInside(region: Region): DepthInside {
  const index = makeRegionIndex(region);
  return {
    depthAt: (point) => (index.contains(point) ? 1 : -1) * index.distanceToBoundary(point),
  };
}

/** Finest step of the walk along a segment, mm: a dip between two steps is at most half of it. */
const FINEST = 0.02;

/** Whether every place between two points lies at least `inset` inside the region. Strides as far as the depth found allows. */
export function segmentStaysInside(inside: DepthInside, a: Point, b: Point, inset: number): boolean {
  const length = distance(a, b);
  for (let at = 0; at < length; ) {
    const spare = inside.depthAt(lerp(a, b, at / length)) - inset;
    if (spare < 0) return false;
    at += Math.max(spare, FINEST);
  }
  return inside.depthAt(b) >= inset;
}

/** Whether a whole track lies at least `inset` inside the region. */
export function trackStaysInside(inside: DepthInside, track: Track, inset: number): boolean {
  for (let at = 0; at <= track.length; ) {
    const spare = inside.depthAt(pointAt(track, at)) - inset;
    if (spare < 0) return false;
    at += Math.max(spare, FINEST);
  }
  return true;
}

/** Where the cutter has already been at full depth, and so may come down or cross freely. */
export interface ClearedSpace {
  readonly tracks: readonly Track[];
  readonly points: readonly Point[];
}

/** The cleared place nearest to a point, or undefined when nothing is cleared. */
export function nearestCleared({ tracks, points }: ClearedSpace, place: Point): { readonly point: Point; readonly distance: number } | undefined {
  let best: { readonly point: Point; readonly distance: number } | undefined;
  const offer = (point: Point, away: number) => {
    if (!best || away < best.distance) best = { point, distance: away };
  };
  for (const track of tracks) {
    const nearest = nearestOnTrack(track, place);
    if (nearest) offer(nearest.point, nearest.distance);
  }
  for (const point of points) offer(point, distance(point, place));
  return best;
}
