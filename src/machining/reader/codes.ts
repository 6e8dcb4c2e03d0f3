import { shown, type Block, type Word } from './block.ts';
import { refuse, type Refusal } from './types.ts';

/** The words of one line, sorted: G codes in tenths (G59.1 is 591), M codes, and one value for every other letter. */
export interface Codes {
  /** The G code of each modal group on this line; group 0 holds the one that is not modal. */
  readonly g: ReadonlyMap<number, number>;
  readonly m: ReadonlyMap<number, number>;
  /** M7 beside M8 is the one pair of a group that may share a line. */
  readonly mist: boolean;
  readonly values: ReadonlyMap<string, number>;
  readonly comments: readonly string[];
}

/** NISTIR 6556, table 4. */
const G_GROUPS: readonly (readonly [group: number, codes: readonly number[]])[] = [
  [0, [40, 100, 280, 300, 530, 920, 921, 922, 923]],
  [1, [0, 10, 20, 30, 382, 800, 810, 820, 830, 840, 850, 860, 870, 880, 890]],
  [2, [170, 180, 190]],
  [3, [900, 910]],
  [5, [930, 940]],
  [6, [200, 210]],
  [7, [400, 410, 420]],
  [8, [430, 490]],
  [10, [980, 990]],
  [12, [540, 550, 560, 570, 580, 590, 591, 592, 593]],
  [13, [610, 611, 640]],
];

const M_GROUPS: readonly (readonly [group: number, codes: readonly number[]])[] = [
  [4, [0, 1, 2, 30, 60]],
  [6, [6]],
  [7, [3, 4, 5]],
  [8, [7, 8, 9]],
  [9, [48, 49]],
];

const UNSUPPORTED: ReadonlyMap<number, string> = new Map([
  [382, 'Probing is not supported: a program for cutting needs none.'],
  [410, 'Cutter radius compensation is not supported: write the path of the cutter itself.'],
  [420, 'Cutter radius compensation is not supported: write the path of the cutter itself.'],
  ...[840, 850, 860, 870, 880, 890].map((code) => [code, 'Of the canned cycles only G81, G82 and G83 are supported: write the moves out.'] as const),
]);

const MOST_M_CODES = 4;
const groupsOf = (table: typeof G_GROUPS) => new Map(table.flatMap(([group, codes]) => codes.map((code) => [code, group] as const)));
const gGroups = groupsOf(G_GROUPS);
const mGroups = groupsOf(M_GROUPS);

export const gName = (code: number): string => `G${code / 10}`;

/** Sorts a line's words and holds them to the rules about modal groups and repeated letters. */
export function sortCodes(block: Block): Codes | Refusal {
  const g = new Map<number, number>(), m = new Map<number, number>(), values = new Map<string, number>();
  const coolant = { mist: false };
  for (const word of block.words) {
    const fault = word.letter === 'G' ? addG(word, g) : word.letter === 'M' ? addM(word, m, coolant) : addValue(word, values);
    if (fault) return fault;
  }
  if (block.words.filter(({ letter }) => letter === 'M').length > MOST_M_CODES) {
    return refuse('at most four M words on a line', 'more', 'Put some of them on a line of their own.');
  }
  return { g, m, mist: coolant.mist, values, comments: block.comments };
}

function addG({ value }: Word, g: Map<number, number>): Refusal | undefined {
  const code = Math.round(value * 10);
  const group = Math.abs(code - value * 10) < 1e-6 ? gGroups.get(code) : undefined;
  if (group === undefined) return refuse('a G code of the standard', `G${value}`, 'Take the word away or correct it.');
  const unsupported = UNSUPPORTED.get(code);
  if (unsupported !== undefined) return refuse('a supported G code', gName(code), unsupported);
  const other = g.get(group);
  if (other !== undefined) return sameGroup(gName(other), gName(code));
  g.set(group, code);
  return undefined;
}

function addM({ value }: Word, m: Map<number, number>, coolant: { mist: boolean }): Refusal | undefined {
  const group = mGroups.get(value);
  if (group === undefined) return refuse('an M code of the standard', `M${value}`, 'Take the word away or correct it.');
  const other = m.get(group);
  const pair = other !== undefined && other + value === 15 && other !== value && !coolant.mist;
  if (other !== undefined && !pair) return sameGroup(`M${other}`, `M${value}`);
  if (pair) coolant.mist = true;
  m.set(group, pair ? 8 : value);
  return undefined;
}

const sameGroup = (a: string, b: string): Refusal =>
  refuse('one word of each modal group on a line', `${a} and ${b}`, 'Put one of them on a line of its own.');

function addValue({ letter, value }: Word, values: Map<string, number>): Refusal | undefined {
  if ('ABC'.includes(letter)) return refuse('axes X, Y and Z', shown(`${letter}${value}`), 'Rotary axes are not supported.');
  if (values.has(letter)) return refuse(`one ${letter} word on a line`, 'two', 'Take one of them away.');
  values.set(letter, value);
  return undefined;
}
