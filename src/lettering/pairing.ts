import { distanceToChord, type Point } from '../geometry/index.ts';
import type { ArmView } from './arm.ts';
import { alongCircle, courseAtEnd } from './ends.ts';
import type { Grown } from './grow.ts';

/** Which arms are one stroke: pairs of places in the list of arms, what all cost, and how much dearer the next best answer is. Costs in degrees. */
export interface Matching {
  readonly pairs: readonly (readonly [number, number])[];
  readonly cost: number;
  readonly margin: number;
  /** The arms that are best seen as a pen that grew wider. */
  readonly plain: readonly number[];
}

/** An arm without a partner costs this, so that a pair dearer than twice as much is none. */
const LONE = 40;

/** A margin of this much leaves no doubt. */
export const CLEAR = 40;

/** What a doubling of the width from one arm to the other costs. */
const WIDTH_COST = 25;

/** What a wall that runs on from one arm into the other is worth. */
const SHARED_WALL = 12;

const degrees = (radians: number) => (radians * 180) / Math.PI;
const wrapped = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** An arm as far as its pairing is concerned. */
export interface Candidate {
  readonly view: ArmView;
  /** As it looks if it widens because the pen did. */
  readonly plain: ArmView | undefined;
  readonly grown: Grown;
  readonly branch: number;
  readonly stub: Point | undefined;
}

/** The cheapest way to pair some arms, found by trying all. */
export function bestMatching(arms: readonly Candidate[], smoothToNext: readonly boolean[]): Matching {
  const smooth = (i: number, j: number) => (smoothToNext[i]! && (i + 1) % arms.length === j) || (smoothToNext[j]! && (j + 1) % arms.length === i);
  const options = arms.map((a, i) => arms.map((b, j) => (i === j ? NONE : cheapest(a, b, smooth(i, j)))));
  const costs = options.map((row) => row.map(({ cost }) => cost));
  const best = arms.length > MOST_TRIED ? greedyMatching(costs) : searchedMatching(costs);
  const plain = best.pairs.flatMap(([a, b]) => [...(options[a]![b]!.first ? [a] : []), ...(options[a]![b]!.second ? [b] : [])]);
  return { ...best, margin: Math.min(CLEAR, best.margin), plain };
}

type Found = Omit<Matching, 'plain'>;

/** All ways to pair more arms than this are too many to try; no pen makes such a junction. */
const MOST_TRIED = 9;

/** Answers that differ by less than this are equally good: which of them is taken would hang on rounding. Those of letters differ by a tenth and less and still mean something. */
const TIE = 0.01;

/** The best answer; of answers equally good what they have in common, for nothing decides between them. */
function searchedMatching(costs: readonly (readonly number[])[]): Found {
  const answers = answersOf(costs).sort((a, b) => a.cost - b.cost);
  const [best, next] = [answers[0]!, answers[1]];
  const ties = answers.filter(({ cost }) => cost < best.cost + TIE);
  const inAll = ([a, b]: readonly [number, number]) => ties.every(({ pairs }) => pairs.some((pair) => pair[0] === a && pair[1] === b));
  return { pairs: best.pairs.filter(inAll), cost: best.cost, margin: (next?.cost ?? Infinity) - best.cost };
}

/** All ways to pair arms with what they cost. */
function answersOf(costs: readonly (readonly number[])[]): Omit<Found, 'margin'>[] {
  const answers: Omit<Found, 'margin'>[] = [];
  const search = (left: readonly number[], pairs: readonly (readonly [number, number])[], cost: number): void => {
    const [first, ...rest] = left;
    if (first === undefined) return void answers.push({ pairs, cost });
    search(rest, pairs, cost + LONE);
    for (const other of rest) {
      if (costs[first]![other]! > 2 * LONE + CLEAR) continue;
      search(rest.filter((arm) => arm !== other), [...pairs, [first, other]], cost + costs[first]![other]!);
    }
  };
  search([...costs.keys()], [], 0);
  return answers;
}

