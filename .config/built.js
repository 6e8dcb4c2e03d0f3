import { existsSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const MADE = ['.build/editor/index.html', '.build/cli/groovewright.js'];
const SOURCES = ['src', 'nodes', 'graphs', '.config', 'vite.config.ts', 'package-lock.json'];

/** Whether the command line and the editor are there and younger than all they are made of: what was taken away counts by its folder. */
export function isBuilt() {
  const made = MADE.map((path) => root + path);
  if (!made.every((path) => existsSync(path))) return false;
  const built = Math.min(...made.map(changed));
  return SOURCES.every((path) => newest(root + path) < built);
}

const changed = (path) => statSync(path).mtimeMs;

function newest(path) {
  const within = statSync(path).isDirectory() ? readdirSync(path, { recursive: true }) : [];
  return within.reduce((latest, name) => Math.max(latest, changed(`${path}/${name}`)), changed(path));
}
