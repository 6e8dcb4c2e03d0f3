import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { begin, buildCommandLine, call, filesUnder, scratch } from '../support/command-line.ts';
import { TINY_GRAPH } from '../support/tiny-graph.ts';

let program: string;
let folder: string;

beforeAll(() => { program = buildCommandLine('test-batch', 'tests/support/tiny.vite.config.ts'); }, 60_000);
beforeEach(() => {
  folder = scratch();
  writeFileSync(join(folder, 'graph.json'), JSON.stringify(TINY_GRAPH));
});

const put = (name: string, content: string | Uint8Array) => { writeFileSync(join(folder, name), content); };
const batch = (...args: string[]) => call(program, ['batch', 'graph.json', 'rows.csv', '--out', 'out', ...args], { cwd: folder });
const summary = () => readFileSync(join(folder, 'out/summary.csv'), 'utf8').split('\r\n');

describe('a batch', () => {
  it('writes one folder a row, named by its number and first cell, and a summary', async () => {
    put('rows.csv', 'phrase,width\r\n"Café, open",20\r\nBakery,\r\n');
    const { status, stdout, stderr } = await batch();
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['1-cafe-open', '2-bakery', 'summary.csv']);
    const files = filesUnder(join(folder, 'out'));
    expect(files.get('1-cafe-open/note.txt')).toBe('Café, open: no artwork\n');
    expect(files.get('2-bakery/programs/set-up-1-cutter-1.ngc')).toContain('width 10');
    expect(summary()).toEqual(['row,line,folder,status,programs,minutes,says', '1,2,1-cafe-open,pass,1,1.5,', '2,3,2-bakery,pass,1,1.5,', '']);
    expect(stdout).toContain('2 rows: 2 pass.');
  });

  it('writes what single runs of the same values write', async () => {
    put('rows.csv', 'width,phrase\n20,a\n60,b\n');
    await batch();
    for (const [row, width, phrase] of [['1-20', '20', 'a'], ['2-60', '60', 'b']] as const) {
      await call(program, ['run', 'graph.json', '--set', `width=${width}`, '--set', `phrase=${phrase}`, '--out', `single-${row}`], { cwd: folder });
      const [single, batched] = [filesUnder(join(folder, `single-${row}`)), filesUnder(join(folder, 'out', row))];
      for (const files of [single, batched]) files.delete('report.json');
      expect(batched).toEqual(single);
    }
  });

  it('a wrong row fails alone, with its line and reason', async () => {
    put('rows.csv', 'width,manner\n10,well\n\n10 apples,well\n20,problem\n30,throw\n40\n50,well\n');
    const { status, stderr, stdout } = await batch();
    expect(status).toBe(2);
    const lines = stderr.trim().split('\n');
    expect(lines).toEqual([
      expect.stringMatching(/^rows\.csv line 4, width: expected .*10 apples/),
      'rows.csv line 5, The drawing (node drawing), width: expected a width that suits, found 20 mm or so. Choose another.',
      expect.stringMatching(/^rows\.csv line 6, The drawing \(node drawing\).*a slip/),
      'rows.csv line 7: expected 2 cells, found 1. Quote cells that hold commas, and fill up short rows.',
    ]);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['1-10', '6-50', 'summary.csv']);
    expect(summary().map((line) => line.split(',').slice(0, 4).join())).toEqual(
      ['row,line,folder,status', '1,2,1-10,pass', '2,4,,wrong', '3,5,,wrong', '4,6,,wrong', '5,7,,wrong', '6,8,6-50,pass', '']);
    expect(stdout).toContain('6 rows: 2 pass, 4 wrong.');
  });

  it('a row that exhausts the memory of its thread fails alone', async () => {
    put('rows.csv', 'width,manner\n10,well\n20,out-of-memory\n30,well\n40,well\n');
    const { status, stderr } = await call(program, ['batch', 'graph.json', 'rows.csv', '--out', 'out'], {
      cwd: folder, env: { ...process.env, NODE_OPTIONS: '--max-old-space-size=64' },
    });
    expect(status).toBe(2);
    expect(stderr).toContain('rows.csv line 3: expected a row that can be computed, found a computation that broke off.');
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['1-10', '3-30', '4-40', 'summary.csv']);
  }, 60_000);

  it('a failed check gives status 1 and withholds that row\'s programs, unless as drafts', async () => {
    put('rows.csv', 'width\n10\n60\n');
    expect((await batch()).status).toBe(1);
    expect(summary()[2]).toBe('2,3,2-60,fail,0,1.5,"Width: 60 mm, at most 50 mm. Choose a lesser width."');
    expect(readdirSync(join(folder, 'out/2-60'))).toEqual(['note.txt', 'report.json']);
    expect((await call(program, ['batch', 'graph.json', 'rows.csv', '--out', 'drafts', '--draft'], { cwd: folder })).status).toBe(1);
    expect(readdirSync(join(folder, 'drafts/2-60'))).toContain('programs');
  });

  it('finds files from the table\'s own folder', async () => {
    mkdirSync(join(folder, 'tables'));
    put('tables/a.svg', '<svg/>');
    put('tables/rows.csv', 'artwork\n@a.svg\n');
    await call(program, ['batch', 'graph.json', 'tables/rows.csv', '--out', 'out'], { cwd: folder });
    expect(filesUnder(join(folder, 'out')).get('1-a-svg/note.txt')).toBe('open: <svg/>\n');
  });

  it('--json prints the summary alone, in the order of the rows', async () => {
    put('rows.csv', `phrase\n${Array.from({ length: 12 }, (_, i) => `sign ${i}`).join('\n')}\n`);
    const { stdout } = await batch('--json');
    const { graph, rows } = JSON.parse(stdout) as { graph: string; rows: { folder: string }[] };
    expect(graph).toBe('graph.json');
    expect(rows.map((row) => row.folder)).toEqual(Array.from({ length: 12 }, (_, i) => `${String(i + 1).padStart(2, '0')}-sign-${i}`));
  });
});

