import { keepsTo } from '../keeps-to.ts';

/** Rated powers in which supplies are commonly sold, W (common practice, no source). */
const RATINGS: readonly number[] = [15, 30, 45, 60, 75, 100, 150, 200, 240, 320, 480, 600];

/** Rated currents of fuses, A (IEC 60127, from memory: preferred numbers of the R 10 series). */
const FUSES: readonly number[] = [0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 31.5];

/** A load for hours on end counts with this factor (NEC 210.20(A), as quoted). */
const CONTINUOUS = 1.25;

/** The least rated power of which the load takes no more than `share`, W; exactly what is needed where none sold is large enough. */
export function ratingFor(watts: number, share: number): number {
  const needed = watts / share;
  return RATINGS.find((rating) => keepsTo(needed, rating)) ?? needed;
}

/** The least fuse for a current that flows for hours, A. */
export function fuseFor(amps: number): number {
  const needed = amps * CONTINUOUS;
  return FUSES.find((rating) => keepsTo(needed, rating)) ?? needed;
}

/**
 * Puts loads into as few parcels as first-fit decreasing finds, each at most `limit` (a load above it alone): never more than 11/9 of the fewest
 * plus one (Johnson 1973, from memory). Parcels are lists of the loads' places.
 */
export function parcels(loads: readonly number[], limit: number): number[][] {
  const byLoad = loads.map((_, place) => place).sort((a, b) => loads[b]! - loads[a]! || a - b);
  const found: { load: number; places: number[] }[] = [];
  for (const place of byLoad) {
    const room = found.find(({ load }) => keepsTo(load + loads[place]!, limit));
    if (room) room.places.push(place);
    else found.push({ load: 0, places: [place] });
    (room ?? found.at(-1)!).load += loads[place]!;
  }
  return found.map(({ places }) => places.sort((a, b) => a - b)).sort((a, b) => a[0]! - b[0]!);
}
