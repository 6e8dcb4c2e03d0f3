import { execFileSync, spawn, type SpawnOptions } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { isBuilt } from '../../.config/built.js';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Ended {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The path of the built command line: as it was built last, or afresh into a folder of its own where sources are younger. */
export function commandLine(name: string): string {
  return isBuilt() ? join(root, '.build/cli/groovewright.js') : buildCommandLine(name);
}

/** Builds the command line afresh into a folder of its own; gives the path of the built file. */
export function buildCommandLine(name: string, config = 'vite.config.ts'): string {
  const out = `.build/${name}`;
  execFileSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn', '--config', config, '--outDir', out], { cwd: root, stdio: 'pipe' });
  return join(root, out, 'groovewright.js');
}

/** Runs a built command line to its end. */
export function call(program: string, args: readonly string[], options: SpawnOptions = {}): Promise<Ended> {
  return begin(program, args, options).ended;
}

/** Starts a built command line; `kill` sends it a signal. */
export function begin(program: string, args: readonly string[], options: SpawnOptions = {}) {
  const child = spawn(process.execPath, [program, ...args], { stdio: ['ignore', 'pipe', 'pipe'], ...options });
  let stdout = '';
  let stderr = '';
  child.stdout?.setEncoding('utf8').on('data', (text: string) => { stdout += text; });
  child.stderr?.setEncoding('utf8').on('data', (text: string) => { stderr += text; });
  const ended = new Promise<Ended>((resolve, reject) => {
    child.on('error', reject).on('close', (status, signal) => { resolve({ status, signal, stdout, stderr }); });
  });
  return { child, ended };
}

/** Every file under a folder with its text, by its path in the folder. */
export function filesUnder(folder: string): Map<string, string> {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
  return new Map(paths.sort().map((path) => [relative(folder, path), readFileSync(path, 'utf8')]));
}

/** A folder of the test's own, removed after it. To be called within a test or before each. */
export function scratch(): string {
  const folder = mkdtempSync(join(tmpdir(), 'groovewright-test-'));
  onTestFinished(() => { rmSync(folder, { recursive: true, force: true }); });
  return folder;
}
