import { chmodSync, mkdirSync, rmSync, symlinkSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * Puts the built command where `npx` finds it at once. The package does not declare it as a command of its own: npx would
 * then link the whole package into its cache before every first run, which is slow and one more thing to fail offline.
 */
const root = fileURLToPath(new URL('..', import.meta.url));
const link = `${root}node_modules/.bin/groovewright`;
chmodSync(`${root}.build/cli/groovewright.js`, 0o755);
mkdirSync(`${root}node_modules/.bin`, { recursive: true });
rmSync(link, { force: true });
symlinkSync('../../.build/cli/groovewright.js', link);
