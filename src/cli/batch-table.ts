import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { nearest } from '../runtime/index.ts';
import { csvTrouble, readCsv } from './csv.ts';
import { type Fault, faulty, found, foundUnless, type Found } from './fault.ts';
import type { Setting } from './settings.ts';
import { troubleWords } from './trouble.ts';

/** A table whose columns and quoting were checked from end to end; its rows are read as they are needed. */
export interface BatchTable {
  readonly path: string;
  readonly columns: readonly string[];
  readonly count: number;
}

export interface BatchRow {
  /** Counted from 1, without the row of column names. */
  readonly number: number;
  readonly line: number;
  readonly cells: readonly string[];
}

/** Reads a table once, keeping nothing of it: what is wrong with it is told before any row is run. Without `inputs` any column will do. */
export async function checkTable(path: string, inputs?: readonly string[]): Promise<Found<BatchTable>> {
  const unfit = unfitFile(path);
  if (unfit) return unfit;
  let columns: readonly string[] = [];
  let count = -1;
  try {
    for await (const { cells } of readCsv(path)) if (++count === 0) columns = cells;
  } catch (error) {
    const trouble = csvTrouble(error);
    if (!trouble) throw error;
    const place = trouble.line === undefined ? path : `${path}, line ${trouble.line}`;
    return faulty(place, 'comma-separated UTF-8 text', trouble.found, 'Save the table as CSV (comma-separated, UTF-8).');
  }
  if (count < 1) return faulty(path, 'a row of column names and at least one row of values', count < 0 ? 'nothing' : 'only column names', 'Add a row.');
  return foundUnless(columnFaults(path, columns, inputs), () => ({ path, columns, count }));
}

function unfitFile(path: string): { ok: false; faults: readonly [Fault] } | undefined {
  const fault = (foundInstead: string): { ok: false; faults: readonly [Fault] } =>
    ({ ok: false, faults: [{ place: path, expected: 'a table that can be read', found: foundInstead, advice: 'Name a CSV file.' }] });
  try {
    const stats = statSync(path);
    return stats.isFile() ? undefined : fault(stats.isDirectory() ? 'a folder' : 'a pipe or a device');
  } catch (error) {
    return fault(troubleWords(error) ?? String(error));
  }
}

function columnFaults(path: string, columns: readonly string[], inputs?: readonly string[]): Fault[] {
  const place = `${path}, line 1`;
  return columns.flatMap((column, i): Fault[] => {
    if (columns.indexOf(column) !== i) return [{ place, expected: 'each column once', found: `"${column}" again`, advice: 'Remove one of the two.' }];
    if (!inputs || inputs.includes(column)) return [];
    const close = nearest(column, inputs);
    const advice = column.includes(';') ? 'Separate the columns by commas.' : close ? `Did you mean ${close}?` : `The graph's inputs are ${inputs.join(', ')}.`;
    return [{ place, expected: "columns named as the graph's exposed inputs", found: `"${column}"`, advice }];
  });
}

/** The rows of a checked table, in order. */
export async function* rowsOf({ path }: BatchTable): AsyncGenerator<BatchRow, undefined, undefined> {
  let number = -1;
  for await (const record of readCsv(path)) if (++number > 0) yield { number, ...record };
}

/** A row's cells as settings; an empty cell leaves the graph's own value. */
export function rowSettings({ path, columns }: BatchTable, row: BatchRow): Found<readonly Setting[]> {
  const place = rowPlace(path, row);
  if (row.cells.length !== columns.length)
    return faulty(place, `${columns.length} cells`, String(row.cells.length), 'Quote cells that hold commas, and fill up short rows.');
  return found(columns.flatMap((name, i) => {
    const text = row.cells[i]!;
    return text === '' ? [] : [{ name, text, place: `${place}, ${name}` }];
  }));
}

export function rowPlace(path: string, { line }: BatchRow): string {
  return `${basename(path)} line ${line}`;
}

/** The folder of a row: its number, wide enough to sort, and its first cell in plain letters. */
export function rowFolder({ count }: BatchTable, { number, cells }: BatchRow): string {
  const slug = (cells[0] ?? '').normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
  const digits = String(number).padStart(String(count).length, '0');
  return slug ? `${digits}-${slug.slice(0, 40).replace(/-$/, '')}` : digits;
}
