import type { Book } from './book.ts';
import type { Block, Item } from './flow.ts';
import { ascent, leading, type Letters, setLine, wrapped, write } from './pen.ts';

/** Entries and tables of no more lines are not torn apart. */
const SHORT = 8;

const TEXT: Letters = { size: 9 };
const CELL: Letters = { size: 8.5 };

const lineItem = (book: Book, text: string, letters: Letters, indent = 0): Item => {
  const { size = 9 } = letters;
  return { height: leading(size), draw: (x, y) => { write(book, text, { x: x + indent, y: y + ascent(size) }, letters); } };
};

/** A heading over what comes after it. */
export const heading = (text: string): Block => (book, width) => {
  const letters: Letters = { size: 10.5, bold: true };
  return wrapped(book, text, width, letters).map((line, i) => ({ ...lineItem(book, line, letters), height: leading(10.5) + 0.4, keep: true, ...(i === 0 && { before: 3 }) }));
};

/** Text as wide as its column. */
export const paragraph = (text: string, letters: Letters = TEXT): Block => (book, width) =>
  wrapped(book, text, width, letters).map((line, i) => ({ ...lineItem(book, line, letters), ...(i === 0 && { before: 0.8 }) }));

/** Text behind a mark: a number, a dash, or a box to tick. */
export const entry = (mark: string | 'box', text: string, letters: Letters = TEXT): Block => (book, width) => {
  const indent = mark === 'box' ? 5.5 : 6;
  return wrapped(book, text, width - indent, letters).map((line, i, all): Item => {
    const item = { ...lineItem(book, line, letters, indent), keep: all.length <= SHORT && i < all.length - 1 };
    if (i > 0) return item;
    const draw = (x: number, y: number) => {
      if (mark === 'box') drawBox(book, x, y);
      else write(book, mark, { x, y: y + ascent(letters.size ?? 9) }, { ...letters, bold: true });
      item.draw(x, y);
    };
    return { ...item, draw, before: 0.9 };
  });
};

const BOX = 3.2;

function drawBox(book: Book, x: number, y: number): void {
  setLine(book, { width: 0.25 });
  book.pdf.rect(x, y, BOX, BOX, 'S');
}

export interface Column {
  readonly title: string;
  /** Its part of the table's width, in any unit. */
  readonly share: number;
  readonly align?: 'left' | 'right';
}

/** A table with a rule under its head; `tick` puts a box before every row. Cells too long for their column take more lines. */
export const table = (columns: readonly Column[], rows: readonly (readonly string[])[], tick = false): Block => (book, width) => {
  const indent = tick ? 5.5 : 0;
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const widths = columns.map(({ share }) => ((width - indent) * share) / whole);
  const row = (cells: readonly string[], letters: Letters): Item => rowItem(book, columns, cells.map((cell, i) => wrapped(book, cell, widths[i]! - 1.6, letters)), { widths, indent, letters });
  const titles = row(columns.map(({ title }) => title), { ...CELL, bold: true });
  const head: Item = {
    ...titles, height: titles.height + 1.2, keep: true, before: 0.8,
    draw: (x, y) => {
      titles.draw(x, y);
      setLine(book, { width: 0.25 });
      book.pdf.line(x, y + titles.height, x + width, y + titles.height);
    },
  };
  const together = rows.length <= SHORT;
  return [head, ...rows.map((cells, i): Item => {
    const item = row(cells, CELL);
    return {
      ...item, head, keep: together && i < rows.length - 1,
      draw: (x, y) => {
        if (tick) drawBox(book, x, y + 0.2);
        item.draw(x, y);
      },
    };
  })];
};

interface RowLayout {
  readonly widths: readonly number[];
  readonly indent: number;
  readonly letters: Letters;
}

function rowItem(book: Book, columns: readonly Column[], cells: readonly (readonly string[])[], { widths, indent, letters }: RowLayout): Item {
  const size = letters.size ?? 9;
  const height = Math.max(1, ...cells.map((lines) => lines.length)) * leading(size) + 0.8;
  const draw = (x: number, y: number) => {
    let left = x + indent;
    cells.forEach((lines, i) => {
      const { align = 'left' } = columns[i]!;
      const at = align === 'right' ? left + widths[i]! - 1.6 : left;
      lines.forEach((line, row) => { write(book, line, { x: at, y: y + ascent(size) + row * leading(size) + 0.2 }, { ...letters, align }); });
      left += widths[i]!;
    });
  };
  return { height, draw };
}
