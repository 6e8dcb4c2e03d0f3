import type { AxisWork } from './axis-work.ts';
import { MOST_TILES } from './request.ts';
import { COST_GRAIN } from './seam-cost.ts';

/** How far one set-up's cutters' edges can range, and how far it cuts beyond a seam. */
export interface TileLimits {
  readonly frame: number;
  readonly lap: number;
}

/** Where the work of the tile between two seams begins and ends, with its laps; without a seam, as far as there is work. */
export function tileExtent(work: AxisWork, { lap }: TileLimits, from: number | undefined, to: number | undefined): readonly [number, number] {
  return [from === undefined ? work.ends[0] : work.firstFrom(from - lap), to === undefined ? work.ends[1] : work.lastTo(to + lap)];
}

const fits = (work: AxisWork, limits: TileLimits, from: number | undefined, to: number | undefined): boolean => {
  const [low, high] = tileExtent(work, limits, from, to);
  return high - low <= limits.frame;
};

/**
 * The fewest seams the travel allows: each as far on as the tile before it reaches. Undefined where travel, less two laps,
 * leaves nothing to go on by.
 */
export function fewestSeams(work: AxisWork, limits: TileLimits): number[] | undefined {
  const seams: number[] = [];
  while (!fits(work, limits, seams.at(-1), undefined)) {
    const [low] = tileExtent(work, limits, seams.at(-1), undefined);
    const next = farthest(work, limits, low);
    if (!(next > (seams.at(-1) ?? work.ends[0])) || seams.length + 1 >= MOST_TILES) return undefined;
    seams.push(next);
  }
  return seams;
}

/** The fewest seams found from the other end: each as far back as the tile after it reaches. */
export function fewestFromEnd(work: AxisWork, limits: TileLimits): number[] {
  const { ends: [low, high], firstFrom, lastTo } = work;
  const mirrored = { ...work, ends: [-high, -low] as const, firstFrom: (place: number) => -lastTo(-place), lastTo: (place: number) => -firstFrom(-place) };
  return (fewestSeams(mirrored, limits) ?? []).map((place) => -place).reverse();
}

/** Seams in a gap lie this far before what comes after it, mm: enough for that not to count. */
const BEFORE = 0.01;

/** A tile that begins there reaches to `low + frame`. Its seam lies a lap before that or, where that is in a gap, a lap before the gap's end. */
function farthest(work: AxisWork, { frame, lap }: TileLimits, low: number): number {
  const reach = low + frame;
  return Math.max(reach, work.firstFrom(reach) - BEFORE) - lap;
}

/** The best plans that end with a seam at a place: how many seams, what they cost, how uneven their tiles are, and the place before. */
interface Plans {
  readonly seams: Float64Array;
  readonly cost: Float64Array;
  /** Sum of the squares of the tiles' sizes. */
  readonly uneven: Float64Array;
  readonly before: Int32Array;
}

/**
 * The seams with the least total cost among those that are fewest, the most even of equals. `places` rise, `costs` are
 * theirs, compared in whole grains so that ties are ties; exact over these places (dynamic programming). Undefined where no choice of them will do.
 */
export function cheapestSeams(work: AxisWork, limits: TileLimits, places: readonly number[], costs: readonly number[]): number[] | undefined {
  if (fits(work, limits, undefined, undefined)) return [];
  const [start, end] = work.ends;
  const whole = places.length;
  const plans: Plans = { seams: new Float64Array(whole + 1), cost: new Float64Array(whole + 1), uneven: new Float64Array(whole + 1), before: new Int32Array(whole + 1) };
  let first = 0;
  for (const [i, place] of places.entries()) {
    while (first < i && !fits(work, limits, places[first], place)) first++;
    extend(plans, places, i, place, first, i);
    if (fits(work, limits, undefined, place)) setPlan(plans, i, 0, 0, (place - start) ** 2, -1);
    plans.seams[i]! += 1;
    plans.cost[i]! += Math.round(costs[i]! / COST_GRAIN);
  }
  const last = places.findIndex((place) => fits(work, limits, place, undefined));
  if (last === -1) return undefined;
  extend(plans, places, whole, end, last, whole);
  return plans.seams[whole] === Infinity ? undefined : traced(plans.before, places, plans.before[whole]!);
}

/** The best plan up to `place` among those whose last seam is one of the places from `low` to before `high`. */
function extend(plans: Plans, places: readonly number[], index: number, place: number, low: number, high: number): void {
  const { seams, cost, uneven } = plans;
  setPlan(plans, index, Infinity, Infinity, Infinity, -1);
  for (let j = low; j < high; j++) {
    const more = seams[j]! - seams[index]! || cost[j]! - cost[index]!;
    if (more > 0 || seams[j] === Infinity) continue;
    const size = uneven[j]! + (place - places[j]!) ** 2;
    if (more < 0 || size < uneven[index]!) setPlan(plans, index, seams[j]!, cost[j]!, size, j);
  }
}

function setPlan(plans: Plans, index: number, seams: number, cost: number, uneven: number, before: number): void {
  plans.seams[index] = seams;
  plans.cost[index] = cost;
  plans.uneven[index] = uneven;
  plans.before[index] = before;
}

function traced(before: Int32Array, places: readonly number[], last: number): number[] {
  const seams: number[] = [];
  for (let i = last; i >= 0; i = before[i]!) seams.unshift(places[i]!);
  return seams;
}
