import { type Codes } from './codes.ts';
import { checkUses, motionOf } from './check.ts';
import { changeOffsets } from './offsets.ts';
import { makeMotion } from './motion.ts';
import { note, type State } from './state.ts';
import { refuse, type Refusal } from './types.ts';

const INCH = 25.4;

type Step = (codes: Codes, state: State) => Refusal | undefined;

/** NISTIR 6556, table 8: the order in which the words of one line act, wherever they stand on it. */
const ORDER: readonly Step[] = [
  comments, feedMode, feed, spindleSpeed, slot, toolChange, spindle, coolant, dwell, plane, units, toolLength,
  coordinateSystem, distanceMode, retractMode, changeOffsets, motion, stop,
];

/**
 * Carries out one line. Words without influence on the cutter's path are accepted and pass: G40, G49, G61, G61.1, G64,
 * M48, M49.
 */
export function execute(codes: Codes, state: State): Refusal | undefined {
  const fault = checkUses(codes, state);
  if (fault) return fault;
  for (const step of ORDER) {
    const refusal = step(codes, state);
    if (refusal) return refusal;
  }
  return undefined;
}

function comments(codes: Codes, state: State): undefined {
  for (const comment of codes.comments) {
    const message = /^\s*MSG,(.*)$/i.exec(comment)?.[1];
    note(state, message === undefined ? { kind: 'comment', text: comment } : { kind: 'message', text: message });
  }
}

/** A feed in the other mode's unit means nothing, so a change of mode leaves no feed in force. */
function feedMode({ g }: Codes, state: State): undefined {
  const code = g.get(5);
  if (code === undefined) return;
  const mode = code === 930 ? 'inverse-time' : 'per-minute';
  if (mode !== state.feedMode) state.feed = undefined;
  state.feedMode = mode;
}

function feed({ values }: Codes, state: State): undefined {
  const value = values.get('F');
  if (value !== undefined) state.feed = state.feedMode === 'inverse-time' ? value : value * state.unit;
}

function spindleSpeed({ values }: Codes, state: State): undefined {
  state.spindleSpeed = values.get('S') ?? state.spindleSpeed;
}

function slot({ values }: Codes, state: State): undefined {
  state.slot = values.get('T') ?? state.slot;
}

function toolChange({ m }: Codes, state: State): undefined {
  if (!m.has(6)) return;
  turn(state, 'off');
  note(state, { kind: 'tool-change', slot: state.slot });
}

function turn(state: State, direction: State['spindle']): void {
  if (direction !== 'off' || state.spindle !== 'off') note(state, { kind: 'spindle', direction, speed: state.spindleSpeed });
  state.spindle = direction;
}

function spindle({ m }: Codes, state: State): undefined {
  const code = m.get(7);
  if (code !== undefined) turn(state, code === 3 ? 'clockwise' : code === 4 ? 'counter-clockwise' : 'off');
}

function coolant({ m, mist }: Codes, state: State): undefined {
  const code = m.get(8);
  if (code !== undefined) note(state, { kind: 'coolant', mist: mist || code === 7, flood: code === 8 });
}

function dwell({ g, values }: Codes, state: State): Refusal | undefined {
  if (g.get(0) !== 40) return undefined;
  const seconds = values.get('P');
  if (seconds === undefined) return refuse('a P word with G4', 'none', 'Say how many seconds to wait.');
  note(state, { kind: 'dwell', seconds });
  return undefined;
}

function plane({ g }: Codes, state: State): undefined {
  const code = g.get(2);
  if (code !== undefined) state.plane = code === 170 ? 'XY' : code === 180 ? 'XZ' : 'YZ';
}

function units({ g }: Codes, state: State): undefined {
  const code = g.get(6);
  if (code !== undefined) state.unit = code === 200 ? INCH : 1;
}

function toolLength({ g, values }: Codes): Refusal | undefined {
  if (g.get(8) !== 430) return undefined;
  const slotNumber = values.get('H');
  if (slotNumber === 0) return undefined;
  return refuse('G49, or G43 H0', slotNumber === undefined ? 'G43 without H' : `G43 H${slotNumber}`,
    'There is no table of tool lengths here: set Z to the sheet with the cutter in place.');
}

function coordinateSystem({ g }: Codes, state: State): undefined {
  const code = g.get(12);
  if (code !== undefined) state.system = code > 590 ? code - 591 + 6 : (code - 540) / 10;
}

function distanceMode({ g }: Codes, state: State): undefined {
  const code = g.get(3);
  if (code !== undefined) state.incremental = code === 910;
}

function retractMode({ g }: Codes, state: State): undefined {
  const code = g.get(10);
  if (code !== undefined) state.retractToR = code === 990;
}

function motion(codes: Codes, state: State): Refusal | undefined {
  const now = motionOf(codes, state);
  const refusal = now === undefined ? undefined : makeMotion(now, codes, state);
  state.motion = codes.g.get(1) ?? state.motion;
  if (state.motion < 810) state.cycle = undefined;
  return refusal;
}

function stop({ m }: Codes, state: State): undefined {
  const code = m.get(4);
  if (code === undefined) return;
  if (code !== 2 && code !== 30) {
    note(state, { kind: 'pause', optional: code === 1 });
    return;
  }
  turn(state, 'off');
  state.ended = code === 2 ? 'M2' : 'M30';
  note(state, { kind: 'end', word: state.ended });
}
