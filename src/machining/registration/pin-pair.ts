import type { Box, Point } from '../../geometry/index.ts';
import { GOOD_DISTANCE } from './request.ts';
import type { Lies } from './places.ts';

/** Two places for pins in program coordinates, the first the round one. */
export type PinPair = readonly [Point, Point];

/** Steps of the grid on which places are looked for, mm, the coarsest that leaves this many along the longer side. */
const MOST_STEPS = 120;
const STEPS: readonly number[] = [1, 2, 5, 10, 20, 50, 100];

interface Candidate {
  readonly at: Point;
  readonly lies: Lies;
}

/** What places are good for, the best first: each level allows those before it too. */
const LEVELS: readonly (readonly Lies[])[] = [['waste'], ['waste', 'groove'], ['waste', 'groove', 'board']];

/**
 * The farthest pair in a box of program coordinates for which `lies` tells a place: hidden places as long as they are far
 * enough apart, for what the pins' errors make at the far end goes as one over their distance.
 */
export function choosePins(box: Box, lies: (place: Point) => Lies | undefined): PinPair | undefined {
  const candidates = gridOf(box).flatMap((at): Candidate[] => {
    const found = lies(at);
    return found ? [{ at, lies: found }] : [];
  });
  let best: { readonly pair: PinPair; readonly distance: number } | undefined;
  for (const level of LEVELS) {
    const pair = farthest(rowEnds(candidates.filter((one) => level.includes(one.lies)).map(({ at }) => at)));
    if (pair && pair.distance > (best?.distance ?? 0)) best = pair;
    if (best && best.distance >= GOOD_DISTANCE) return best.pair;
  }
  return best?.pair;
}

function gridOf({ minX, minY, maxX, maxY }: Box): Point[] {
  if (!(maxX >= minX && maxY >= minY)) return [];
  const longest = Math.max(maxX - minX, maxY - minY);
  const step = STEPS.find((one) => longest / one <= MOST_STEPS) ?? longest / MOST_STEPS;
  const along = (low: number, high: number) => {
    const first = Math.ceil(low / step) * step;
    return first > high ? [(low + high) / 2] : Array.from({ length: Math.floor((high - first) / step + 1e-9) + 1 }, (_, i) => first + i * step);
  };
  return along(minY, maxY).flatMap((y) => along(minX, maxX).map((x) => ({ x, y })));
}

/** First and last of every row: the farthest two are among them. */
function rowEnds(places: readonly Point[]): Point[] {
  const rows = new Map<number, [Point, Point]>();
  for (const place of places) {
    const row = rows.get(place.y);
    rows.set(place.y, row ? [place.x < row[0].x ? place : row[0], place.x > row[1].x ? place : row[1]] : [place, place]);
  }
  return [...new Set([...rows.values()].flat())];
}

function farthest(places: readonly Point[]): { readonly pair: PinPair; readonly distance: number } | undefined {
  let best: { readonly pair: PinPair; readonly distance: number } | undefined;
  places.forEach((a, i) => {
    for (const b of places.slice(i + 1)) {
      const distance = Math.hypot(b.x - a.x, b.y - a.y);
      if (distance > (best?.distance ?? 0)) best = { pair: [a, b], distance };
    }
  });
  return best;
}
