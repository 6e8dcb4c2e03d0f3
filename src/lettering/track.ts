import type { MedialGraph } from './medial.ts';
import type { Branch } from './skeleton.ts';

/**
 * A branch as places in order, each with the radius of its disc and the two boundary points it touches (seen along the track).
 * `along` is the length from the first place.
 */
export interface Track {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly radius: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
  readonly along: readonly number[];
}

export function trackOf({ x, y, radius, left, right }: MedialGraph, { nodes, slots }: Branch): Track {
  const slotAt = (k: number) => slots[Math.min(k, slots.length - 1)] ?? 3 * nodes[0]!;
  const track = {
    x: nodes.map((node) => x[node]!), y: nodes.map((node) => y[node]!), radius: nodes.map((node) => radius[node]!),
    left: nodes.map((_, k) => left[slotAt(k)]!), right: nodes.map((_, k) => right[slotAt(k)]!),
  };
  return { ...track, along: lengthsAlong(track.x, track.y) };
}

function lengthsAlong(x: readonly number[], y: readonly number[]): number[] {
  const along = [0];
  for (let i = 1; i < x.length; i++) along.push(along[i - 1]! + Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!));
  return along;
}

/** The same run the other way: left becomes right. */
export function reverseTrack({ x, y, radius, left, right, along }: Track): Track {
  const total = along.at(-1)!;
  const shifted = (list: readonly number[]) => [...list.slice(0, -1).reverse(), list[0]!];
  return {
    x: [...x].reverse(), y: [...y].reverse(), radius: [...radius].reverse(), left: shifted(right), right: shifted(left),
    along: along.map((a) => total - a).reverse(),
  };
}

export const trackLength = (track: Track): number => track.along.at(-1)!;

/** Index of the first place at least `way` mm along. */
export function indexAlong({ along }: Track, way: number): number {
  let [low, high] = [0, along.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (along[middle]! < way) low = middle + 1;
    else high = middle;
  }
  return low;
}
