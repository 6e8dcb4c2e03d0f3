import { type Point3, lerp } from '../../geometry/point.ts';
import { PROGRAM_START, drawnMoves, pointOnArc } from '../../machining/job/moves.ts';
import type { Move } from '../../machining/job/pass.ts';
import type { Program, SetUp } from '../../machining/job/setup.ts';
import { type ReadMove, movesOf, readProgram } from '../../machining/reader/read-program.ts';

/** Greatest distance, mm, of a chord from the arc it stands for. */
export const CHORD_TOLERANCE = 0.01;

/** One move in sheet coordinates (mm, z 0 at the top face), and when the cutter makes it, in seconds from the program's start. */
export interface Step {
  readonly from: Point3;
  readonly move: Move;
  readonly begins: number;
  readonly ends: number;
  /** Line of the program's text that says it, counted from 0. */
  readonly line: number;
}

/** A program as its text says it, step by step; waiting for the spindle is a step that goes nowhere. */
export interface SteppedProgram {
  readonly file: string;
  readonly cutterDiameter: number;
  readonly text: string;
  readonly steps: readonly Step[];
}

/**
 * Reads a program back for playing. Where the cutter goes is what the text says; when it gets there is what was
 * estimated as the program was made. Throws a RangeError when the text does not make the moves that were timed.
 */
export function stepProgram(setup: Pick<SetUp, 'shift' | 'correction'>, program: Program): SteppedProgram {
  const { file, text, cutter, spindleStart } = program;
  const reading = readProgram(text);
  if (!reading.ok) throw new RangeError(`${file}, line ${reading.problems[0].line}: ${reading.problems[0].found}`);
  if (reading.moves.length !== program.seconds.length) {
    throw new RangeError(`${file} makes ${reading.moves.length} moves, not the ${program.seconds.length} that were timed`);
  }
  const dwell = reading.events.find(({ kind }) => kind === 'dwell');
  const wait = spindleStart > 0 ? { seconds: spindleStart, line: (dwell ?? reading.moves[0]!).line } : undefined;
  return { file, text, cutterDiameter: cutter.diameter, steps: stepsOf(reading.moves, { ends: program.seconds, setup, wait }) };
}

interface Timing {
  readonly ends: readonly number[];
  readonly setup: Pick<SetUp, 'shift' | 'correction'>;
  /** After the first move; its line counted from 1, as the reader counts. */
  readonly wait: { readonly seconds: number; readonly line: number } | undefined;
}

function stepsOf(moves: readonly ReadMove[], { ends, setup, wait }: Timing): Step[] {
  const steps: Step[] = [];
  const [dx, dy] = setup.shift;
  let from: Point3 = { x: PROGRAM_START.x + dx, y: PROGRAM_START.y + dy, z: PROGRAM_START.z };
  let clock = 0;
  const take = (move: Move, until: number, line: number) => {
    steps.push({ from, move, begins: clock, ends: until, line: line - 1 });
    from = move.to;
    clock = until;
  };
  moves.forEach((read, index) => {
    const waited = index > 0 && wait ? wait.seconds : 0;
    const begins = clock;
    const pieces = drawnMoves(setup, movesOf([read], CHORD_TOLERANCE));
    pieces.forEach((piece, k) => take(piece, begins + ((ends[index]! + waited - begins) * (k + 1)) / pieces.length, read.line));
    if (index === 0 && wait) take({ kind: 'rapid', to: from }, clock + wait.seconds, wait.line);
  });
  return steps;
}

/** The part of a step's move that is done by `seconds` after the program's start; undefined when none is. */
export function partOfStep({ from, move, begins, ends }: Step, seconds: number): Move | undefined {
  if (seconds <= begins) return undefined;
  return seconds >= ends ? move : { ...move, to: pointOnMove(from, move, (seconds - begins) / (ends - begins)) };
}

/** The place a fraction (0 to 1) of a move's way after its start. */
export function pointOnMove(from: Point3, move: Move, fraction: number): Point3 {
  if (move.kind === 'arc') return pointOnArc(from, move, fraction);
  return { ...lerp(from, move.to, fraction), z: (1 - fraction) * from.z + fraction * move.to.z };
}
