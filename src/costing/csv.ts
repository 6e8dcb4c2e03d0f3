/** One line of comma-separated text by RFC 4180, quoted where needed, with its line end. Text that a table would take for a formula gets an apostrophe before it. */
export function csvLine(cells: readonly (string | number)[]): string {
  return `${cells.map((cell) => (typeof cell === 'number' ? String(cell) : quoted(harmless(cell)))).join(',')}\r\n`;
}

/** Tables of figures reckon with what begins so. */
const harmless = (cell: string): string => (/^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell);

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
