import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { expect } from 'vitest';
import { leanPdf } from '../../.config/lean-pdf-plugin.ts';
import type { ResultFile } from '../../src/values/index.ts';
import { call, commandLine, filesUnder, root, scratch } from './command-line.ts';

const GRAPH = 'graphs/drawn-strokes.json';

/** A drawing as a graph keeps it. */
export interface Drawing {
  readonly name: string;
  readonly text: string;
}

export function shippedDrawing(): Drawing {
  return { name: 'market-hall.svg', text: readFileSync(join(root, 'graphs/market-hall.svg'), 'utf8') };
}

/** A drawing of few strokes, for quick runs: a curve that is open and a ring. */
export const SMALL_DRAWING: Drawing = {
  name: 'small.svg',
  text: '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="80mm" viewBox="0 0 200 80" fill="none" stroke="black">'
    + '<path d="M10 60 C30 10 60 10 80 60"/><circle cx="150" cy="40" r="25"/></svg>',
};

/** What `evaluateGraph` takes: the shipped graph and a drawing. */
export function shippedWork(artwork: Drawing) {
  return { graph: readFileSync(join(root, GRAPH), 'utf8'), artwork };
}

/** Bundles the core, the nodes and `evaluateGraph` into one module that any host can load; gives its path. */
export async function buildEvaluation(name: string): Promise<string> {
  const outDir = join(root, '.build', name);
  await build({
    configFile: false, root, logLevel: 'warn', publicDir: false, plugins: [leanPdf()],
    build: { outDir, emptyOutDir: true, target: 'es2022', lib: { entry: 'tests/support/evaluation.ts', formats: ['es'], fileName: () => 'evaluation.js' } },
  });
  return join(outDir, 'evaluation.js');
}

/** Every file the command line writes for the shipped graph and a drawing, the report without its timings. */
export async function commandLineFiles(build: string, { name, text }: Drawing): Promise<Map<string, string>> {
  const folder = scratch();
  writeFileSync(join(folder, name), text);
  const { status, stderr } = await call(commandLine(build), ['run', join(root, GRAPH), '--set', `artwork=@${name}`, '--out', 'out'], { cwd: folder });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const files = filesUnder(join(folder, 'out'));
  const report: unknown = { ...JSON.parse(files.get('report.json')!) as object, timings: {} };
  return files.set('report.json', `${JSON.stringify(report, null, 2)}\n`);
}

/** Fails unless both hosts made the same files, byte for byte. */
export function expectSameFiles(found: readonly ResultFile[], expected: ReadonlyMap<string, string>): void {
  expect(found.map(({ path }) => path).sort()).toEqual([...expected.keys()].sort());
  expect(found.filter((file) => expected.get(file.path) !== contentOf(file)).map(({ path }) => path)).toEqual([]);
  expect([...expected.keys()].filter((path) => path.endsWith('.ngc')).length).toBeGreaterThan(0);
}

/** A file's content read as text, as the expected ones are; what is no text compares all the same. */
const contentOf = (file: ResultFile): string => ('text' in file ? file.text : Buffer.from(file.base64, 'base64').toString('utf8'));
