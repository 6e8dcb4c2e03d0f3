/** Lines are broken here, so that they read well in a terminal of the usual width. */
export const LINE = 100;
/** Left cells longer than this put their right cell on the next line. */
const WIDEST_CELL = 34;

/** Text broken into lines between words; a word longer than a line keeps a line of its own. */
export function wrapped(text: string, indent = '', width = LINE): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return line ? [...lines, indent + line] : lines;
}

/** Pairs as two columns, the right one wrapped. */
export function column(rows: readonly (readonly [string, string])[], indent = '  '): string[] {
  const fitting = rows.map(([left]) => left.length).filter((length) => length <= WIDEST_CELL);
  const gutter = `${indent}${' '.repeat(Math.max(0, ...fitting) + 2)}`;
  return rows.flatMap(([left, right]) => {
    const lines = wrapped(right, gutter);
    const head = `${indent}${left}`;
    if (left.length > WIDEST_CELL || lines.length === 0) return [head, ...lines];
    return [head.padEnd(gutter.length) + lines[0]!.slice(gutter.length), ...lines.slice(1)];
  });
}

/** Rows of cells, each column as wide as its widest cell. Columns in `right` are set to the right. */
export function table(rows: readonly (readonly string[])[], { indent = '  ', right = [] as readonly number[] } = {}): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((cell, i) => { widths[i] = Math.max(widths[i] ?? 0, cell.length); });
  const set = (cell: string, i: number) => (right.includes(i) ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!));
  return rows.map((row) => (indent + row.map(set).join('  ')).trimEnd());
}
