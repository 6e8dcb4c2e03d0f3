import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { csvTrouble, readCsv } from '../../src/cli/csv.ts';
import { csvLine } from '../../src/costing/csv.ts';
import { scratch } from '../support/command-line.ts';

async function read(bytes: string | Uint8Array) {
  const path = join(scratch(), 'table.csv');
  writeFileSync(path, bytes);
  const records: [number, readonly string[]][] = [];
  try {
    for await (const { line, cells } of readCsv(path)) records.push([line, cells]);
  } catch (error) {
    return csvTrouble(error);
  }
  return records;
}

describe('comma-separated text', () => {
  // RFC 4180, section 2, rules 1 to 7 with their examples.
  it.each([
    ['rule 1: lines end in CRLF', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', [[1, ['aaa', 'bbb', 'ccc']], [2, ['zzz', 'yyy', 'xxx']]]],
    ['rule 2: the last line may lack its end', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', [[1, ['aaa', 'bbb', 'ccc']], [2, ['zzz', 'yyy', 'xxx']]]],
    ['rule 4: spaces belong to the cell', 'aaa, bbb ,ccc', [[1, ['aaa', ' bbb ', 'ccc']]]],
    ['rule 5: cells may be quoted', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', [[1, ['aaa', 'bbb', 'ccc']], [2, ['zzz', 'yyy', 'xxx']]]],
    ['rule 6: quoted cells may hold line ends', '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', [[1, ['aaa', 'b\r\nbb', 'ccc']], [3, ['zzz', 'yyy', 'xxx']]]],
    ['rule 7: quotes are doubled', '"aaa","b""bb","ccc"', [[1, ['aaa', 'b"bb', 'ccc']]]],
  ])('follows RFC 4180, %s', async (_, text, records) => {
    expect(await read(text)).toEqual(records);
  });

  it('takes a byte order mark, any line end, and passes over empty lines, counting them', async () => {
    expect(await read('\uFEFFa,b\n\n1,2\r3,4\r\n\r\n"5\n5",6\n7,8')).toEqual([[1, ['a', 'b']], [3, ['1', '2']], [4, ['3', '4']], [6, ['5\n5', '6']], [8, ['7', '8']]]);
  });

  it.each([
    ['a\n"never closed\n1\n', 'a quotation mark that is never closed', undefined],
    ['a\n"x"y\n', 'text after a closing quotation mark', 2],
    ['a\nx"y\n', 'a quotation mark in the middle of a cell', 2],
    [`a\n"${'x'.repeat(2 ** 21)}"\n`, 'a row of more than 1 MiB', 2],
  ])('says what breaks the quoting and where (%#)', async (text, found, line) => {
    expect(await read(text)).toEqual({ found, ...(line && { line }) });
  });

  it('refuses bytes that are not UTF-8', async () => {
    expect(await read(Uint8Array.from([0x61, 0x0a, 0xe9, 0x0a]))).toEqual({ found: 'bytes that are not UTF-8' });
  });

  it('reads back what it writes', async () => {
    const rows = [['plain', 'with, comma', 'with "quotes"'], ['two\nlines', 'two\r\nlines', '']];
    expect(await read(rows.map(csvLine).join(''))).toEqual([[1, rows[0]], [2, rows[1]]]);
  });
});
