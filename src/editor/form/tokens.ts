import type { Refusal } from './expression.ts';
import { unitAt } from './units.ts';

/** A piece of an expression: a number as it was written, a sign in its plain form, or the name of a unit. */
export interface Token {
  readonly kind: 'number' | 'sign' | 'unit';
  readonly text: string;
}

type Tokens = { readonly ok: true; readonly tokens: readonly Token[] } | { readonly ok: false; readonly refusal: Refusal };

const NUMBER = /(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?(?![\d.])/iy;
const WORD = /[\p{L}_]+|./uy;
/** Signs as they may be typed or pasted, and what they mean. */
const SIGNS: ReadonlyMap<string, string> = new Map([
  ['+', '+'], ['-', '-'], ['−', '-'], ['–', '-'], ['*', '*'], ['×', '*'], ['·', '*'], ['/', '/'], ['÷', '/'], ['∶', '/'], ['(', '('], [')', ')'],
]);

/** Divides a text into numbers, signs and units. */
export function tokenize(text: string): Tokens {
  const tokens: Token[] = [];
  for (let at = 0; at < text.length;) {
    if (/\s/.test(text[at]!)) {
      at += 1;
      continue;
    }
    const token = tokenAt(text, at, tokens.at(-1));
    if (token === undefined) return { ok: false, refusal: strange(text, at) };
    tokens.push({ kind: token.kind, text: token.text });
    at += token.length;
  }
  return { ok: true, tokens };
}

function tokenAt(text: string, at: number, before: Token | undefined): (Token & { readonly length: number }) | undefined {
  // A unit may begin with a sign or a digit, as /min and 1/min do: only where an amount has just ended.
  const unit = before?.kind === 'number' || before?.text === ')' ? unitAt(text, at) : undefined;
  if (unit !== undefined) return { kind: 'unit', text: unit, length: unit.length };
  const number = match(NUMBER, text, at);
  if (number !== undefined) return { kind: 'number', text: number, length: number.length };
  const sign = SIGNS.get(text[at]!);
  return sign === undefined ? undefined : { kind: 'sign', text: sign, length: 1 };
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

function strange(text: string, at: number): Refusal {
  const word = match(WORD, text, at) ?? text[at]!;
  if (word === ',') return comma(text);
  const found = `“${word}”`;
  if (unitAt(text, at) !== undefined) return { expected: 'one number before each unit', found, advice: 'Write it like 3 in + 2 mm.' };
  if (/[\d.]/.test(word)) return { expected: 'numbers with one point at most', found: `“${text}”`, advice: 'Write it like 12.5.' };
  if (/\p{L}/u.test(word)) return { expected: 'a number, a sign or a unit', found, advice: 'Write lengths in mm, cm, m, in or ft, other values in the unit beside the field.' };
  return { expected: 'numbers and + - * / ( )', found, advice: 'Take it out.' };
}

/** A comma means thousands to one reader and a decimal to another: both readings are offered, none is guessed. */
function comma(text: string): Refusal {
  const bare = text.replaceAll(/(\d),(?=\d{3}(?:\D|$))/g, '$1');
  const decimal = text.split(',').length === 2 ? text.replace(/,/, '.') : text;
  const instead = [...new Set([decimal, bare])].filter((offer) => offer !== text && tokenize(offer).ok);
  return { expected: 'a point before decimals, and no thousands sign', found: `“${text}”`, advice: 'A comma may mean either: write it without one.', ...(instead.length > 0 && { instead }) };
}
