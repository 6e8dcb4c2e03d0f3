import bidiFactory from 'bidi-js';
import { scriptsOf } from './scripts.ts';
import { fontFor, type Typeface } from './typeface.ts';

export type Direction = 'automatic' | 'left to right' | 'right to left';

/** A stretch of a line that is shaped at once: one font, one script, one direction. */
export interface Run {
  readonly text: string;
  /** Place of its first character in the line (UTF-16). */
  readonly start: number;
  readonly font: number;
  readonly script: string;
  readonly level: number;
}

/** Letters with their marks, as a reader counts them, by the rules of Unicode alone (UAX 29). */
const letters = new Intl.Segmenter('und', { granularity: 'grapheme' });

export interface Letter {
  readonly text: string;
  readonly at: number;
}

export const lettersOf = (line: string): Letter[] => [...letters.segment(line)].map(({ segment, index }) => ({ text: segment, at: index }));

const bidi = bidiFactory();
const BASE = { automatic: undefined, 'left to right': 'ltr', 'right to left': 'rtl' } as const;

/** Letters of a line that no font of the typeface has, each once. */
export function missingLetters(line: string, typeface: Typeface): string[] {
  const missing = lettersOf(line).map(({ text }) => text).filter((letter) => fontFor(letter, typeface) === undefined);
  return [...new Set(missing)];
}

/**
 * The line's runs in the order they stand from left to right (Unicode bidirectional algorithm, UAX 9). The line is in NFC.
 * A letter that no font has goes to the first one.
 */
export function runsOf(line: string, typeface: Typeface, direction: Direction): Run[] {
  const { levels } = bidi.getEmbeddingLevels(line, BASE[direction]);
  const found = lettersOf(line);
  const scripts = scriptsOf(found.map(({ text }) => text));
  const runs: Run[] = [];
  found.forEach(({ text, at }, i) => {
    const last = runs.at(-1);
    const own = { font: fontFor(text, typeface, last?.font) ?? 0, script: scripts[i]!, level: levels[at]! };
    if (last && last.font === own.font && last.script === own.script && last.level === own.level) runs[runs.length - 1] = { ...last, text: last.text + text };
    else runs.push({ text, start: at, ...own });
  });
  return leftToRight(runs);
}

/** UAX 9, rule L2, on runs: from the highest level down to the lowest odd one, whatever stands at it or above is turned round. */
function leftToRight(runs: readonly Run[]): Run[] {
  const order = [...runs];
  for (let level = Math.max(0, ...runs.map((run) => run.level)); level > 0; level--) {
    for (let from = 0; from < order.length; from++) {
      let to = from;
      while (to < order.length && order[to]!.level >= level) to++;
      order.splice(from, to - from, ...order.slice(from, to).reverse());
      from = Math.max(from, to - 1);
    }
  }
  return order;
}