/** The cheapest pair first, then the next of what is left. Nothing is sure about it. */
function greedyMatching(costs: readonly (readonly number[])[]): Found {
  const all = costs.flatMap((row, a) => row.flatMap((cost, b) => (a < b && cost < 2 * LONE ? [{ a, b, cost }] : []))).sort((p, q) => p.cost - q.cost);
  const taken = new Set<number>();
  const chosen = all.filter(({ a, b }) => !taken.has(a) && !taken.has(b) && taken.add(a).add(b));
  const cost = chosen.reduce((sum, pair) => sum + pair.cost, LONE * (costs.length - taken.size));
  return { pairs: chosen.map(({ a, b }) => [a, b] as const), cost, margin: 0 };
}

interface Option {
  readonly cost: number;
  /** Whether the first, and the second, arm is seen as a pen that grew wider. */
  readonly first: boolean;
  readonly second: boolean;
}

const NONE: Option = { cost: Infinity, first: false, second: false };

/** What it costs to take an arm's widening for the pen's: no more than to leave a slight bend unexplained. */
const GREW_WIDER = 4;

/** And what it costs where no wall runs on: the arms lie across from one another, each narrowing away from the junction. */
const TAPERED = 12;

/** The cheaper of two ways to see a pair. A pen that grows wider keeps a wall that runs on into the other arm. */
function cheapest(a: Candidate, b: Candidate, smooth: boolean): Option {
  const usual = { cost: costOf(a, b), first: false, second: false };
  if (a.stub || b.stub || (!a.plain && !b.plain)) return usual;
  const cost = pairCost(a.plain ?? a.view, b.plain ?? b.view) + (smooth ? GREW_WIDER - SHARED_WALL : TAPERED);
  return cost < usual.cost ? { cost, first: a.plain !== undefined, second: b.plain !== undefined } : usual;
}

/** What it is worth besides if each arm, followed along its own wall, comes to the other. */
const BOTH_WAYS = 8;

/** What it costs to close a ring at its own junction: a pen that comes round rather ends on the stroke it came from. */
const CLOSING = 15;

function costOf(a: Candidate, b: Candidate): number {
  if (a.stub && b.stub) return pairCost(a.view, b.view);
  if (a.stub || b.stub) return a.stub ? stubCost(b, a.stub) : stubCost(a, b.stub!);
  const [there, back] = [a.grown.reached === b.branch, b.grown.reached === a.branch];
  return pairCost(a.view, b.view) - (there || back ? SHARED_WALL : 0) - (there && back ? BOTH_WAYS : 0) + (a.branch === b.branch ? CLOSING : 0);
}

/** What a stub costs whose end lies half a width beside the way of the arm that runs into it. */
const STUB_COST = 60;

/** How far beside the arm's way a stub ends decides whether the arm runs on into it. */
function stubCost({ grown: { line } }: Candidate, end: Point): number {
  const last = line.at(-1)!;
  const { heading, curvature } = courseAtEnd(line, 2 * last.half);
  const ahead = [1, 2, 3, 4].map((k) => alongCircle(last, heading, curvature, k * last.half));
  const way = [...line.slice(-24), ...ahead];
  const beside = Math.min(...way.slice(1).map((place, i) => distanceToChord(end, way[i]!, place)));
  return (STUB_COST * beside) / last.half;
}

/**
 * Cost of running from arm `a` into arm `b`: the bending of the curve between them beyond what their own curvature explains,
 * as the turn that costs as much in an even bend, and the step in width.
 */
export function pairCost(a: ArmView, b: ArmView): number {
  const inward = a.direction + Math.PI;
  const turn = wrapped(b.direction - inward);
  const middle = inward + turn / 2;
  const [dx, dy] = [b.point.x - a.point.x, b.point.y - a.point.y];
  const along = dx * Math.cos(middle) + dy * Math.sin(middle);
  const aside = dy * Math.cos(middle) - dx * Math.sin(middle);
  // Arms that were followed up to or past each other still have a blend's length to come together.
  const length = Math.max(along, (BLEND * (a.width + b.width)) / 2);
  const own = Math.max(-0.5, Math.min(0.5, ((b.curvature - a.curvature) / 2) * (Math.max(0, along) / 2)));
  const slant = Math.atan2(aside, length);
  const [first, last] = [turn / 2 + slant - own, turn / 2 - slant - own];
  const bend = 2 * Math.sqrt(first * first - first * last + last * last);
  return degrees(bend) + WIDTH_COST * Math.abs(Math.log2(a.width / b.width));
}

/** Length of the shortest blend, in widths. */
const BLEND = 1.5;
