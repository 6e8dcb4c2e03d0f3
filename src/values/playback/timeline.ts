import { arcRadius, arcSweep, chordCount } from '../../machining/job/moves.ts';
import { CHORD_TOLERANCE, type Step, type SteppedProgram, pointOnMove } from './steps.ts';

/** A program as it is played back: one entry per move, in sheet coordinates (mm, y up, z 0 at the top face). */
export interface PlayedProgram {
  readonly file: string;
  readonly cutterDiameter: number;
  /** x, y, z of the end of every move, after the start at index 0: 3 * (moves + 1) numbers. Arcs are divided into chords within 0.01 mm. */
  readonly places: Float64Array<ArrayBuffer>;
  /** Seconds from the program's start at which each place is reached: moves + 1 numbers, none less than the one before it. */
  readonly seconds: Float64Array<ArrayBuffer>;
  /** Feed in mm/min per move, 0 for a rapid and for a wait, which goes nowhere. */
  readonly feeds: Float32Array<ArrayBuffer>;
  /** Line of the program's text each move belongs to, counted from 0. */
  readonly lines: Uint32Array<ArrayBuffer>;
  readonly text: string;
  /** The set-up it belongs to, and that one's place in the tiling; absent where there is only one. */
  readonly setUp?: { readonly name: string; readonly place: number };
}

/** Lays a program out as flat arrays. Along a move the time passes evenly: where it speeds up and slows down is not told. */
export function playedProgram({ file, cutterDiameter, text, steps }: SteppedProgram): PlayedProgram {
  const chords = Uint32Array.from(steps, chordsOf);
  const count = chords.reduce((sum, n) => sum + n, 0);
  const places = new Float64Array(3 * (count + 1));
  const seconds = new Float64Array(count + 1);
  const feeds = new Float32Array(count);
  const lines = new Uint32Array(count);
  const first = steps[0];
  if (first) places.set([first.from.x, first.from.y, first.from.z]);
  let at = 0;
  steps.forEach(({ from, move, begins, ends, line }, index) => {
    const pieces = chords[index]!;
    for (let k = 1; k <= pieces; k++) {
      const { x, y, z } = k === pieces ? move.to : pointOnMove(from, move, k / pieces);
      feeds[at] = move.kind === 'rapid' ? 0 : move.feed;
      lines[at] = line;
      at += 1;
      places.set([x, y, z], 3 * at);
      seconds[at] = k === pieces ? ends : begins + ((ends - begins) * k) / pieces;
    }
  });
  return { file, cutterDiameter, places, seconds, feeds, lines, text };
}

function chordsOf({ from, move }: Step): number {
  return move.kind === 'arc' ? chordCount(arcRadius(from, move), arcSweep(from, move), CHORD_TOLERANCE) : 1;
}
