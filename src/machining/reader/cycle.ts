import { gName, type Codes } from './codes.ts';
import { feedFor } from './feed.ts';
import { PLANE_AXES, type PlaneAxes } from './plane.ts';
import { AXES, go, note, offsetOf, type Cycle, type State, type Triple } from './state.ts';
import { refuse, type Refusal } from './types.ts';

/** How far above the last peck the rapid back into the hole stops: 0.010 inch in the standard's reference code. */
const BACK_OFF = 0.254;
const MOST_REPEATS = 10_000;
const MOST_PECKS = 10_000;

/** What all repeats of one cycle share. Heights are machine coordinates of the axis along the hole. */
interface Run {
  readonly cycle: Cycle;
  readonly axes: PlaneAxes;
  readonly retract: number;
  readonly end: number;
  /** Where the cycle leaves the cutter: the old height if G98 is in force and that is above R, else R. */
  readonly clear: number;
  readonly feed: number;
}

/** G81 drills, G82 drills and dwells, G83 drills in pecks: NISTIR 6556, 3.5.16, in the plane selected. */
export function runCycle(code: number, codes: Codes, state: State): Refusal | undefined {
  if (codes.g.get(0) === 530) return refuse('no G53 with a canned cycle', 'G53', 'Put G53 on a line with a straight move.');
  const axes = PLANE_AXES[state.plane];
  const repeats = codes.values.get('L') ?? 1;
  if (repeats < 1 || repeats > MOST_REPEATS) return refuse(`L from 1 to ${MOST_REPEATS}`, `L${repeats}`, 'Correct the number of repeats.');
  if (state.feedMode === 'inverse-time') return refuse('G94 with a canned cycle', 'G93', 'Give feeds in units per minute.');
  const cycle = cycleOf(code, codes, state, axes);
  if ('expected' in cycle) return cycle;
  const feed = feedFor(0, codes, state);
  if (typeof feed !== 'number') return feed;
  state.cycle = cycle;
  return repeat(repeats, runOf(cycle, axes, feed, state), codes, state);
}

/** The numbers of the cycle: R, Z, P and Q stay for the next lines of the same cycle. */
function cycleOf(code: number, { values }: Codes, state: State, { normal }: PlaneAxes): Cycle | Refusal {
  const kept = state.cycle?.code === code ? state.cycle : undefined;
  const length = (letter: string, before: number | undefined) => (values.has(letter) ? values.get(letter)! * state.unit : before);
  const depth = AXES[normal];
  const retract = length('R', kept?.retract), end = length(depth, kept?.end), peck = length('Q', kept?.peck);
  const dwell = values.get('P') ?? kept?.dwell;
  if (retract === undefined) return missing('R', code);
  if (end === undefined) return missing(depth, code);
  if (code === 820 && dwell === undefined) return missing('P', code);
  if (code === 830 && peck === undefined) return missing('Q', code);
  const numbers = { code, retract, end, peck, dwell: dwell ?? 0 };
  return checkDepths(numbers, state.incremental ? -end : retract - end, depth) ?? numbers;
}

function checkDepths({ retract, end, peck }: Cycle, depthOfHole: number, axis: string): Refusal | undefined {
  if (depthOfHole < 0) return refuse(`R above ${axis}`, `R ${retract} mm, ${axis} ${end} mm`, 'The retract height lies above the bottom of the hole.');
  if (peck !== undefined && peck <= 0) return refuse('Q above 0', `pecks of ${peck} mm`, 'Give the depth of one peck.');
  if (peck !== undefined && depthOfHole > peck * MOST_PECKS) return refuse(`at most ${MOST_PECKS} pecks in a hole`, `pecks of ${peck} mm`, 'Peck deeper.');
  return undefined;
}

const missing = (letter: string, code: number): Refusal =>
  refuse(`a ${letter} word with ${gName(code)}`, 'none', 'Give it on the first line of the cycle.');

function runOf(cycle: Cycle, axes: PlaneAxes, feed: number, state: State): Run {
  const now = state.position[axes.normal];
  const zero = offsetOf(state, axes.normal);
  const retract = cycle.retract + (state.incremental ? now : zero);
  const end = cycle.end + (state.incremental ? retract : zero);
  return { cycle, axes, retract, end, feed, clear: state.retractToR ? retract : Math.max(now, retract) };
}

function repeat(times: number, run: Run, codes: Codes, state: State): Refusal | undefined {
  const { axes: { normal }, retract } = run;
  const raised = state.position[normal] < retract ? along(run, state, retract) : undefined;
  if (raised) return raised;
  for (let k = 0; k < times; k++) {
    const refusal = go(state, across(codes, state, run.axes)) ?? along(run, state, retract) ?? bore(run, state);
    if (refusal) return refusal;
  }
  return undefined;
}

/** The place above the hole; in incremental distance each repeat goes on from the one before. */
function across({ values }: Codes, state: State, { first, second }: PlaneAxes): Triple {
  const to: Triple = [...state.position];
  for (const axis of [first, second]) {
    const word = values.get(AXES[axis]);
    if (word !== undefined) to[axis] = word * state.unit + (state.incremental ? to[axis] : offsetOf(state, axis));
  }
  return to;
}

/** A move along the hole, rapid unless a feed is given. */
function along({ axes }: Run, state: State, height: number, feed?: number): Refusal | undefined {
  const to: Triple = [...state.position];
  to[axes.normal] = height;
  return go(state, to, feed);
}

function bore(run: Run, state: State): Refusal | undefined {
  const refusal = run.cycle.code === 830 ? peckDown(run, state) : along(run, state, run.end, run.feed);
  if (refusal) return refusal;
  if (run.cycle.code === 820) note(state, { kind: 'dwell', seconds: run.cycle.dwell });
  return along(run, state, run.clear);
}

/** The standard's text retracts between pecks to the clear height, its reference code to R; R is done here. */
function peckDown(run: Run, state: State): Refusal | undefined {
  const { end, retract, cycle: { peck = Infinity }, feed } = run;
  for (let k = 1, depth = retract - peck; depth > end; k++, depth = retract - k * peck) {
    const refusal = along(run, state, depth, feed) ?? along(run, state, retract) ?? along(run, state, Math.min(retract, depth + BACK_OFF));
    if (refusal) return refusal;
  }
  return along(run, state, end, feed);
}
