import { spawnSync } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The demo: a drawing of pen strokes becomes the programs that cut it. */
const root = fileURLToPath(new URL('..', import.meta.url));
const command = '.build/cli/groovewright.js';
const out = 'out/market-hall';

if (!existsSync(root + command)) {
  console.error(`demo: expected the built command line, found none. Run "npm ci" first.`);
  process.exit(2);
}
console.log('Cutting the demo lettering, graphs/market-hall.svg …\n');
rmSync(root + out, { recursive: true, force: true });
const { status } = spawnSync(
  process.execPath,
  [command, 'run', 'graphs/drawn-strokes.json', '--set', 'artwork=@graphs/market-hall.svg', '--out', out],
  { cwd: root, stdio: 'inherit' },
);
if (status === 2) process.exit(2);
console.log(`
Open ${out}/drawing.svg for the drawing and ${out}/report.json for every check and figure;
${out}/programs is what the machine runs${status === 1 ? ', once no check fails' : ''}.
"npx groovewright inputs graphs/drawn-strokes.json" lists what can be changed.`);
process.exit(status ?? 2);
