import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { isBuilt } from './built.js';
import { serve } from './serve.js';

/** Shows the editor: builds it where that is missing or older than its sources, serves it on this machine, says where. */
const root = fileURLToPath(new URL('..', import.meta.url));
const USUAL_PORT = 8450;
/** How many ports after the usual one are tried when it is taken. */
const MORE_PORTS = 20;

const served = await begin(process.env.PORT);
if (!isBuilt()) build();
process.once('SIGINT', stop);
process.once('SIGTERM', stop);
console.log(`
Groovewright is open at ${served.address}
Nothing leaves this machine, and once loaded the page works without this server.
Ctrl+C ends it.`);

async function begin(wanted) {
  if (wanted === undefined || wanted === '') return firstFree(USUAL_PORT, USUAL_PORT + MORE_PORTS);
  if (!/^[0-9]{1,5}$/.test(wanted) || Number(wanted) > 65535)
    return fail(`PORT: expected a whole number from 0 to 65535, found ${JSON.stringify(wanted)}. Set another one, or none.`);
  return serve({ port: Number(wanted) }).catch((error) => fail(`PORT: expected a free port, found ${wanted} ${reason(error)}. Set another one, or none.`));
}

async function firstFree(port, last) {
  try {
    return await serve({ port });
  } catch (error) {
    if (error.code === 'EADDRINUSE' && port < last) return firstFree(port + 1, last);
    return fail(`start: expected a free port from ${USUAL_PORT} to ${last}, found ${port} ${reason(error)}. Set PORT to another one.`);
  }
}

function reason({ code, message }) {
  return { EADDRINUSE: 'taken by another program', EACCES: 'reserved for the system' }[code] ?? `refused (${message})`;
}

function build() {
  console.log('Building the editor, which takes a moment …');
  const { status } = spawnSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
  if (status !== 0) fail('start: expected the editor to build, found the errors above. Run "npm ci" and try again.');
}

function fail(says) {
  console.error(says);
  process.exit(2);
}

function stop() {
  void served.close().then(() => { console.log('\nEnded.'); });
}
