/**
 * A second reader of RS274/NGC, written from the standard (NISTIR 6556) alone and sharing nothing with the source: the
 * words a program for a router needs and one regular expression. It trusts the form of the text; the strict
 * reader does not.
 */
export interface PlainMove {
  line: number;
  kind: 'rapid' | 'line' | 'arc';
  from: number[];
  to: number[];
  feed: number;
  centre?: number[];
  clockwise?: boolean;
  spindleOn: boolean;
}

const KNOWN = [0, 1, 2, 3, 4, 17, 20, 21, 40, 49, 54, 80, 90, 94];

interface Modes {
  here: number[];
  unit: number;
  feed: number;
  motion: number;
  spindleOn: boolean;
  ended: boolean;
}

type Words = (readonly [letter: string, value: number])[];
const find = (words: Words, letter: string) => words.find(([l]) => l === letter)?.[1];
const all = (words: Words, letter: string) => words.filter(([l]) => l === letter).map(([, value]) => value);

function wordsOf(line: string): Words {
  const code = line.replace(/\([^)]*\)/g, '').replace(/\s|%/g, '').toUpperCase();
  return [...code.matchAll(/([A-Z])([-+.\d]+)/g)].map((match) => [match[1]!, Number(match[2])] as const).filter(([letter]) => letter !== 'N');
}

/** Feed, then spindle, then units and motion: the order of the standard. */
function setModes(words: Words, modes: Modes): void {
  const feed = find(words, 'F');
  if (feed !== undefined) modes.feed = feed * modes.unit;
  for (const m of all(words, 'M')) {
    if (m === 3) modes.spindleOn = true;
    else if (m === 5) modes.spindleOn = false;
    else if (m === 2 || m === 30) modes.ended = true;
    else throw new Error(`M${m} has no place in a plain program`);
  }
  for (const g of all(words, 'G')) {
    if (!KNOWN.includes(g)) throw new Error(`G${g} has no place in a plain program`);
    if (g === 20) modes.unit = 25.4;
    if (g === 21) modes.unit = 1;
    if (g <= 3) modes.motion = g;
    if (g === 80) modes.motion = -1;
  }
}

function moveOf(words: Words, line: number, { here, unit, motion, feed, spindleOn }: Modes): PlainMove | undefined {
  const axes = ['X', 'Y', 'Z'].map((axis) => find(words, axis));
  if (axes.every((axis) => axis === undefined)) return undefined;
  const to = axes.map((axis, k) => (axis === undefined ? here[k]! : axis * unit));
  const common = { line, from: here, to, feed, spindleOn };
  if (motion === 0) return { ...common, kind: 'rapid' };
  if (motion === 1) return { ...common, kind: 'line' };
  if (motion < 0) throw new Error('no motion in force');
  const centre = [here[0]! + (find(words, 'I') ?? 0) * unit, here[1]! + (find(words, 'J') ?? 0) * unit];
  const radius = (p: number[]) => Math.hypot(p[0]! - centre[0]!, p[1]! - centre[1]!);
  if (Math.abs(radius(here) - radius(to)) > (unit === 1 ? 0.002 : 0.0002 * unit)) throw new Error('radii differ');
  return { ...common, kind: 'arc', centre, clockwise: motion === 2 };
}

export function plainRead(text: string): PlainMove[] {
  const moves: PlainMove[] = [];
  const modes: Modes = { here: [0, 0, 0], unit: 1, feed: 0, motion: -1, spindleOn: false, ended: false };
  text.split(/\r?\n/).forEach((line, index) => {
    const words = wordsOf(line);
    if (words.length === 0) return;
    if (modes.ended) throw new Error(`line ${index + 1} comes after the end`);
    setModes(words, modes);
    const move = moveOf(words, index + 1, modes);
    if (move === undefined) return;
    moves.push(move);
    modes.here = move.to;
  });
  if (!modes.ended) throw new Error('the program does not end');
  return moves;
}
