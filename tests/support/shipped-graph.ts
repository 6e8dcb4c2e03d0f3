import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { expect } from 'vitest';
import { buildCommandLine, call, filesUnder, root, scratch } from './command-line.ts';

const GRAPH = 'graphs/drawn-strokes.json';
const ARTWORK = 'graphs/market-hall.svg';

/** The shipped graph and drawing, as `evaluateGraph` takes them. */
export function shippedWork() {
  const text = (path: string) => readFileSync(join(root, path), 'utf8');
  return { graph: text(GRAPH), artwork: { name: 'market-hall.svg', text: text(ARTWORK) } };
}

/** Bundles the core, the nodes and `evaluateGraph` into one module that any host can load; gives its path. */
export async function buildEvaluation(name: string): Promise<string> {
  const outDir = join(root, '.build', name);
  await build({
    configFile: false, root, logLevel: 'warn', publicDir: false,
    build: { outDir, emptyOutDir: true, target: 'es2022', lib: { entry: 'tests/support/evaluation.ts', formats: ['es'], fileName: () => 'evaluation.js' } },
  });
  return join(outDir, 'evaluation.js');
}

/** Every file the command line writes for the shipped graph, the report without its timings. */
export async function commandLineFiles(name: string): Promise<Map<string, string>> {
  const out = join(scratch(), 'out');
  const { status, stderr } = await call(buildCommandLine(name), ['run', GRAPH, '--set', `artwork=@${ARTWORK}`, '--out', out], { cwd: root });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const files = filesUnder(out);
  const report: unknown = { ...JSON.parse(files.get('report.json')!) as object, timings: {} };
  return files.set('report.json', `${JSON.stringify(report, null, 2)}\n`);
}

/** Fails unless both hosts made the same files, byte for byte. */
export function expectSameFiles(found: readonly { path: string; text: string }[], expected: ReadonlyMap<string, string>): void {
  expect(found.map(({ path }) => path).sort()).toEqual([...expected.keys()].sort());
  expect(found.filter(({ path, text }) => expected.get(path) !== text).map(({ path }) => path)).toEqual([]);
  expect([...expected.keys()].filter((path) => path.endsWith('.ngc')).length).toBeGreaterThan(0);
}
