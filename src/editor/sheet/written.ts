/** Lines of a value as they are best shown. */
export type Written =
  | { readonly kind: 'pairs'; readonly rows: readonly (readonly [string, string])[] }
  | { readonly kind: 'program'; readonly lines: readonly string[] }
  | { readonly kind: 'words'; readonly lines: readonly string[] };

/** A block of a program: words of a letter and a number, or a comment in brackets. */
const BLOCK = /^\s*(?:%|\(.*\)|(?:[A-Z][-+]?[0-9.]+\s*)+(?:\(.*\))?)\s*$/;
const PAIR = /^([^:]+): (.+)$/s;

/** Tells by the lines what they are: a program where some are blocks, pairs where each has a name and a value. */
export function writtenAs(lines: readonly string[]): Written {
  if (lines.filter((line) => BLOCK.test(line)).length >= 2) return { kind: 'program', lines };
  const rows = lines.map((line) => PAIR.exec(line)).flatMap((found) => (found ? [[found[1]!, found[2]!] as const] : []));
  return rows.length === lines.length && rows.length > 0 ? { kind: 'pairs', rows } : { kind: 'words', lines };
}

/** Whether a line tells the state of a check, which a table of checks tells better. */
export const isCheckLine = (line: string): boolean => /^(?:pass|caution|fail): /.test(line);
