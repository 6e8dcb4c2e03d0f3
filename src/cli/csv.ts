import { createReadStream } from 'node:fs';
import { pipeline, Readable } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import { errorCode, troubleWords } from './trouble.ts';

/** One record of a table. */
export interface CsvRecord {
  /** The line of the file it begins on, counted from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Longest record, bytes: a quotation mark that never closes must not draw the whole file into memory. */
const LONGEST_RECORD = 1024 * 1024;

/**
 * Reads comma-separated UTF-8 text (RFC 4180) record by record, whatever its size. Empty lines are passed over; a byte
 * order mark and all three kinds of line end are taken. Throws what `csvTrouble` puts into words.
 */
export async function* readCsv(path: string): AsyncGenerator<CsvRecord, undefined, undefined> {
  const parser = parse({
    bom: true, info: true, relax_column_count: true, skip_empty_lines: true,
    max_record_size: LONGEST_RECORD, record_delimiter: ['\r\n', '\n', '\r'],
  });
  // The iteration below throws whatever breaks the pipeline.
  pipeline(Readable.from(decoded(path)), parser, () => undefined);
  let doubled = 0;
  for await (const { record, info } of parser as AsyncIterable<{ record: string[]; info: { lines: number } }>) {
    // The parser counts a quoted CR LF as two lines.
    doubled += count(record, /\r\n/g);
    yield { line: info.lines - doubled - count(record, /\r\n|\n|\r/g), cells: record };
  }
}

async function* decoded(path: string): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  for await (const bytes of createReadStream(path) as AsyncIterable<Uint8Array>) yield decoder.decode(bytes, { stream: true });
  yield decoder.decode();
}

function count(cells: readonly string[], pattern: RegExp): number {
  return cells.reduce((sum, cell) => sum + (cell.match(pattern)?.length ?? 0), 0);
}

/** What stopped the reading of a table, as a phrase and the line it happened on; undefined for a programmer's mistake. */
export function csvTrouble(error: unknown): { readonly line?: number; readonly found: string } | undefined {
  if (error instanceof CsvError) {
    const says = QUOTING[error.code] ?? 'a cell that breaks the rules of quoting';
    // Where it opened is not known: it took in all that follows.
    return error.code === 'CSV_QUOTE_NOT_CLOSED' ? { found: says } : { line: Number(error['lines']), found: says };
  }
  if (error instanceof TypeError && 'code' in error && error.code === 'ERR_ENCODING_INVALID_ENCODED_DATA') return { found: 'bytes that are not UTF-8' };
  return errorCode(error) === undefined ? undefined : { found: troubleWords(error)! };
}

const QUOTING: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark that is never closed',
  CSV_INVALID_CLOSING_QUOTE: 'text after a closing quotation mark',
  INVALID_OPENING_QUOTE: 'a quotation mark in the middle of a cell',
  CSV_MAX_RECORD_SIZE: 'a row of more than 1 MiB',
};
