import { distance, type Point } from '../../geometry/point.ts';

/** A place to visit, entered at its start and left at its end. */
export interface Stop {
  readonly start: Point;
  readonly end: Point;
}

/** All stops, each time the nearest one not yet visited. */
export function tourFrom<T extends Stop>(stops: readonly T[], from: Point): T[] {
  const waiting = [...stops];
  const tour: T[] = [];
  let at = from;
  while (waiting.length > 0) {
    let best = 0;
    waiting.forEach((stop, i) => {
      if (distance(at, stop.start) < distance(at, waiting[best]!.start)) best = i;
    });
    const [next] = waiting.splice(best, 1);
    tour.push(next!);
    at = next!.end;
  }
  return tour;
}

/** Most changes tried before a tour is taken as it is; a second or so of work. */
const WORK_LIMIT = 20_000_000;
/** Longest part of a tour that is moved elsewhere as a whole. */
const LONGEST_MOVED = 3;
/** A change must shorten the tour by more than this, mm, so that rounding cannot keep it going. */
const LEAST_GAIN = 1e-6;

/**
 * Makes a tour that begins at `from` and ends anywhere shorter: reverses the order of parts (2-opt) and moves up to three
 * neighbours elsewhere (or-opt), first gain first, until nothing helps or the work limit is reached. Stops keep their own direction.
 */
export function shortenTour<T extends Stop>(tour: readonly T[], from: Point): T[] {
  let best = [...tour];
  let work = 0;
  for (let improved = true; improved && work < WORK_LIMIT; ) {
    improved = false;
    for (const attempt of [reverseOnce, moveOnce]) {
      const result = attempt(best, from);
      work += result.work;
      if (result.tour) [best, improved] = [result.tour, true];
    }
  }
  return best;
}

interface Attempt<T> {
  /** A shorter tour, when one was found. */
  readonly tour?: T[];
  readonly work: number;
}

/** Way from stop i - 1 (or the start) to stop j; 0 when there is no stop j. */
function linkLength(tour: readonly Stop[], from: Point, i: number, j: number): number {
  const target = tour[j];
  return target ? distance(i === 0 ? from : tour[i - 1]!.end, target.start) : 0;
}

/** Sweeps over all reversals, making each that shortens the tour. Ways within the part change too: stops keep their direction. */
function reverseOnce<T extends Stop>(tour: readonly T[], from: Point): Attempt<T> {
  let work = 0;
  let current = [...tour];
  let found = false;
  for (let i = 0; i < current.length - 1; i++) {
    let forward = 0;
    let backward = 0;
    for (let j = i + 1; j < current.length; j++) {
      work++;
      forward += distance(current[j - 1]!.end, current[j]!.start);
      backward += distance(current[j]!.end, current[j - 1]!.start);
      const before = linkLength(current, from, i, i) + forward + linkLength(current, from, j + 1, j + 1);
      const after = linkLength(current, from, i, j) + backward + (current[j + 1] ? distance(current[i]!.end, current[j + 1]!.start) : 0);
      if (after < before - LEAST_GAIN) {
        current = [...current.slice(0, i), ...current.slice(i, j + 1).reverse(), ...current.slice(j + 1)];
        found = true;
        break;
      }
    }
  }
  return found ? { tour: current, work } : { work };
}

/** Sweeps over all short parts, moving each to where it shortens the tour most. */
function moveOnce<T extends Stop>(tour: readonly T[], from: Point): Attempt<T> {
  let work = 0;
  let current = [...tour];
  let found = false;
  for (let size = 1; size <= LONGEST_MOVED; size++) {
    for (let i = 0; i + size <= current.length; i++) {
      const moved = current.slice(i, i + size);
      const rest = [...current.slice(0, i), ...current.slice(i + size)];
      work += rest.length + 1;
      const place = bestPlace(rest, moved, from, i);
      if (place === undefined) continue;
      current = [...rest.slice(0, place), ...moved, ...rest.slice(place)];
      found = true;
    }
  }
  return found ? { tour: current, work } : { work };
}

/** Where in the rest of a tour a part costs least, or undefined when that is where it was. */
function bestPlace(rest: readonly Stop[], moved: readonly Stop[], from: Point, was: number): number | undefined {
  const costAt = (place: number) => {
    const before = place === 0 ? from : rest[place - 1]!.end;
    const next = rest[place];
    const out = next ? distance(moved.at(-1)!.end, next.start) - distance(before, next.start) : 0;
    return distance(before, moved[0]!.start) + out;
  };
  let [best, least] = [was, costAt(was) - LEAST_GAIN];
  for (let place = 0; place <= rest.length; place++) {
    const cost = costAt(place);
    if (place !== was && cost < least) [best, least] = [place, cost];
  }
  return best === was ? undefined : best;
}
