import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { begin, buildCommandLine, call, filesUnder, scratch } from '../support/command-line.ts';
import { TINY_GRAPH } from '../support/tiny-graph.ts';

let program: string;
/** A folder for each test, and one that tests which write nothing share, so that they may run side by side. */
let folder: string;
let shared: string;

const withGraph = (made: string) => {
  writeFileSync(join(made, 'graph.json'), JSON.stringify(TINY_GRAPH));
  return made;
};
beforeAll(() => {
  program = buildCommandLine('test-calls', 'tests/support/tiny.vite.config.ts');
  shared = withGraph(mkdtempSync(join(tmpdir(), 'groovewright-test-')));
}, 60_000);
afterAll(() => {
  const left = readdirSync(shared).filter(isWritten);
  rmSync(shared, { recursive: true, force: true });
  expect(left).toEqual([]);
});
beforeEach(({ task }) => { if (!task.concurrent) folder = withGraph(scratch()); });

const cli = (...args: string[]) => call(program, args, { cwd: folder });
const put = (name: string, content: string | Uint8Array) => { writeFileSync(join(folder, name), content); };
const isWritten = (name: string) => name === 'out' || name.startsWith('.groovewright');
const written = () => readdirSync(folder).filter(isWritten);
/** Whether a file of the results is being written. */
const isWriting = () => written().some((name) => existsSync(join(folder, name, 'bulk')));

/** Status 2, these lines on stderr (each a pattern), nothing on stdout, no stack trace, nothing written. */
function expectFaults(args: string[], ...lines: (string | RegExp)[]) {
  return expectFaultsIn(folder, args, ...lines);
}

async function expectFaultsIn(where: string, args: string[], ...lines: (string | RegExp)[]) {
  const { status, stdout, stderr } = await call(program, args, { cwd: where });
  const told = stderr.split('\n');
  expect(told.pop()).toBe('');
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(told).toEqual(lines.map((line) => (typeof line === 'string' ? line : expect.stringMatching(line))));
  for (const line of told) expect(line).toMatch(/^.+: expected .+, found .+\. .+[.?]$/);
  expect(stderr).not.toMatch(/\n\s+at |node:internal/);
  if (where !== shared) expect(written()).toEqual([]);
}

describe('compare', () => {
  const version = (value: number) => JSON.stringify({ ...TINY_GRAPH, nodes: TINY_GRAPH.nodes.map((node) => (node.id === 'drawing' ? { ...node, params: { artwork: { name: 'a.svg', text: '<svg/>' }, width: value } } : node)) });

  it('tells what changed in a graph and in its results, and writes nothing', async () => {
    put('a.json', version(20));
    put('b.json', version(30));
    const { status, stdout, stderr } = await cli('compare', 'a.json', 'b.json');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('  drawing.width: 20 -> 30');
    expect(stdout).toMatch(/20 mm +30 mm +\+10 mm/);
    expect((await cli('compare', 'a.json', 'a.json')).stdout).toContain('The graphs say the same.\n\nThe results are the same.');
    const { graph } = JSON.parse((await cli('compare', 'a.json', 'b.json', '--json')).stdout) as { graph: unknown };
    expect(graph).toEqual([{ kind: 'value', place: 'drawing.width', from: 20, to: 30 }]);
    await expectFaults(['compare', 'a.json', 'gone.json'], /^gone\.json: /);
  });
});

