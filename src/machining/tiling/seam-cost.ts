import type { Point } from '../../geometry/index.ts';
import type { SeamCrossing } from '../job/tiling.ts';
import type { Axis, Feature } from './request.ts';

/** A seam too near to a feature costs this, and up to as much again by how near it is: more than any number of crossings would. */
const DISTURBED = 1000;
/** Costs are told in tenths of a square crossing: less than that is not worth an uneven tile. */
export const COST_GRAIN = 0.1;

export interface CostField {
  /** What a seam at each of these rising places costs. */
  readonly costsAt: (places: readonly number[]) => number[];
  readonly crossingsAt: (place: number) => SeamCrossing[];
  /** The feature nearest to a seam there and how far off it is, negative inside; and how many are nearer than they should be. */
  readonly nearest: (place: number) => { readonly distance: number; readonly feature?: Feature; readonly disturbed: number };
}

/**
 * What seams of one axis cost: each crossing of a centre line 1 / sin of its angle, so 1 where it is square; each feature
 * nearer than `clear` mm a thousand, and up to a thousand more the nearer it is. `lines` are centre lines as points.
 */
export function costField(lines: readonly (readonly Point[])[], features: readonly Feature[], axis: Axis, clear: number): CostField {
  const chords = lines.flatMap((points) => points.slice(1).map((to, i): Chord => [points[i]!, to]));
  return {
    costsAt(places) {
      const costs = places.map(() => 0);
      for (const chord of chords) {
        const [low, high] = spanOf(chord, axis);
        for (let i = firstAbove(places, low); i < places.length && places[i]! <= high; i++) costs[i]! += 1 / sineOf(chord, axis);
      }
      for (const feature of features) {
        for (let i = firstAbove(places, feature.from - clear); i < places.length && places[i]! < feature.to + clear; i++) costs[i]! += disturbance(feature, places[i]!, clear);
      }
      return costs.map((cost) => Math.round(cost / COST_GRAIN) / (1 / COST_GRAIN));
    },
    crossingsAt: (place) => chords.flatMap((chord) => {
      const [low, high] = spanOf(chord, axis);
      return place > low && place <= high ? [crossing(chord, axis, place)] : [];
    }),
    nearest: (place) => features.reduce<ReturnType<CostField['nearest']>>((best, feature) => {
      const distance = distanceTo(feature, place);
      const disturbed = best.disturbed + (distance < clear ? 1 : 0);
      return distance < best.distance ? { distance, feature, disturbed } : { ...best, disturbed };
    }, { distance: Infinity, disturbed: 0 }),
  };
}

type Chord = readonly [Point, Point];

/** A chord is crossed above its lower end and up to its upper one, so that a line is crossed once at its points. */
const spanOf = ([a, b]: Chord, axis: Axis): readonly [number, number] => [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])];

/** Sine of the angle between a chord and a seam. */
const sineOf = ([a, b]: Chord, axis: Axis): number => Math.abs(b[axis] - a[axis]) / Math.hypot(b.x - a.x, b.y - a.y);

function crossing(chord: Chord, axis: Axis, place: number): SeamCrossing {
  const [a, b] = chord;
  const t = (place - a[axis]) / (b[axis] - a[axis]);
  return { at: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, angle: (Math.asin(Math.min(1, sineOf(chord, axis))) * 180) / Math.PI };
}

/** From a seam to a feature; inside it negative, the nearer side counting. */
const distanceTo = ({ from, to }: Feature, place: number): number => Math.max(from - place, place - to);

const disturbance = (feature: Feature, place: number, clear: number): number =>
  DISTURBED * (1 + (clear - Math.max(0, distanceTo(feature, place))) / clear);

/** Index of the first place above a value, in rising places. */
function firstAbove(places: readonly number[], value: number): number {
  let [low, high] = [0, places.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! > value) high = middle;
    else low = middle + 1;
  }
  return low;
}
