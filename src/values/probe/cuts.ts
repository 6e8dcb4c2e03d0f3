import { type IndexedSegment, type Point, type SegmentIndex, makeSegmentIndex } from '../../geometry/index.ts';
import { type Pass, type PlacedMove, type SetUp, PROGRAM_START, arcRadius, arcSweep, chordCount, drawnMoves, placedMoves, pointOnArc } from '../../machining/index.ts';
import type { Reading } from '../picture.ts';
import { reading } from './reading.ts';

/** A chord of a cutting move: depths at its ends, feed, and the number of its pass. */
interface Cut extends IndexedSegment {
  readonly depths: readonly [number, number];
  readonly feed: number;
  readonly pass: number | undefined;
}

export interface MeasuredCuts {
  readonly cuts: readonly Cut[];
  readonly index: SegmentIndex;
}

/** Chords stray at most this far from an arc, mm. */
const TOLERANCE = 0.05;
/** Cuts one above the other lie within this of one another seen from above, mm. */
const SAME_PLACE = 0.02;

export function measurePasses(passes: readonly Pass[]): MeasuredCuts {
  return measured(passes.flatMap(({ start, moves }, pass) => placedMoves(start, moves).flatMap((move) => cutsOf(move, pass))));
}

export function measureSetUps(setups: readonly SetUp[]): MeasuredCuts {
  return measured(setups.flatMap((setup) => setup.programs.flatMap(({ moves }) => {
    const [dx, dy] = setup.shift;
    const start = { x: PROGRAM_START.x + dx, y: PROGRAM_START.y + dy, z: PROGRAM_START.z };
    return placedMoves(start, drawnMoves(setup, moves)).flatMap((move) => cutsOf(move, undefined));
  })));
}

function measured(cuts: readonly Cut[]): MeasuredCuts {
  return { cuts, index: makeSegmentIndex(cuts) };
}

/** Rapids cut nothing, nor do moves above the sheet. */
function cutsOf({ from, move }: PlacedMove, pass: number | undefined): Cut[] {
  if (move.kind === 'rapid' || (from.z >= 0 && move.to.z >= 0)) return [];
  const count = move.kind === 'arc' ? chordCount(arcRadius(from, move), arcSweep(from, move), TOLERANCE) : 1;
  const places = Array.from({ length: count + 1 }, (_, i) => (move.kind === 'arc' ? pointOnArc(from, move, i / count) : [from, move.to][i]!));
  return places.slice(1).map((to, i) => ({ from: places[i]!, to, depths: [-places[i]!.z, -to.z], feed: move.feed, pass }));
}

/** The deepest cut at the place nearest to a point: how deep, how fast, in which pass. */
export function readCuts({ cuts, index }: MeasuredCuts, at: Point, within: number): Reading[] {
  let nearest = index.nearest(at, within);
  if (nearest === undefined) return [];
  const { point } = nearest;
  let depth = depthAt(cuts[nearest.segment]!, point);
  let found = nearest;
  while (nearest !== undefined) {
    found = nearest;
    depth = depthAt(cuts[found.segment]!, point);
    const above: number = depth;
    nearest = index.nearest(point, SAME_PLACE, (segment) => depthAt(cuts[segment]!, point) > above + 1e-6);
  }
  const { feed, pass } = cuts[found.segment]!;
  return [
    reading('depth here', Math.max(0, depth), 'mm', point), reading('feed here', feed, 'mm/min', point),
    ...(pass === undefined ? [] : [reading('number of the pass here', pass + 1, 'count', point)]),
  ];
}

/** Straight down, the cut is as deep as its lower end. */
function depthAt({ from, to, depths: [first, last] }: Cut, { x, y }: Point): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return Math.max(first, last);
  const share = Math.min(1, Math.hypot(x - from.x, y - from.y) / length);
  return first + (last - first) * share;
}
