import type { PlayedProgram } from '../worker/protocol.ts';
import { passStarts } from './jumps.ts';
import { lastAtMost, type Moment } from './moments.ts';
import type { Overlay } from './overlay.ts';

/** Most moves of a trail: a pass goes over the same way again and again, and all of it takes longer to draw than a frame lasts. */
const MOST_MOVES = 600;

/** What is drawn over the sheet at a moment: the cutter, and the way it has gone in the pass under way. */
export function markedAt(program: PlayedProgram, moment: Moment): Pick<Overlay, 'cutter' | 'trail'> {
  const { x, y, z } = moment;
  return { cutter: { x, y, z, diameter: program.cutterDiameter }, trail: trailOf(program, moment) };
}

function trailOf(program: PlayedProgram, { move, x, y }: Moment): NonNullable<Overlay['trail']> {
  const starts = passStarts(program);
  const first = Math.max(starts[lastAtMost(starts, move)] ?? 0, move - MOST_MOVES);
  const cut: number[] = [];
  const rapid: number[] = [];
  for (let k = first; k <= move; k++) {
    const [fromX, fromY] = [program.places[3 * k]!, program.places[3 * k + 1]!];
    const [toX, toY] = k === move ? [x, y] : [program.places[3 * k + 3]!, program.places[3 * k + 4]!];
    if (fromX !== toX || fromY !== toY) (program.feeds[k]! > 0 ? cut : rapid).push(fromX, fromY, toX, toY);
  }
  return { cut: Float32Array.from(cut), rapid: Float32Array.from(rapid) };
}
