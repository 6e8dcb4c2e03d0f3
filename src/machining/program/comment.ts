/** Characters in a comment that any controller's line and display hold; common practice, no source. */
const LONGEST_COMMENT = 60;

/** Text in the characters a comment may hold: printable ASCII on one line, accents dropped, brackets for parentheses. */
const plainText = (text: string): string => text
  .normalize('NFD').replace(/\p{M}/gu, '')
  .replace(/\(/g, '[').replace(/\)/g, ']')
  .replace(/[\s\p{Cc}]+/gu, ' ')
  .replace(/[^ -~]/gu, '?')
  .trim();

/** Text as the lines of parenthesised comments that say it, each at most `longestLine` long. Nothing for blank text. */
export function commentLines(text: string, longestLine: number): string[] {
  const room = Math.max(1, Math.min(LONGEST_COMMENT, longestLine - 2));
  return wrap(plainText(text), room).map((line) => `(${line})`);
}

function wrap(text: string, room: number): string[] {
  const lines: string[] = [];
  let rest = text;
  while (rest.length > room) {
    const space = rest.lastIndexOf(' ', room);
    const end = space > 0 ? space : room;
    lines.push(rest.slice(0, end));
    rest = rest.slice(end).trimStart();
  }
  return rest === '' ? lines : [...lines, rest];
}
