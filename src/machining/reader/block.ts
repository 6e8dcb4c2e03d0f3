import { refuse, type Refusal } from './types.ts';

/** Most characters on a line, blanks and comments included. NISTIR 6556, 3.3. */
const LONGEST_LINE = 256;
/** Numbers beyond this are no length, feed or speed of any machine; keeps all arithmetic far from overflow. */
const LARGEST = 1e7;
const LETTERS = 'ABCDFGHIJKLMPQRSTXYZ';

export interface Word {
  readonly letter: string;
  readonly value: number;
}

/** One line of a program, taken apart. */
export interface Block {
  readonly words: readonly Word[];
  readonly comments: readonly string[];
}

export const isRefusal = (value: object): value is Refusal => 'expected' in value;

/**
 * Takes a line apart by the form rules of NISTIR 6556, 3.3: optional "/", optional line number, words of a letter and a
 * number, comments anywhere between them; case, blanks and tabs count only in comments. A "/" is accepted and the line
 * is carried out (the block delete switch is off). Parameters and expressions are refused by name.
 */
export function readBlock(line: string): Block | Refusal {
  if (line.length > LONGEST_LINE) {
    return refuse(`at most ${LONGEST_LINE} characters on a line`, `${line.length} characters`, 'Break the line into several.');
  }
  const parts = splitComments(line);
  if (isRefusal(parts)) return parts;
  const words = readWords(parts.code);
  return isRefusal(words) ? words : { words, comments: parts.comments };
}

const COMMENT_MARK = '\u0000';

/** The line without blanks and with a mark where each comment stood, as a comment may not stand inside a word. */
function splitComments(line: string): { code: string; comments: string[] } | Refusal {
  const comments: string[] = [];
  let code = '';
  let rest = line;
  for (;;) {
    const open = rest.indexOf('(');
    const before = open < 0 ? rest : rest.slice(0, open);
    if (before.includes(')')) return refuse('"(" before ")"', shown(line), 'Open the comment with "(" or take the ")" away.');
    if (before.includes(COMMENT_MARK)) return refuse('printable characters', 'a NUL character', 'Save the program as plain text.');
    code += before.replace(/[ \t]/g, '');
    if (open < 0) return { code: code.toUpperCase(), comments };
    const close = rest.indexOf(')', open);
    const comment = rest.slice(open + 1, close < 0 ? undefined : close);
    const fault = checkComment(comment, close >= 0);
    if (fault) return fault;
    comments.push(comment);
    code += COMMENT_MARK;
    rest = rest.slice(close + 1);
  }
}

function checkComment(text: string, closed: boolean): Refusal | undefined {
  if (text.includes('(')) return refuse('no "(" inside a comment', shown(`(${text}`), 'Write brackets or nothing instead of the inner parentheses.');
  if (!closed) return refuse('")" on the same line', shown(`(${text}`), 'Close the comment on its line.');
  if (/[^\t -~]/.test(text)) return refuse('printable ASCII characters in a comment', shown(text), 'Spell the comment without accents and symbols.');
  return undefined;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)/;

function readWords(code: string): Word[] | Refusal {
  const words: Word[] = [];
  let rest = code.replace(/^\0*\/?\0*/, '');
  if (rest.startsWith('N')) {
    const number = /^N\d{1,5}(?![\d.])/.exec(rest)?.[0];
    if (number === undefined) return refuse('N and a line number of 1 to 5 digits', shown(rest), 'Number lines from 0 to 99999, without sign or point.');
    rest = rest.slice(number.length);
  }
  for (;;) {
    rest = rest.replace(/^\0+/, '');
    if (rest === '') return words;
    const word = readWord(rest);
    if (isRefusal(word)) return word;
    words.push(word);
    rest = rest.slice(word.length);
  }
}

function readWord(text: string): (Word & { readonly length: number }) | Refusal {
  const letter = text[0]!;
  if (letter === '#') return refuse('words without parameters', shown(text), 'Parameters are not supported: write the number itself.');
  if (!LETTERS.includes(letter)) return refuse('a word: a letter and a number', shown(text), letterAdvice(letter));
  const after = text.slice(1);
  const number = NUMBER.exec(after)?.[0];
  if (number === undefined) return refuse(`a plain decimal number after ${letter}`, shown(text), numberAdvice(after));
  const value = Number(number);
  if (Math.abs(value) > LARGEST) return refuse(`a number up to ${LARGEST}`, shown(text), 'Correct the number.');
  return { letter, value, length: 1 + number.length };
}

function letterAdvice(letter: string): string {
  if (letter === ';') return 'The standard knows only comments in parentheses.';
  if (letter === 'N') return 'A line number stands first on its line, once.';
  if (letter === '%') return 'A percent sign stands alone on its line, as the first and the last.';
  if (letter === 'E') return 'Numbers are written without an exponent.';
  return 'Take this away or correct it.';
}

function numberAdvice(text: string): string {
  if (text.startsWith('[')) return 'Expressions are not supported: write the number itself.';
  if (text.startsWith('#')) return 'Parameters are not supported: write the number itself.';
  if (/^[+-]?[A-Z]{3}/.test(text)) return 'Functions are not supported: write the number itself.';
  return 'Write the number with digits and at most one point.';
}

/** Part of a program fit to be shown: printable and short. */
export function shown(text: string): string {
  const plain = text.replace(/\0/g, '').replace(/[^ -~]/g, '?');
  return `"${plain.length > 40 ? `${plain.slice(0, 40)}...` : plain}"`;
}
