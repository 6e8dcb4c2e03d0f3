import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { isBuilt } from '../../.config/built.js';

const CHROMIUM = '/usr/bin/chromium';
const ROOT = fileURLToPath(new URL('../..', import.meta.url));

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of the browser, or nothing when the machine has none. */
    chromium: string;
  }
}

/** Finds Debian's browser, installs it where root may do so, and says loudly when these tests must be left out; builds the editor for all of them unless that was done. */
export default function setup(project: TestProject): void {
  if (!existsSync(CHROMIUM)) install();
  const there = existsSync(CHROMIUM);
  project.provide('chromium', there ? CHROMIUM : '');
  if (!there) process.stderr.write(`\n*** BROWSER TESTS SKIPPED: there is no ${CHROMIUM}. Install Debian's chromium package to run them. ***\n\n`);
  else if (!isBuilt()) build();
}

function install(): void {
  if (process.getuid?.() !== 0) return;
  process.stderr.write('\nInstalling chromium for the browser tests …\n');
  try {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    execFileSync('apt-get', ['update'], { stdio: 'ignore', env });
    execFileSync('apt-get', ['install', '--yes', '--no-install-recommends', 'chromium'], { stdio: 'ignore', env });
  } catch (error) {
    process.stderr.write(`chromium could not be installed: ${error instanceof Error ? error.message : String(error)}\n`);
  }
}

function build(): void {
  execFileSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '-c', '.config/editor.vite.ts', '--logLevel', 'warn'], {
    cwd: ROOT, stdio: 'inherit',
    // The test runner's own setting would build the page as it is while being written.
    env: { ...process.env, NODE_ENV: 'production' },
  });
}