describe('a wrong table', () => {
  it.each<[string, string | Uint8Array, ...RegExp[]]>([
    ['empty', '', /^rows\.csv: expected a row of column names and at least one row of values, found nothing\./],
    ['without rows', 'width\n', /^rows\.csv: .*found only column names\./],
    ['with a mistyped column', 'widht\n1\n', /^rows\.csv, line 1: .*found "widht"\. Did you mean width\?/],
    ['with a column twice', 'width,width\n1,2\n', /^rows\.csv, line 1: expected each column once, found "width" again\./],
    ['with semicolons', 'width;phrase\n1;a\n', /^rows\.csv, line 1: .*Separate the columns by commas\./],
    ['with broken quoting', 'width\n"1"2\n', /^rows\.csv, line 2: expected comma-separated UTF-8 text, found text after a closing/],
    ['with other bytes', Uint8Array.from([0x77, 0xff]), /^rows\.csv: .*found bytes that are not UTF-8\./],
    ['of wrong rows only', 'width\nx\ny\n', /^rows\.csv line 2, width: /, /^rows\.csv line 3, width: /],
  ])('%s', async (_, content, ...lines) => {
    put('rows.csv', content);
    const { status, stdout, stderr } = await batch();
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr.trimEnd().split('\n')).toEqual(lines.map((line) => expect.stringMatching(line)));
    expect(readdirSync(folder).sort()).toEqual(['graph.json', 'rows.csv']);
  });

  it('absent, or a folder', async () => {
    expect((await batch()).stderr).toMatch(/^rows\.csv: expected a table that can be read, found nothing of that name\. .+\n$/);
    mkdirSync(join(folder, 'rows.csv'));
    expect((await batch()).stderr).toMatch(/^rows\.csv: expected a table that can be read, found a folder\. .+\n$/);
  });
});

it('an interrupted batch leaves nothing, with status 130', async () => {
  put('rows.csv', 'width,manner\n1,well\n2,slow\n3,slow\n');
  const { child, ended } = begin(program, ['batch', 'graph.json', 'rows.csv', '--out', 'out'], { cwd: folder });
  const watch = setInterval(() => { if (readdirSync(folder).some((name) => existsSync(join(folder, name, '1-1')))) child.kill('SIGINT'); }, 10);
  const { status, stderr } = await ended;
  clearInterval(watch);
  expect({ status, stderr }).toEqual({ status: 130, stderr: 'Interrupted: nothing was written.\n' });
  expect(readdirSync(folder).sort()).toEqual(['graph.json', 'rows.csv']);
});
