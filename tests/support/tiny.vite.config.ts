import { fileURLToPath } from 'node:url';
import { mergeConfig } from 'vite';
import base from '../../vite.config.ts';

/** The command line's own build, with two tiny nodes in place of the catalogue. */
export default mergeConfig(base, {
  plugins: [{
    name: 'tiny-nodes',
    enforce: 'pre',
    resolveId: (id: string, importer?: string) =>
      id === './catalogue.ts' && importer?.includes('/src/cli/') ? fileURLToPath(new URL('tiny-nodes.ts', import.meta.url)) : undefined,
  }],
});