describe('run', () => {
  it('writes results and says so', async () => {
    put('a.svg', '<svg/>');
    const { status, stdout, stderr } = await cli('run', 'graph.json', '--set', 'artwork=@a.svg', '--set', 'width=20', '--out', 'new/out');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/every check passed/);
    expect(stdout).toContain('pass  Width: 20 mm, at most 50 mm.');
    expect(stdout).toContain('programs/set-up-1-cutter-1.ngc');
    expect(stdout).toContain(join(folder, 'new/out'));
    const files = filesUnder(join(folder, 'new/out'));
    expect([...files.keys()]).toEqual(['note.txt', 'programs/set-up-1-cutter-1.ngc', 'report.json']);
    expect(files.get('note.txt')).toBe('open: <svg/>\n');
    expect(JSON.parse(files.get('report.json')!)).toMatchObject({ graph: 'graph.json', status: 'pass', quantities: { width: { value: 20, unit: 'mm' } } });
  });

  it('without --out shows the checks and writes nothing', async () => {
    const { status, stdout } = await cli('run', 'graph.json');
    expect(status).toBe(0);
    expect(stdout).toContain('Nothing was written: give --out DIR');
    expect(readdirSync(folder)).toEqual(['graph.json']);
  });

  it('--json prints the report alone', async () => {
    const { status, stdout, stderr } = await cli('run', 'graph.json', '--json', '--out', 'out');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(JSON.parse(stdout)).toEqual(JSON.parse(readFileSync(join(folder, 'out/report.json'), 'utf8')));
  });

  it('a failed check gives status 1 and withholds the programs', async () => {
    const { status, stdout, stderr } = await cli('run', 'graph.json', '--set', 'width=60', '--out', 'out');
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    expect(stdout).toMatch(/fail {2}Width: 60 mm, at most 50 mm\. Choose a lesser width\. At 1\.0, 2\.0\./);
    expect(stdout).toContain('withheld: a check failed');
    expect([...filesUnder(join(folder, 'out')).keys()]).toEqual(['note.txt', 'report.json']);
  });

  it('--draft writes the programs of a failed check, marked in their first comment', async () => {
    const { status } = await cli('run', 'graph.json', '--set', 'width=60', '--out', 'out', '--draft');
    expect(status).toBe(1);
    expect(/\(([^)]*)\)/.exec(filesUnder(join(folder, 'out')).get('programs/set-up-1-cutter-1.ngc')!)?.[1]).toMatch(/draft/i);
  });

  it('only an input for a file reads one', async () => {
    const { status } = await cli('run', 'graph.json', '--set', 'phrase=@home = here', '--out', 'out');
    expect(status).toBe(0);
    expect(filesUnder(join(folder, 'out')).get('note.txt')).toBe('@home = here: no artwork\n');
  });

  it('keeps a file that is not UTF-8 as base64', async () => {
    put('a.bin', Uint8Array.from([0xff, 0x00]));
    await cli('run', 'graph.json', '--set', 'artwork=@a.bin', '--out', 'out');
    expect(filesUnder(join(folder, 'out')).get('note.txt')).toBe('open: base64 /wA=\n');
  });

  it('does not mind a reader that stops listening', async () => {
    const { child, ended } = begin(program, ['nodes', '--json'], { cwd: folder });
    child.stdout!.destroy();
    expect(await ended).toMatchObject({ status: 0, stderr: '' });
  });

  it.runIf(process.platform === 'linux')('says when stdout cannot be written to', async () => {
    const { openSync, closeSync } = await import('node:fs');
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = await call(program, ['nodes'], { cwd: folder, stdio: ['ignore', full, 'pipe'] });
    closeSync(full);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^stdout: expected .+ENOSPC.+\n$/);
  });
});

