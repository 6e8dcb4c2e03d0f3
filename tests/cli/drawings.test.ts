import { mkdtempSync, readFileSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { call, commandLine, root } from '../support/command-line.ts';

const GRAPH = join(root, 'graphs/drawn-strokes.json');
const HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="100mm" viewBox="0 0 300 100">';
const stroke = (data: string) => `${HEAD}<path d="${data}" fill="none" stroke="black"/></svg>`;

/** A sheet just large enough, so that its proof is quick. */
const SMALL = ['--set', 'sheetWidth=340', '--set', 'sheetHeight=200'];

/** Each entity stands for ten of the next: ten to the eighth letters in all. */
const BOMB = `<?xml version="1.0"?><!DOCTYPE svg [${[...'abcdefgh'].map((name, i) => `<!ENTITY ${name} "${`&${'bcdefghi'[i]};`.repeat(10)}">`).join('')}<!ENTITY i "x">]>${HEAD}<text>&a;</text></svg>`;

let program: string;
let folder: string;
let calls = 0;
beforeAll(() => {
  program = commandLine('test-drawings');
  folder = mkdtempSync(join(tmpdir(), 'groovewright-test-'));
  writeFileSync(join(folder, 'good.svg'), stroke('M10 50 L60 50'));
}, 60_000);
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

/** Status 2, one line for each pattern, no stack trace, nothing written. */
async function expectFaults(sets: string[], ...lines: RegExp[]) {
  const out = `out-${++calls}`;
  const { status, stdout, stderr } = await call(program, ['run', GRAPH, ...sets.flatMap((set) => ['--set', set]), '--out', out], { cwd: folder });
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr.split('\n')).toEqual([...lines.map((line) => expect.stringMatching(line)), '']);
  expect(stderr).not.toMatch(/\n\s+at |defect|internal/i);
  expect(readdirSync(folder)).not.toContain(out);
}

describe('the shipped graph, given a drawing', () => {
  it.each<[string, string, RegExp]>([
    ['empty', '', /found an empty file\./],
    ['truncated', stroke('M10 50 L290 50').slice(0, -20), /expected a complete SVG drawing/],
    ['not-xml', 'G0 X1 Y2', /expected a complete SVG drawing/],
    ['a-page', '<!doctype html><html><body><p>Sign</body></html>', /expected .*SVG drawing/],
    ['an-entity-bomb', BOMB, /defines no entities/],
    ['an-outside-entity', `<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>${HEAD}<text>&a;</text></svg>`, /defines no entities/],
    ['nested-20000-deep', `${HEAD}${'<g>'.repeat(20_000)}${'</g>'.repeat(20_000)}</svg>`, /at most 256 elements inside one another/],
    ['of-no-number', stroke('M NaN 50 L290 50'), /expected finite coordinates.*NaN/],
    ['of-1e308', stroke('M1e308 50 L-1e308 50'), /expected finite coordinates.*1e\+?308/],
    ['of-1e999', stroke('M1e999 50 L0 50'), /expected finite coordinates/],
    ['of-a-lone-move', stroke('M10 50'), /expected at least one open or stroked path/],
    ['of-nothing', `${HEAD}</svg>`, /expected at least one open or stroked path/],
  ])('%s', async (name, text, line) => {
    const file = `${name}.svg`;
    writeFileSync(join(folder, file), text);
    await expectFaults([`artwork=@${file}`], line);
  });

  it('of 100 MiB', async () => {
    writeFileSync(join(folder, 'huge.svg'), '');
    truncateSync(join(folder, 'huge.svg'), 100 * 1024 * 1024);
    await expectFaults(['artwork=@huge.svg'], /^--set artwork: expected at most 32 MiB, found 100\.0 MiB\./);
  });

  it('of bytes that are no text', async () => {
    writeFileSync(join(folder, 'bytes.svg'), Uint8Array.from([0x3c, 0x73, 0xff, 0x00]));
    await expectFaults(['artwork=@bytes.svg'], /^Pen drawing \(node artwork\).*: expected .*/);
  });
});

describe('the shipped graph, given a drawing that is odd but can be cut', () => {
  it.each<[string, string]>([
    ['one straight stroke', stroke('M60 50H240')],
    ['a line of no length, and a dot', `${HEAD}<path d="M60 50L60 50" fill="none" stroke="black"/><path d="M150 50H240" fill="none" stroke="black"/><path d="M100 50Z" stroke-linecap="round" fill="none" stroke="black"/></svg>`],
    ['sharp corners and a retraced line', stroke('M60 30H140V70L100 30L60 70H140V30')],
    ['a closed path and one that crosses itself', `${HEAD}<path d="M60 20H120V80H60Z" fill="none" stroke="black"/><path d="M140 80C300 0 140 0 240 80" fill="none" stroke="black"/></svg>`],
    ['the same stroke twice', `${HEAD}<path d="M60 50H240" fill="none" stroke="black"/><path d="M60 50H240" fill="none" stroke="black"/></svg>`],
    ['strokes without any style', `${HEAD}<path d="M60 50C100 20 200 80 240 50"/></svg>`],
  ])('%s', async (name, text) => {
    const file = `${name.replaceAll(' ', '-')}.svg`;
    const out = `out-${++calls}`;
    writeFileSync(join(folder, file), text);
    const { status, stderr } = await call(program, ['run', GRAPH, ...SMALL, '--set', `artwork=@${file}`, '--out', out], { cwd: folder });
    const report = JSON.parse(readFileSync(join(folder, out, 'report.json'), 'utf8')) as { status: string; checks: { status: string; says: string }[] };
    expect(report.checks.filter((check) => check.status === 'fail').map(({ says }) => says)).toEqual([]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(readdirSync(join(folder, out)).sort()).toEqual(['bill-of-materials.csv', 'drawing.svg', 'programs', 'report.json', 'set-up-sheets.pdf']);
  });
});

it('a graph whose wires go round in a circle is refused, its nodes named', async () => {
  const graph = JSON.parse(readFileSync(GRAPH, 'utf8')) as { nodes: object[]; wires: object[] };
  const ring = ['a', 'b'].map((id) => ({ id, type: 'union', position: [0, 0], params: {} }));
  const wires = [{ from: 'a.region', to: 'b.regions' }, { from: 'b.region', to: 'a.regions' }];
  writeFileSync(join(folder, 'ring.json'), JSON.stringify({ ...graph, nodes: [...graph.nodes, ...ring], wires: [...graph.wires, ...wires] }));
  const { status, stderr } = await call(program, ['run', 'ring.json', '--out', 'ring-out'], { cwd: folder });
  expect(status).toBe(2);
  expect(stderr.trim().split('\n')).toEqual([expect.stringMatching(/^ring\.json.*a.*b/)]);
});

describe('the shipped graph, set to what cannot be cut', () => {
  it.each<[string, string, RegExp]>([
    ['a groove deeper than the sheet', 'channelDepth=40', /groove less deep than the thinnest sheet, 11\.80 mm, found 40 mm deep/],
    ['a cutter wider than the groove', 'channelWidth=3', /cutter: expected a diameter of at most 3 mm, .*found 4 mm/],
  ])('%s', async (_, set, line) => { await expectFaults(['artwork=@good.svg', set], line); });
});
