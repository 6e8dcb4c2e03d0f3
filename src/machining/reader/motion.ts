import { moveArc } from './arc.ts';
import { isArc, isCycle } from './check.ts';
import { type Codes } from './codes.ts';
import { runCycle } from './cycle.ts';
import { feedFor } from './feed.ts';
import { target } from './offsets.ts';
import { AXES, go, type State, type Triple } from './state.ts';
import { refuse, type Refusal } from './types.ts';

/** G0 to G3 and the canned cycles: what a line does to the cutter's place. */
export function makeMotion(motion: number, codes: Codes, state: State): Refusal | undefined {
  if (isCycle(motion)) return runCycle(motion, codes, state);
  if (isArc(motion)) return moveArc(motion === 20, codes, state);
  const to = codes.g.get(0) === 530 ? machineTarget(codes, state) : target(codes, state);
  if ('expected' in to) return to;
  if (motion === 0) return go(state, to);
  const [x, y, z] = state.position;
  const feed = feedFor(Math.hypot(to[0] - x, to[1] - y, to[2] - z), codes, state);
  return typeof feed === 'number' ? go(state, to, feed) : feed;
}

/** G53: the words are machine coordinates. */
function machineTarget({ values }: Codes, state: State): Triple | Refusal {
  if (state.incremental) return refuse('G90 with G53', 'G91', 'Machine coordinates are always absolute.');
  return AXES.map((axis, index) => {
    const word = values.get(axis);
    return word === undefined ? state.position[index]! : word * state.unit;
  }) as Triple;
}
