import { type Point3 } from '../../geometry/point.ts';
import { type Machine } from '../job/machine.ts';
import { arcSpeed, cornerSpeed, reachableSpeed, stretchTime } from './motion-law.ts';
import { arcRadius, moveLength, placedMoves, type PlacedMove } from '../job/moves.ts';
import { type Move } from '../job/pass.ts';

/** Seconds a program's moves take, without the spindle's start. */
export interface ProgramTime {
  readonly seconds: number;
  /** In feed moves that begin or end at the sheet's top face or below; a move through the face counts whole. */
  readonly cuttingSeconds: number;
  readonly rapidSeconds: number;
  /** Seconds from the start at which each move ends. */
  readonly ends: readonly number[];
}

interface Leg extends PlacedMove {
  readonly length: number;
  readonly speed: number;
  readonly into: Point3;
  readonly outOf: Point3;
}

/**
 * Estimated time of moves (lengths mm, feeds mm/min), from rest to rest: constant acceleration in every direction,
 * speeds limited by feed, rapid rate and the machine's greatest feed, on arcs by sqrt(a r), at joints by the corner
 * deviation, and looking ahead as far as braking needs. Rapids and feeds blend into one another by the same rule.
 * Throws a RangeError for a machine whose acceleration or rates are not above 0.
 */
export function programTime(start: Point3, moves: readonly Move[], machine: Machine): ProgramTime {
  for (const rate of [machine.acceleration, machine.rapidRate, machine.greatestFeed]) {
    if (!(rate > 0)) throw new RangeError(`a machine's rates and acceleration are above 0, not ${rate}`);
  }
  const placed = placedMoves(start, moves);
  const took = moveSeconds(placed, machine);
  const time = { seconds: 0, cuttingSeconds: 0, rapidSeconds: 0 };
  const ends = placed.map(({ from, move }, index) => {
    const seconds = took[index]!;
    time.seconds += seconds;
    if (move.kind === 'rapid') time.rapidSeconds += seconds;
    else if (Math.min(from.z, move.to.z) <= 0) time.cuttingSeconds += seconds;
    return time.seconds;
  });
  return { ...time, ends };
}

/** Seconds each move takes; one of no length takes none. */
function moveSeconds(placed: readonly PlacedMove[], machine: Machine): Float64Array {
  const took = new Float64Array(placed.length);
  const legs = placed.map((one, index) => ({ ...legOf(one, machine), index })).filter(({ length }) => length > 0);
  const joints = jointSpeeds(legs, machine);
  legs.forEach(({ index, length, speed }, k) => {
    took[index] = stretchTime({ length, speed, entry: joints[k]!, exit: joints[k + 1]! }, machine.acceleration);
  });
  return took;
}

function legOf(placed: PlacedMove, machine: Machine): Leg {
  const { from, move } = placed;
  const length = moveLength(from, move);
  const wanted = move.kind === 'rapid' ? machine.rapidRate : Math.min(move.feed, machine.greatestFeed);
  const speed = Math.min(wanted / 60, curveLimit(from, move, length, machine));
  return { ...placed, length, speed, into: direction(from, move, length, from), outOf: direction(from, move, length, move.to) };
}

/** On a helix only the part of the speed in the plane turns. */
function curveLimit(from: Point3, move: Move, length: number, { acceleration }: Machine): number {
  if (move.kind !== 'arc') return Infinity;
  const level = Math.sqrt(Math.max(0, length ** 2 - (move.to.z - from.z) ** 2));
  return level > 0 ? (arcSpeed(arcRadius(from, move), acceleration) * length) / level : Infinity;
}

/** Unit vector along a move at one of its ends. */
function direction(from: Point3, move: Move, length: number, end: Point3): Point3 {
  const rise = (move.to.z - from.z) / length;
  if (move.kind !== 'arc') return { x: (move.to.x - from.x) / length, y: (move.to.y - from.y) / length, z: rise };
  const [rx, ry] = [end.x - move.centre.x, end.y - move.centre.y];
  const scale = (Math.sqrt(Math.max(0, 1 - rise * rise)) / (Math.hypot(rx, ry) || 1)) * (move.clockwise ? -1 : 1);
  return { x: -ry * scale, y: rx * scale, z: rise };
}

/** Speeds at the joints between legs, both ends at rest: what corners allow, lowered to what each leg can reach and brake to. */
function jointSpeeds(legs: readonly Leg[], machine: Machine): number[] {
  const { acceleration, cornerDeviation } = machine;
  const speeds = legs.map((leg, index) => {
    const before = legs[index - 1];
    if (before === undefined) return 0;
    const { outOf: a } = before, { into: b } = leg;
    return Math.min(before.speed, leg.speed, cornerSpeed(a.x * b.x + a.y * b.y + a.z * b.z, cornerDeviation, acceleration));
  });
  speeds.push(0);
  for (let k = legs.length - 1; k > 0; k--) speeds[k] = Math.min(speeds[k]!, reachableSpeed(speeds[k + 1]!, legs[k]!.length, acceleration));
  for (let k = 1; k < legs.length; k++) speeds[k] = Math.min(speeds[k]!, reachableSpeed(speeds[k - 1]!, legs[k - 1]!.length, acceleration));
  return speeds;
}
