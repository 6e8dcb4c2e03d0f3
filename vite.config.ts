import { defineConfig } from 'vitest/config';

/** The build makes the command line; the same file tells the test runner which tests need a browser. */
export default defineConfig({
  build: {
    ssr: 'src/cli/main.ts',
    target: 'node20',
    outDir: '.build/cli',
    emptyOutDir: true,
    rollupOptions: { output: { entryFileNames: 'groovewright.js' } },
  },
  test: {
    projects: [
      {
        extends: true,
        test: { name: 'unit', include: ['tests/**/*.test.ts'], exclude: ['tests/browser/**'], testTimeout: 30_000 },
      },
      {
        extends: true,
        test: { name: 'browser', include: ['tests/browser/**/*.test.ts'], testTimeout: 120_000, hookTimeout: 300_000 },
      },
    ],
  },
});