describe.concurrent('a wrong call', () => {
  it.each<[string[], ...(string | RegExp)[]]>([
    [[], /^groovewright: expected a command \(run, inputs, nodes, batch, compare, help\), found none\./],
    [['rum'], /^groovewright: expected a command .* found "rum"\. Did you mean run\?$/],
    [['--bogus'], /^groovewright: expected a command .* found "--bogus"\./],
    [['run'], 'run: expected GRAPH, a saved graph (JSON), found none. See "groovewright help run".'],
    [['run', 'graph.json', 'more'], 'run: expected nothing after GRAPH, found "more". See "groovewright help run".'],
    [['run', 'graph.json', '--drfat'], /^run: expected one of the options .* found --drfat\. Did you mean --draft\?$/],
    [['run', 'graph.json', '--out'], '--out: expected DIR, found nothing. See "groovewright help run".'],
    [['run', 'graph.json', '--out', '--json'], /^--out: expected DIR, found --json\./],
    [['run', 'graph.json', '--json=yes'], /^--json: expected no value, found "yes"\./],
    [['run', 'graph.json', '--out', 'out', '--out', 'out'], /^--out: expected it once, found it again\./],
    [['run', 'graph.json', '--set', 'width'], '--set: expected NAME=VALUE, found "width". Put = between the input and its value.'],
    [['run', 'graph.json', '--set', 'width=1', '--set', 'width=2'], '--set width: expected one value, found a second one. Give each input once.'],
    [['nodes', 'tiny-drawings'], 'nodes: expected the name of a node, found "tiny-drawings". Did you mean tiny-drawing?'],
    [['help', 'ruin'], /found "ruin"\. Did you mean run\?$/],
    [['batch', 'graph.json'], /^batch: expected --out DIR/, /^batch: expected ROWS\.csv/],
    [['inputs', 'graph.json', '--draft'], /^inputs: expected one of the options --json, found --draft\./],
  ])('%j gets one line for each fault', async (args, ...lines) => { await expectFaultsIn(shared, args, ...lines); });

  it('tells all faults at once', async () => {
    await expectFaultsIn(shared, ['run', 'none.json', '--set', 'x', '--out', 'graph.json'], /^--set: /, /^none\.json: /, /^--out graph\.json: .*found a file\./);
  });
});

describe.concurrent('a wrong input', () => {
  const run = (...sets: string[]) => ['run', 'graph.json', ...sets.flatMap((set) => ['--set', set]), '--out', 'out'];

  beforeAll(() => {
    mkdirSync(join(shared, 'folder.svg'));
    symlinkSync('circle.svg', join(shared, 'circle.svg'));
    symlinkSync('/dev/zero', join(shared, 'device.svg'));
    writeFileSync(join(shared, 'huge.svg'), '');
    truncateSync(join(shared, 'huge.svg'), 100 * 1024 * 1024);
  });

  it.each<[string, RegExp]>([
    ['widht=10', /^--set widht: .*Did you mean "?width"?\?/],
    ['__proto__=10', /^--set __proto__: /],
    ['constructor=10', /^--set constructor: /],
    ['width=10 apples', /^--set width: .*10 apples/],
    ['width=', /^--set width: /],
    ['width=NaN', /^--set width: .*NaN/],
    ['width=1e999', /^--set width: .*1e999/],
    ['width=0x10', /^--set width: .*0x10/],
    ['width=1,5', /^--set width: .*1,5/],
    ['width=101', /^--set width: .*100.*101/],
    ['width=-5', /^--set width: .*-5/],
    ['bright=perhaps', /^--set bright: .*perhaps/],
    ['manner=wel', /^--set manner: .*wel/],
    [`phrase=${'x'.repeat(41)}`, /^--set phrase: .*40/],
    ['artwork=a.svg', /^--set artwork: expected @ and the name of a file \(\.svg or \.bin\), found "a\.svg"\./],
    ['artwork=', /^--set artwork: .*found nothing\./],
    ['artwork=@', /^--set artwork: /],
    ['artwork=@none.svg', /^--set artwork: .*found nothing of that name\./],
    ['artwork=@a.txt', /^--set artwork: expected a file ending in \.svg or \.bin, found a\.txt\./],
    ['artwork=@folder.svg', /^--set artwork: expected a file, found a folder\./],
    ['artwork=@circle.svg', /^--set artwork: .*found a circle of symbolic links\./],
    ['artwork=@huge.svg', /^--set artwork: expected at most 32 MiB, found 100\.0 MiB\./],
    ['artwork=@graph.json/a.svg', /^--set artwork: .*a path that goes through a file\./],
    ['artwork=@device.svg', /^--set artwork: expected a file, found a pipe or a device\./],
  ])('--set %s', async (set, line) => {
    await expectFaultsIn(shared, run(set), line);
  });

  it('several get a line each', async () => {
    await expectFaultsIn(shared, run('width=x', 'bright=x', 'nothing=x'), /^--set width/, /^--set bright/, /^--set nothing/);
  });

  it('a node that cannot compute is named with its problem, in one line', async () => {
    await expectFaultsIn(shared, run('manner=problem'), 'The drawing (node drawing), width: expected a width that suits, found 10 mm or so. Choose another.');
  });

  it('a slip in a node is told without a stack trace', async () => {
    await expectFaultsIn(shared, run('manner=throw'), /^The drawing \(node drawing\).*a slip of the programmer/);
  });

  it('two results of one name', async () => {
    await expectFaultsIn(shared, run('sameName=on'), /^graph\.json: expected each result file once, found note\.txt from two nodes\./);
  });
});

