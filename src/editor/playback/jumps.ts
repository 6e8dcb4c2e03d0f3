import type { PlayedProgram } from '../worker/protocol.ts';
import { durationOf, lastAtMost, movesOf, programAt, startOf, totalSeconds } from './moments.ts';

/** Times nearer than this, seconds, are one: sums of times round. */
const SAME = 1e-6;

/** Where one may jump to within a program: indices of places, in order. */
type Stops = (program: PlayedProgram) => readonly number[];

const memo = (stops: Stops): Stops => {
  const known = new WeakMap<PlayedProgram, readonly number[]>();
  return (program) => {
    const found = known.get(program) ?? stops(program);
    known.set(program, found);
    return found;
  };
};

/** Where blocks end: chords of one arc, which share a line, are one move. */
export const blockEnds: Stops = memo((program) => {
  const { lines } = program;
  const ends = [0];
  for (let k = 1; k <= movesOf(program); k++) if (k === movesOf(program) || lines[k] !== lines[k - 1]) ends.push(k);
  return ends;
});

/** Where passes begin: the program's start, and wherever the cutter has come up to its clearance, the greatest height of all. */
export const passStarts: Stops = memo((program) => {
  const { places } = program;
  let clearance = -Infinity;
  for (let k = 2; k < places.length; k += 3) clearance = Math.max(clearance, places[k]!);
  const starts = [0];
  for (let k = 1; k < movesOf(program); k++) if (places[3 * k + 2] === clearance && places[3 * k - 1]! < clearance) starts.push(k);
  return starts;
});

/** The next stop after a time counted through all programs, or the end. */
export function nextStop(programs: readonly PlayedProgram[], seconds: number, stops: Stops): number {
  const at = programAt(programs, seconds);
  for (let program = at.program; program < programs.length; program++) {
    const [played, begins] = [programs[program]!, startOf(programs, program)];
    const found = stops(played).find((k) => begins + played.seconds[k]! > seconds + SAME);
    if (found !== undefined) return begins + played.seconds[found]!;
  }
  return totalSeconds(programs);
}

/** The last stop before a time counted through all programs, or the beginning. */
export function previousStop(programs: readonly PlayedProgram[], seconds: number, stops: Stops): number {
  for (let { program } = programAt(programs, seconds); program >= 0; program--) {
    const played = programs[program];
    if (played === undefined) break;
    const begins = startOf(programs, program);
    const found = stops(played).findLast((k) => begins + played.seconds[k]! < seconds - SAME);
    if (found !== undefined) return begins + played.seconds[found]!;
  }
  return 0;
}

/** When a line of a program begins to act, counted through all programs; a line that moves nothing counts as the next that does. */
export function timeOfLine(programs: readonly PlayedProgram[], program: number, line: number): number {
  const played = programs[program];
  if (played === undefined) return 0;
  const move = lastAtMost(played.lines, line - 1) + 1;
  return startOf(programs, program) + (move < movesOf(played) ? played.seconds[move]! : durationOf(played));
}
