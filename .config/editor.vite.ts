import react from '@vitejs/plugin-react';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { leanPdf } from './lean-pdf-plugin.ts';
import { offline } from './offline-plugin.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The page of the editor: everything it loads is a file of its own origin, so that it works without a network. */
export default defineConfig({
  root: `${root}src/editor`,
  base: './',
  publicDir: false,
  plugins: [react(), offline(`${root}src/editor/offline/worker.ts`)],
  worker: { format: 'es', plugins: () => [leanPdf()] },
  server: {
    host: '127.0.0.1',
    headers: { 'Cross-Origin-Opener-Policy': 'same-origin', 'Cross-Origin-Embedder-Policy': 'require-corp' },
  },
  build: {
    outDir: `${root}.build/editor`,
    emptyOutDir: true,
    target: 'es2023',
    // Fonts and pictures stay files: a page that forbids data addresses can still show them.
    assetsInlineLimit: 0,
    // It comes from this machine: one file of half a megabyte loads as fast as several.
    chunkSizeWarningLimit: 1000,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
});