describe('a wrong graph', () => {
  it.each<[string, string | Uint8Array, ...RegExp[]]>([
    ['empty', '', /^graph\.json.*: /],
    ['truncated', JSON.stringify(TINY_GRAPH).slice(0, 300), /^graph\.json.*: /],
    ['not JSON', '<svg/>', /^graph\.json.*: /],
    ['not UTF-8', Uint8Array.from([0x7b, 0xff, 0x7d]), /^graph\.json: expected UTF-8 text, found other bytes\./],
    ['of the future', JSON.stringify({ ...TINY_GRAPH, version: 99 }), /^graph\.json.*99/],
    ['deeply nested', '['.repeat(20_000) + ']'.repeat(20_000), /^graph\.json.*: /],
    ['with a __proto__ key', JSON.stringify(TINY_GRAPH).replace('"title"', '"__proto__":{"polluted":1},"title"'), /^graph\.json.*__proto__/],
    ['with an unknown node', JSON.stringify(TINY_GRAPH).replace('"type":"tiny-drawing"', '"type":"tiny-drawin"'), /^graph\.json.*tiny-drawin/],
    ['with a cycle', JSON.stringify({ ...TINY_GRAPH, nodes: [], wires: [{ from: 'a.b', to: 'c.d' }], inputs: [] }), /a/, /c/],
    ['without results', JSON.stringify({ ...TINY_GRAPH, nodes: [], wires: [], inputs: [] }), /^graph\.json: expected a node that makes results/],
  ])('%s', async (_, content, ...lines) => {
    put('graph.json', content);
    await expectFaults(['run', 'graph.json', '--out', 'out'], ...lines);
  });

  it('absent, or a folder', async () => {
    await expectFaults(['run', 'none.json', '--out', 'out'], /^none\.json: .*found nothing of that name\./);
    mkdirSync(join(folder, 'folder'));
    await expectFaults(['inputs', 'folder'], /^folder: expected a file, found a folder\./);
  });
});

describe('where results cannot go', () => {
  it('a folder with something in it is left as it is', async () => {
    mkdirSync(join(folder, 'taken'));
    put('taken/mine.txt', 'mine');
    await expectFaults(['run', 'graph.json', '--out', 'taken'], /^--out taken: expected a folder that is absent or empty, found a folder with something in it\./);
    expect(readdirSync(join(folder, 'taken'))).toEqual(['mine.txt']);
  });

  it.runIf(process.platform === 'linux')('a read-only place is told before a long computation', async () => {
    await expectFaults(['run', 'graph.json', '--set', 'manner=slow', '--out', '/sys/groovewright'],
      /^--out \/sys\/groovewright: expected a place that can be written to, found (no permission|a read-only file system)\./);
  });
});

describe('an interrupted run', () => {
  it('ends at once while computing, and leaves nothing', async () => {
    const { child, ended } = begin(program, ['run', 'graph.json', '--set', 'manner=slow', '--out', 'out'], { cwd: folder });
    setTimeout(() => child.kill('SIGINT'), 1000);
    expect(await ended).toMatchObject({ signal: 'SIGINT', stdout: '' });
    expect(written()).toEqual([]);
  });

  it('cleans up while writing, with status 130', async () => {
    const { child, ended } = begin(program, ['run', 'graph.json', '--set', 'bulk=32', '--out', 'out'], { cwd: folder });
    const watch = setInterval(() => { if (isWriting()) child.kill('SIGINT'); }, 2);
    const { status, stderr } = await ended;
    clearInterval(watch);
    expect({ status, stderr }).toEqual({ status: 130, stderr: 'Interrupted: nothing was written.\n' });
    expect(written()).toEqual([]);
  });
});
