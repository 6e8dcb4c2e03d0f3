import { gName, type Codes } from './codes.ts';
import { AXES, type State } from './state.ts';
import { refuse, type Refusal } from './types.ts';

/** The codes of group 0 that use axis words themselves: G10, G28, G30, G92. */
const AXIS_USERS = [100, 280, 300, 920];
const NO_MOTION = 800;

export const isArc = (motion: number | undefined): boolean => motion === 20 || motion === 30;
export const isCycle = (motion: number | undefined): boolean => motion !== undefined && motion >= 810 && motion <= 830;
const hasAxes = ({ values }: Codes): boolean => AXES.some((axis) => values.has(axis));

/** The motion this line makes: the one it names, or the one in force if axis words are there and nothing else uses them. */
export function motionOf(codes: Codes, state: State): number | undefined {
  const named = codes.g.get(1);
  if (named !== undefined) return named === NO_MOTION ? undefined : named;
  const user = AXIS_USERS.includes(codes.g.get(0) ?? -1);
  return hasAxes(codes) && !user && state.motion !== NO_MOTION ? state.motion : undefined;
}

/** Which codes of the line give each letter a use; letters not here need none. */
const USES: readonly (readonly [letters: string, advice: string, used: (codes: Codes, motion: number | undefined) => boolean])[] = [
  ['IJK', 'I, J and K belong to G2 and G3.', (_, motion) => isArc(motion)],
  ['R', 'R belongs to G2, G3 and canned cycles.', (_, motion) => isArc(motion) || isCycle(motion)],
  ['Q', 'Q belongs to G83.', (_, motion) => motion === 830],
  ['L', 'L belongs to canned cycles and G10.', ({ g }, motion) => isCycle(motion) || g.get(0) === 100],
  ['P', 'P belongs to G4, G10 and G82.', ({ g }, motion) => motion === 820 || g.get(0) === 40 || g.get(0) === 100],
  ['H', 'H belongs to G43.', ({ g }) => g.get(8) === 430],
  ['D', 'D belongs to cutter radius compensation, which is not supported.', () => false],
];

/** Faults of a line that show before anything of it is carried out. */
export function checkUses(codes: Codes, state: State): Refusal | undefined {
  return checkAxisWords(codes, state) ?? checkLetters(codes, motionOf(codes, state)) ?? checkSigns(codes);
}

function checkAxisWords(codes: Codes, state: State): Refusal | undefined {
  const named = codes.g.get(1), zero = codes.g.get(0) ?? -1;
  const user = AXIS_USERS.includes(zero);
  if (user && named !== undefined && named !== NO_MOTION) {
    return refuse('axis words with one use on a line', `${gName(named)} and ${gName(zero)}`, 'Put one of them on a line of its own.');
  }
  if (user) return undefined;
  const motion = motionOf(codes, state);
  if (hasAxes(codes) && motion === undefined) {
    return refuse('a motion for the axis words', named === undefined && state.motion === NO_MOTION ? 'no motion in force' : 'G80', 'Say G0, G1, G2 or G3 on this line.');
  }
  if (zero === 530 && motion !== 0 && motion !== 10) return refuse('G0 or G1 with G53', motion === undefined ? 'no motion' : gName(motion), 'Use G53 with a straight move.');
  if (motion !== undefined && !hasAxes(codes)) return refuse(`an X, Y or Z word with ${gName(motion)}`, 'none', 'Say where to go.');
  return undefined;
}

function checkLetters(codes: Codes, motion: number | undefined): Refusal | undefined {
  for (const [letters, advice, used] of USES) {
    const idle = [...letters].find((letter) => codes.values.has(letter));
    if (idle !== undefined && !used(codes, motion)) return refuse(`no ${idle} word on this line`, `${idle}${codes.values.get(idle)}`, advice);
  }
  return undefined;
}

function checkSigns({ values }: Codes): Refusal | undefined {
  const below = ['F', 'S', 'T', 'P', 'H'].find((letter) => (values.get(letter) ?? 0) < 0);
  if (below !== undefined) return refuse(`${below} of 0 or more`, `${below}${values.get(below)}`, 'Take the minus sign away.');
  const broken = ['T', 'H', 'L'].find((letter) => !Number.isInteger(values.get(letter) ?? 0));
  return broken === undefined ? undefined : refuse(`a whole number after ${broken}`, `${broken}${values.get(broken)}`, 'Write a whole number.');
}
