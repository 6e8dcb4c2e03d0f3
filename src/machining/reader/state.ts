import { type Point3 } from '../../geometry/point.ts';
import { refuse, type FeedMode, type Plane, type ReadEvent, type ReadMove, type Refusal, type Turning } from './types.ts';

/** Positions by axis number: X 0, Y 1, Z 2. */
export type Triple = [number, number, number];

export const AXES = ['X', 'Y', 'Z'] as const;

/** What a repeated or very fine cycle may grow to; a sign's programs have a few hundred thousand moves at most. */
export const MOST_MOVES = 1_000_000;

/** What a canned cycle keeps for the next line of the same cycle: lengths in mm as the program gave them. */
export interface Cycle {
  readonly code: number;
  readonly retract: number;
  readonly end: number;
  readonly peck: number | undefined;
  readonly dwell: number;
}

/** Everything a program has set so far. Lengths are mm, whatever unit the program speaks. */
export interface State {
  line: number;
  /** Place of the cutter in machine coordinates. */
  position: Triple;
  /** Origins of the nine work coordinate systems. */
  readonly origins: Triple[];
  system: number;
  /** Offset of G92 in force, and the one that G92.3 brings back. */
  axisOffset: Triple;
  keptOffset: Triple;
  unit: number;
  plane: Plane;
  incremental: boolean;
  feedMode: FeedMode;
  /** mm/min, or 1/min in inverse time; undefined until one is given. */
  feed: number | undefined;
  /** Motion in force, in tenths: 0, 10, 20, 30, 800 (none) or a canned cycle. */
  motion: number;
  retractToR: boolean;
  cycle: Cycle | undefined;
  spindle: Turning;
  spindleSpeed: number;
  slot: number;
  ended: 'M2' | 'M30' | undefined;
  readonly moves: ReadMove[];
  readonly events: ReadEvent[];
}

/** The state before a program's first line: millimetres, XY plane, absolute, units per minute, first coordinate system, no motion. */
export const makeState = (): State => ({
  line: 0, position: [0, 0, 0], origins: Array.from({ length: 9 }, (): Triple => [0, 0, 0]), system: 0,
  axisOffset: [0, 0, 0], keptOffset: [0, 0, 0], unit: 1, plane: 'XY', incremental: false, feedMode: 'per-minute', feed: undefined,
  motion: 800, retractToR: false, cycle: undefined, spindle: 'off', spindleSpeed: 0, slot: 0, ended: undefined, moves: [], events: [],
});

export const place = ([x, y, z]: Triple): Point3 => ({ x, y, z });

/** What to add to a program coordinate of this axis to get the machine coordinate. */
export const offsetOf = (state: State, axis: number): number => state.origins[state.system]![axis]! + state.axisOffset[axis]!;

type EventBody = ReadEvent extends infer E ? (E extends ReadEvent ? Omit<E, 'line' | 'beforeMove'> : never) : never;

export function note(state: State, event: EventBody): void {
  state.events.push({ ...event, line: state.line, beforeMove: state.moves.length } as ReadEvent);
}

const tooMany = (): Refusal =>
  refuse(`at most ${MOST_MOVES} moves`, 'more', 'Split the program, or look for a repeat count or a peck that is wrong.');

/** Goes straight to a place; a move of no length is none. */
export function go(state: State, to: Triple, feed?: number): Refusal | undefined {
  const [x, y, z] = state.position;
  if (x === to[0] && y === to[1] && z === to[2]) return undefined;
  const { line, spindle, spindleSpeed, feedMode } = state;
  const from = startPlace(state), end = place(to);
  return addMove(state, to, feed === undefined
    ? { kind: 'rapid', line, from, to: end, spindle, spindleSpeed }
    : { kind: 'line', line, from, to: end, spindle, spindleSpeed, feed, feedMode });
}

/** Where the next move starts: the very object the last one ended with, as programs have many moves. */
export const startPlace = (state: State): Point3 => state.moves[state.moves.length - 1]?.to ?? place(state.position);

export function addMove(state: State, to: Triple, move: ReadMove): Refusal | undefined {
  if (state.moves.length >= MOST_MOVES) return tooMany();
  state.moves.push(move);
  state.position = to;
  return undefined;
}
