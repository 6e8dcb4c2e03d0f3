import { type Codes } from './codes.ts';
import { AXES, go, offsetOf, type State, type Triple } from './state.ts';
import { refuse, type Refusal } from './types.ts';

/** G10, G28, G30 and the G92 family. The stored home places of G28 and G30 are taken to be the machine's zero. */
export function changeOffsets(codes: Codes, state: State): Refusal | undefined {
  switch (codes.g.get(0)) {
    case 100: return setOrigin(codes, state);
    case 280: case 300: return goHome(codes, state);
    case 920: return setAxisOffset(codes, state);
    case 921: state.axisOffset = [0, 0, 0]; state.keptOffset = [0, 0, 0]; return undefined;
    case 922: state.axisOffset = [0, 0, 0]; return undefined;
    case 923: state.axisOffset = [...state.keptOffset]; return undefined;
    default: return undefined;
  }
}

/** Where the axis words of a line point to, in machine coordinates; axes without a word stay. */
export function target({ values }: Codes, state: State): Triple {
  return AXES.map((axis, index) => {
    const word = values.get(axis);
    if (word === undefined) return state.position[index]!;
    return word * state.unit + (state.incremental ? state.position[index]! : offsetOf(state, index));
  }) as Triple;
}

function setOrigin({ values }: Codes, state: State): Refusal | undefined {
  if (values.get('L') !== 2) return refuse('L2 with G10', `L${values.get('L') ?? ' missing'}`, 'Only the origins of coordinate systems can be set.');
  const origin = state.origins[(values.get('P') ?? 0) - 1];
  if (origin === undefined) return refuse('P1 to P9 with G10', `P${values.get('P') ?? ' missing'}`, 'Name one of the nine coordinate systems.');
  AXES.forEach((axis, index) => {
    const word = values.get(axis);
    if (word !== undefined) origin[index] = word * state.unit;
  });
  return undefined;
}

function goHome(codes: Codes, state: State): Refusal | undefined {
  return go(state, target(codes, state)) ?? go(state, [0, 0, 0]);
}

function setAxisOffset({ values }: Codes, state: State): Refusal | undefined {
  if (!AXES.some((axis) => values.has(axis))) return refuse('an X, Y or Z word with G92', 'none', 'Say what the axis should read.');
  AXES.forEach((axis, index) => {
    const word = values.get(axis);
    if (word !== undefined) state.axisOffset[index] = state.position[index]! - state.origins[state.system]![index]! - word * state.unit;
  });
  state.keptOffset = [...state.axisOffset];
  return undefined;
}
