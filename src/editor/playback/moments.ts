import type { PlayedProgram } from '../worker/protocol.ts';

/** What a program does at one moment. */
export interface Moment {
  /** Number of the program, and seconds since it began. */
  readonly program: number;
  readonly seconds: number;
  /** Number of the move under way, and how much of its time has passed, 0 to 1. */
  readonly move: number;
  readonly done: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** mm/min; 0 when `way` is not `feed`. */
  readonly feed: number;
  readonly way: 'feed' | 'rapid' | 'wait';
  /** Line of the program's text, counted from 0. */
  readonly line: number;
}

export const movesOf = ({ feeds }: PlayedProgram): number => feeds.length;
export const durationOf = ({ seconds }: PlayedProgram): number => seconds[seconds.length - 1] ?? 0;
export const totalSeconds = (programs: readonly PlayedProgram[]): number => programs.reduce((sum, program) => sum + durationOf(program), 0);

/** Seconds from the beginning of the first program to the beginning of a later one. */
export const startOf = (programs: readonly PlayedProgram[], program: number): number => totalSeconds(programs.slice(0, program));

/** The last index whose number is at most `value`; -1 when there is none. Numbers must not fall. */
export function lastAtMost(numbers: ArrayLike<number>, value: number): number {
  let [low, high] = [0, numbers.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numbers[middle]! <= value) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** The move under way so many seconds after a program's start: at a joint the one that begins, after the end the last one; -1 for no moves. */
export const moveAt = (program: PlayedProgram, seconds: number): number =>
  Math.min(movesOf(program) - 1, Math.max(0, lastAtMost(program.seconds, seconds)));

/** The program that runs at a time counted through all of them, and its own time. A joint belongs to the one that begins. */
export function programAt(programs: readonly PlayedProgram[], seconds: number): { readonly program: number; readonly seconds: number } {
  let left = Math.max(0, seconds);
  for (const [program, played] of programs.entries()) {
    const last = program === programs.length - 1;
    if (left < durationOf(played) || last) return { program, seconds: Math.min(left, durationOf(played)) };
    left -= durationOf(played);
  }
  return { program: 0, seconds: 0 };
}

/** What is done at a time counted through all programs; undefined where no program moves. */
export function momentAt(programs: readonly PlayedProgram[], seconds: number): Moment | undefined {
  const at = programAt(programs, seconds);
  const played = programs[at.program];
  if (played === undefined || movesOf(played) === 0) return undefined;
  const move = moveAt(played, at.seconds);
  const [begins, ends] = [played.seconds[move]!, played.seconds[move + 1]!];
  const done = ends > begins ? Math.min(1, (at.seconds - begins) / (ends - begins)) : 1;
  const on = (axis: number) => {
    const [from, to] = [played.places[3 * move + axis]!, played.places[3 * move + 3 + axis]!];
    return done === 1 ? to : from + done * (to - from);
  };
  const feed = played.feeds[move]!;
  return { ...at, move, done, x: on(0), y: on(1), z: on(2), feed, way: feed > 0 ? 'feed' : goesNowhere(played, move) ? 'wait' : 'rapid', line: played.lines[move]! };
}

function goesNowhere({ places }: PlayedProgram, move: number): boolean {
  return [0, 1, 2].every((axis) => places[3 * move + axis] === places[3 * move + 3 + axis]);
}
