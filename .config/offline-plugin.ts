import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

const WORKER = 'offline.js';

/** Builds the page's service worker into a file of its own, with the list of everything the build made in it. */
export function offline(entry: string): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: entry, fileName: WORKER });
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle[WORKER];
        if (worker?.type !== 'chunk') throw new Error(`expected the chunk ${WORKER}, found none`);
        if (worker.imports.length > 0) throw new Error(`expected ${WORKER} to stand alone, found imports of ${worker.imports.join(', ')}`);
        const files = Object.values(bundle).filter(({ fileName }) => fileName !== WORKER && !fileName.endsWith('.map'))
          .map((file) => [file.fileName, integrity(file.type === 'chunk' ? file.code : file.source)] as const)
          .sort(([a], [b]) => (a < b ? -1 : 1));
        worker.code = worker.code
          .replaceAll('__BUILD_FILES__', JSON.stringify(Object.fromEntries(files)))
          .replaceAll('__BUILD_VERSION__', JSON.stringify(createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 16)));
      },
    },
  };
}

const integrity = (content: string | Uint8Array): string => `sha256-${createHash('sha256').update(content).digest('base64')}`;
