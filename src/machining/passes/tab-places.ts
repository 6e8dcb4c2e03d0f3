import { type TabSpacing } from './outline-request.ts';
import { type Point } from '../../geometry/point.ts';
import { pointAt, type Track } from './track.ts';
import { turningNear } from './track-query.ts';

/** Places looked at per tab. */
const PLACES = 32;
/** A tab may be moved by up to this share of the distance between tabs, to get away from corners. */
const SHIFT = 0.25;
/** What it costs to be a whole spacing out of the even row, in radians of turning: decides only between straight places. */
const UNEVEN = 0.2;
/** More turning than any place has. */
const FORBIDDEN = 1e6;

/** How many tabs a track of this length is meant to get. */
export function tabCount(spacing: TabSpacing, length: number): number {
  return 'count' in spacing ? Math.floor(spacing.count) : Math.max(2, Math.ceil(length / spacing.pitch - 1e-9));
}

/**
 * Distances along a closed track for the middles of up to `count` tabs, in rising order: as even as straight places
 * allow. `zone` is the length of track each needs, `between` the least left between two zones. Fewer where the track is
 * short, or where a place is `forbidden` and no other is near.
 */
export function tabPlaces(track: Track, count: number, zone: number, between: number, forbidden?: (place: Point) => boolean): number[] {
  const fitting = Math.min(count, Math.floor(track.length / (zone + between)));
  if (fitting < 1) return [];
  const step = track.length / (fitting * PLACES);
  const scores = Array.from({ length: fitting * PLACES }, (_, i) => (forbidden?.(pointAt(track, i * step)) ? FORBIDDEN : turningNear(track, i * step, zone / 2 + between / 4)));
  const room = (track.length / fitting - zone - between) / 2;
  const reach = Math.min(Math.floor(PLACES * SHIFT), Math.floor(room / step + 1e-9));
  let best: { readonly cost: number; readonly places: readonly number[] } | undefined;
  for (let phase = 0; phase < PLACES; phase++) {
    const row = evenRow(scores, fitting, phase, reach);
    if (!best || row.cost < best.cost - 1e-9) best = row;
  }
  return best!.places.map((index) => wrap(index, scores.length)).filter((index) => scores[index] !== FORBIDDEN).map((index) => index * step).sort((a, b) => a - b);
}

/** One row of tabs, each at the straightest place within reach of its even one. */
function evenRow(scores: readonly number[], count: number, phase: number, reach: number) {
  let cost = 0;
  const places: number[] = [];
  for (let i = 0; i < count; i++) {
    let least = Infinity;
    let place = 0;
    for (let shift = -reach; shift <= reach; shift++) {
      const index = phase + i * PLACES + shift;
      const here = scores[wrap(index, scores.length)]! + (UNEVEN * Math.abs(shift)) / PLACES;
      if (here < least) [least, place] = [here, index];
    }
    cost += least;
    places.push(place);
  }
  return { cost, places };
}

const wrap = (index: number, count: number) => ((index % count) + count) % count;
