/** A place in a text that is read once, from left to right. */
export interface Scanner {
  readonly text: string;
  at: number;
}

export const scan = (text: string): Scanner => ({ text, at: 0 });

const NUMBER = /[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const SPACE = /[\t\n\f\r ]*/y;
const COMMA_SPACE = /[\t\n\f\r ]*(?:,[\t\n\f\r ]*)?/y;

/** Reads what the pattern (sticky) matches here, or nothing. */
export function take(scanner: Scanner, pattern: RegExp): string | undefined {
  pattern.lastIndex = scanner.at;
  const found = pattern.exec(scanner.text)?.[0];
  scanner.at += found?.length ?? 0;
  return found;
}

export const skipSpace = (scanner: Scanner): void => void take(scanner, SPACE);
export const skipCommaSpace = (scanner: Scanner): void => void take(scanner, COMMA_SPACE);
export const atEnd = (scanner: Scanner): boolean => scanner.at >= scanner.text.length;

/** Reads the longest number here (SVG 1.1 section 8.3.9), so that `0.6.5` is 0.6 and 0.5. Too large a one is Infinity. */
export function takeNumber(scanner: Scanner): number | undefined {
  const found = take(scanner, NUMBER);
  return found === undefined ? undefined : Number(found);
}

/** Numbers parted by spaces or commas, up to the first thing that is none; `complete` says whether that was the end. */
export function readNumbers(text: string): { readonly numbers: readonly number[]; readonly complete: boolean } {
  const scanner = scan(text);
  const numbers: number[] = [];
  skipSpace(scanner);
  for (let value = takeNumber(scanner); value !== undefined; value = takeNumber(scanner)) {
    numbers.push(value);
    skipCommaSpace(scanner);
  }
  return { numbers, complete: atEnd(scanner) };
}
