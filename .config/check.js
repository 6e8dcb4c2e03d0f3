import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { isBuilt } from './built.js';

/**
 * All checks, in two rows side by side: the browser waits more than it works, and a type check keeps one core busy. What the second
 * row says is held back until each of its scripts ends, so that the words do not mix. A row stops at its first failure.
 */
const root = fileURLToPath(new URL('..', import.meta.url));

const rows = await Promise.all([
  inTurn([...(isBuilt() ? [] : ['build']), 'types:core', 'lint', 'unit'], 'inherit'),
  inTurn(['types:all', 'browser'], 'pipe'),
]);
if (!rows.every(Boolean)) process.exit(1);

/** Runs scripts one after the other as long as all is well, and says whether all was. */
async function inTurn(scripts, stdio) {
  for (const script of scripts) {
    const { status, words } = await run(script, stdio);
    process.stdout.write(words);
    if (status !== 0) process.stdout.write(`\n== ${script} failed\n`);
    if (status !== 0) return false;
  }
  return true;
}

function run(script, stdio) {
  const child = spawn('npm', ['run', script], { cwd: root, stdio: ['ignore', stdio, stdio], shell: process.platform === 'win32' });
  let words = '';
  for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', (text) => { words += text; });
  return new Promise((resolve, reject) => { child.on('error', reject).on('close', (status) => { resolve({ status, words }); }); });
}
