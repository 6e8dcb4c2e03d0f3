import { makeRegionIndex, type Point, type Region } from '../../geometry/index.ts';
import { type DesignSurface } from './design.ts';
import { beyondCapsule, type Capsule, capsuleOf } from './capsule.ts';
import { regionToFrame } from './frame.ts';
import { makeReach, type ReachDepth } from './reach.ts';
import { throughDepth } from '../job/stock.ts';
import { newTally, type Tally } from './tally.ts';

/** What the design says about a sample, as bits of its class. */
export const BOARD = 1;
/** In the waste, near enough to the board to be cut. */
export const ALLOWANCE = 2;
export const CHANNEL = 4;
export const HOLE = 8;
export const CLASSES = 16;

/** Between these heights, mm, a sample of a class is right: `low` is as deep as it may, `high` as shallow as it may be cut. */
export interface Limits {
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Deeper than this is deeper into the spoilboard than the breakthrough; where cuts go through, it is the `low`. */
  readonly spoilboard: number;
}

/** A marked face shows from here on, mm; also far above what 32-bit heights round away. */
const SCRATCH = 0.001;

export interface Tallies {
  readonly wrongCut: Tally;
  readonly remainder: Tally;
  readonly unreachable: Tally;
  readonly strayCut: Tally;
  readonly spoilboardCut: Tally;
  readonly tooDeep: Tally;
  readonly tooShallow: Tally;
}

export const newTallies = (): Tallies => ({
  wrongCut: newTally(), remainder: newTally(), unreachable: newTally(), strayCut: newTally(), spoilboardCut: newTally(),
  tooDeep: newTally(), tooShallow: newTally(),
});

/** Where a fault belongs, its size, and how far around the sample (mm) both stay of one kind and change at most as fast as the distance. */
export interface Verdict {
  readonly tally: Tally;
  readonly mm: number;
  readonly sure: number;
}

/** The design prepared for questions about samples; everything in the proof's frame. */
export interface Judge {
  readonly limits: Limits;
  /** Height of the channel's floor, mm. */
  readonly floor: number;
  /** Distance, mm, to the nearest wall, board edge or hole. */
  readonly floorDistance: (point: Point) => number;
  /** A sample cut below its class's `low`. */
  below(point: Point, z: number, kind: number): Verdict;
  /** A sample left standing above its class's `high`. */
  above(point: Point, z: number, kind: number): Verdict;
}

export function limitsOf({ stock, channel, outline }: DesignSurface, depthTolerance: number): Limits {
  const slack = Math.max(depthTolerance, SCRATCH);
  const through = stock.thickness + stock.thicknessTolerance;
  const spoilboard = -throughDepth(stock) - slack;
  const low: number[] = [];
  const high: number[] = [];
  for (let kind = 0; kind < CLASSES; kind++) {
    const open = (kind & HOLE) !== 0 || (outline !== undefined && (kind & (BOARD | ALLOWANCE)) === ALLOWANCE);
    const grooved = channel !== undefined && (kind & CHANNEL) !== 0;
    low.push(open ? spoilboard : grooved ? -channel.depth - slack : -SCRATCH);
    high.push((kind & HOLE) !== 0 ? slack - through : grooved && (kind & BOARD) !== 0 ? slack - channel.depth : Infinity);
  }
  return { low, high, spoilboard };
}

export function makeJudge(design: DesignSurface, board: Region, tallies: Tallies, tolerance: number, depthTolerance: number): Judge {
  const limits = limitsOf(design, depthTolerance);
  const holes = design.holes.map(capsuleOf);
  const toBoard = distanceTo(board);
  const toChannel = distanceTo(design.channel?.region ?? { loops: [] });
  const floor = design.channel?.depth ?? 0;
  const through = design.stock.thickness + design.stock.thicknessTolerance;
  const allowance = design.outline?.allowance ?? 0;
  let reach: ReachDepth | undefined;

  /** From the deepest removed point to the nearest place where the design removes material too. */
  const below = (point: Point, z: number, kind: number): Verdict => {
    const overshoot = -z - floor > depthTolerance || (kind & CHANNEL) !== 0 ? Math.max(0, -z - floor) : 0;
    const aside = (kind & CHANNEL) !== 0 ? 0 : toChannel(point);
    const inBoard = (kind & BOARD) !== 0;
    const mm = Math.min(-z, Math.hypot(aside, overshoot), outsideHoles(holes, point),
      inBoard ? toBoard(point) : Math.max(0, toBoard(point) - allowance));
    return { tally: inBoard ? tallies.wrongCut : tallies.strayCut, mm, sure: Infinity };
  };

  const standingInHole = (point: Point, z: number, kind: number): Verdict => {
    const grooved = (kind & (CHANNEL | BOARD)) === (CHANNEL | BOARD) && z > depthTolerance - floor;
    const aside = Math.max(insideHoles(holes, point), grooved ? toChannel(point) : 0);
    return { tally: tallies.remainder, mm: Math.min(z + through, aside), sure: Infinity };
  };

  const standingInChannel = (point: Point, z: number): Verdict => {
    const aside = toChannel(point);
    if (aside <= tolerance) return { tally: tallies.remainder, mm: Math.min(z + floor, aside), sure: tolerance - aside };
    const { region, cutterDiameter } = design.channel!;
    // Only a faulty or crowded channel has material standing away from its walls; the others never pay for this.
    reach ??= makeReach(region, cutterDiameter / 2, tolerance);
    const depth = reach(point);
    const sure = Math.min(Math.abs(depth), aside - tolerance);
    if (depth > 0) return { tally: tallies.remainder, mm: Math.min(z + floor, depth), sure };
    return { tally: tallies.unreachable, mm: Math.min(z + floor, aside), sure };
  };

  return {
    limits, below, floor: -floor,
    above: (point, z, kind) => ((kind & HOLE) !== 0 ? standingInHole(point, z, kind) : standingInChannel(point, z)),
    floorDistance: (point) => Math.min(toChannel(point), toBoard(point), outsideHoles(holes, point)),
  };
}

function distanceTo(region: Region): (point: Point) => number {
  return makeRegionIndex(regionToFrame(region)).distanceToBoundary;
}

const outsideHoles = (holes: readonly Capsule[], point: Point): number =>
  holes.reduce((least, hole) => Math.min(least, beyondCapsule(hole, point)), Infinity);

const insideHoles = (holes: readonly Capsule[], point: Point): number =>
  holes.reduce((most, hole) => Math.max(most, -beyondCapsule(hole, point)), 0);
