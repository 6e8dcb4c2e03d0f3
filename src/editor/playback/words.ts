import { amount } from '../../values/check.ts';
import type { PlayedProgram } from '../worker/protocol.ts';
import { lastAtMost, type Moment } from './moments.ts';

/** A time as h:mm:ss, whole seconds that have passed. */
export function clock(seconds: number): string {
  // Sums of times round: a second that is all but over is over.
  const whole = Math.floor(seconds + 1e-6);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${String(Math.floor(whole / 3600))}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

export function feedWords({ way, feed }: Pick<Moment, 'way' | 'feed'>): string {
  if (way === 'wait') return 'waiting for the spindle';
  return way === 'rapid' ? 'rapid' : amount(Math.round(feed * 10) / 10, 'mm/min');
}

/** Height told against the sheet's top face. */
export function depthWords(z: number): string {
  const height = Math.round(Math.abs(z) * 100) / 100;
  if (height === 0) return 'at the top';
  return `${amount(height, 'mm')} ${z < 0 ? 'below' : 'above'} the top`;
}

export const placeWords = ({ x, y }: Pick<Moment, 'x' | 'y'>): string => `x ${x.toFixed(2)}, y ${y.toFixed(2)} mm`;

/** What a program is called in a list: its set-up, where there are several, and its file. */
export const programName = ({ file, setUp }: Pick<PlayedProgram, 'file' | 'setUp'>): string => (setUp ? `${setUp.name}, ${fileName(file)}` : fileName(file));

/** A program's file without its folder. */
export const fileName = (file: string): string => file.slice(file.lastIndexOf('/') + 1);

const texts = new WeakMap<PlayedProgram, readonly string[]>();

/** A program's lines, without the empty one after the last end of line. */
export function linesOf(program: PlayedProgram): readonly string[] {
  const known = texts.get(program);
  if (known) return known;
  const lines = program.text.replace(/\r?\n$/, '').split(/\r?\n/);
  texts.set(program, lines);
  return lines;
}

interface Headings {
  readonly lines: readonly number[];
  readonly names: readonly string[];
}

const headings = new WeakMap<PlayedProgram, Headings>();

/** Comments that stand alone after the first move announce what follows; those before it tell of the program as a whole. */
function headingsOf(program: PlayedProgram): Headings {
  const known = headings.get(program);
  if (known) return known;
  const found: { line: number; name: string }[] = [];
  linesOf(program).forEach((text, line) => {
    const name = /^\s*(?:N\d+\s*)?\(([^)]*)\)\s*$/i.exec(text)?.[1];
    if (name !== undefined && line > (program.lines[0] ?? Infinity)) found.push({ line, name });
  });
  const sorted = { lines: found.map(({ line }) => line), names: found.map(({ name }) => name) };
  headings.set(program, sorted);
  return sorted;
}

/** What the program calls the pass that a line belongs to; undefined where it has no words for it. */
export function passName(program: PlayedProgram, line: number): string | undefined {
  const { lines, names } = headingsOf(program);
  return names[lastAtMost(lines, line)];
}
