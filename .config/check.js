import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { isBuilt } from './built.js';

/**
 * All checks. What keeps one core busy at a time goes on two side by side, each with its words held back until it ends, so that
 * they do not mix; all of that is told before anything fails. The tests use both cores themselves, and come after.
 */
const root = fileURLToPath(new URL('..', import.meta.url));

const still = await Promise.all([quietly(['types:all']), quietly(['types:core', 'lint', ...(isBuilt() ? [] : ['build'])])]);
if (!still.every(Boolean)) process.exit(1);
for (const script of ['unit', 'browser']) if ((await run(script, 'inherit')).status !== 0) process.exit(1);

/** Runs scripts one after the other, the later ones whatever becomes of the former. */
async function quietly(scripts) {
  let well = true;
  for (const script of scripts) {
    const { status, words } = await run(script, 'pipe');
    process.stdout.write(words);
    well &&= status === 0;
  }
  return well;
}

function run(script, stdio) {
  const child = spawn('npm', ['run', script], { cwd: root, stdio: ['ignore', stdio, stdio], shell: process.platform === 'win32' });
  let words = '';
  for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', (text) => { words += text; });
  return new Promise((resolve, reject) => { child.on('error', reject).on('close', (status) => { resolve({ status, words }); }); });
}
