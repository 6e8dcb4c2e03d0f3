import { type Box, boxHolds, type Point } from '../../geometry/index.ts';
import { type Lies, RANK } from './places.ts';

/** Two places for pins in program coordinates, the first the round one. */
export type PinPair = readonly [Point, Point];

/** Steps of the grid on which places are looked for, mm, the coarsest that leaves this many along the longer side. */
const MOST_STEPS = 120;
const STEPS: readonly number[] = [1, 2, 5, 10, 20, 50, 100];

interface Candidate {
  readonly at: Point;
  readonly lies: Lies;
}

/**
 * The farthest pairs in a box of program coordinates for which `lies` tells a place: one pair of waste places, one that
 * may lie in grooves too, one that may be in view; none twice. `others` are tried besides a grid.
 */
export function choosePins(box: Box, lies: (place: Point) => Lies | undefined, others: readonly Point[] = []): PinPair[] {
  const candidates = [...gridOf(box), ...others.filter((place) => boxHolds(box, place))].flatMap((at): Candidate[] => {
    const found = lies(at);
    return found ? [{ at, lies: found }] : [];
  });
  const pairs = RANK.flatMap((_, i) => farthest(rowEnds(candidates.filter((one) => RANK.indexOf(one.lies) <= i).map(({ at }) => at))) ?? []);
  return pairs.filter((pair, i) => pairs.findIndex((other) => other[0] === pair[0] && other[1] === pair[1]) === i);
}

function gridOf({ minX, minY, maxX, maxY }: Box): Point[] {
  const longest = Math.max(maxX - minX, maxY - minY);
  const step = STEPS.find((one) => longest / one <= MOST_STEPS) ?? longest / MOST_STEPS;
  const along = (low: number, high: number) => {
    const first = Math.ceil(low / step) * step;
    return first > high ? [(low + high) / 2] : Array.from({ length: Math.floor((high - first) / step + 1e-9) + 1 }, (_, i) => first + i * step);
  };
  return along(minY, maxY).flatMap((y) => along(minX, maxX).map((x) => ({ x, y })));
}

/** Rows are this high, mm. */
const ROW = 5;

/** First and last of every row: the farthest two are among them, but for a row's height. */
function rowEnds(places: readonly Point[]): Point[] {
  const rows = new Map<number, [Point, Point]>();
  for (const place of places) {
    const key = Math.floor(place.y / ROW);
    const row = rows.get(key);
    rows.set(key, row ? [place.x < row[0].x ? place : row[0], place.x > row[1].x ? place : row[1]] : [place, place]);
  }
  return [...new Set([...rows.values()].flat())];
}

function farthest(places: readonly Point[]): PinPair[] | undefined {
  let best: PinPair | undefined;
  let most = 0;
  places.forEach((a, i) => {
    for (const b of places.slice(i + 1)) {
      const distance = Math.hypot(b.x - a.x, b.y - a.y);
      if (distance > most) [best, most] = [[a, b], distance];
    }
  });
  return best ? [best] : undefined;
}
