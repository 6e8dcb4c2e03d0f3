import type { LayoutOptions } from './options.ts';
import type { TypeProblem } from './problem.ts';

/** A phrase in its lines, and what was left out of it. */
export interface Phrase {
  /** In Unicode's composed form (NFC), without spaces at their ends; blank ones only between others. */
  readonly lines: readonly string[];
  readonly cautions: readonly TypeProblem[];
}

const BREAK = /\r\n|[\n\v\f\r\x85\u2028\u2029]/;
/** Control characters and halves of characters: nothing that could be written. */
const UNWRITABLE = /[\p{Cc}\p{Cs}]/gu;

/** Reads what was typed: its line breaks part lines, a tab is a space. */
export function readPhrase(text: string): Phrase {
  const spaced = text.replaceAll('\t', ' ');
  const lines = spaced.split(BREAK).map((line) => line.replace(UNWRITABLE, '').normalize('NFC').trimEnd());
  const written = lines.map((line, i) => (line === '' ? -1 : i)).filter((i) => i >= 0);
  const dropped = spaced.split(BREAK).flatMap((line) => line.match(UNWRITABLE) ?? []);
  return { lines: written.length === 0 ? [] : lines.slice(written[0], written.at(-1)! + 1), cautions: dropped.length === 0 ? [] : [leftOut(dropped)] };
}

const leftOut = (dropped: readonly string[]): TypeProblem => ({
  place: 'phrase', expected: 'characters that can be written', found: `${namesOf([...new Set(dropped)])}, which cannot`, advice: 'They were left out; see whether something else was meant.',
});

/** The most characters that a sentence names. */
const MOST_NAMED = 8;

/** Characters as a sentence names them: by what they look like, where they show anything, and by their numbers. */
export function namesOf(characters: readonly string[]): string {
  const more = characters.length - MOST_NAMED;
  const named = characters.slice(0, MOST_NAMED).map((text) => {
    const numbers = [...text].map((one) => `U+${one.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`).join(' ');
    return /[\p{C}\p{Z}]/u.test(text) ? numbers : `“${text}” (${numbers})`;
  });
  return `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

export const noLetters = (text: string): TypeProblem => ({
  place: 'phrase', expected: 'at least one letter', found: text === '' ? 'an empty phrase' : 'nothing but spaces', advice: 'Type what the sign is to say.',
});

/** Says when lines stand out beyond the ends of their baseline by so much, mm. */
export function standsOut(beyond: readonly number[]): TypeProblem[] {
  const most = Math.max(0, ...beyond);
  if (most === 0) return [];
  return [{
    place: 'baseline', expected: 'a baseline as long as the text', found: `text that is ${most.toFixed(1)} mm longer`, advice: 'It goes straight on beyond the end; set the letters smaller, or draw a longer stroke.',
  }];
}

/** Says how many of the joins between letters are lost as they were laid out. */
export function joinsApart({ joins, lost }: { readonly joins: number; readonly lost: number }, { letterSpacing }: LayoutOptions): TypeProblem[] {
  if (lost <= 0) return [];
  const spaced = letterSpacing !== 0;
  return [{
    place: spaced ? 'letterSpacing' : 'radius', expected: 'letters joined as the typeface joins them', found: `${lost} of ${joins} joins come apart`,
    advice: spaced ? 'Set the letter spacing to 0 for joined writing.' : 'Bend the baseline less, or join the strokes afterwards.',
  }];
}
