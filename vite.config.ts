import { defineConfig } from 'vitest/config';

const SHARING = [
  'tests/{artwork,cli,costing,geometry,graphs,lettering,lighting,lit,machining,nodes,papers,runtime,values}/**/*.test.ts', 'tests/editor/{model,worker}/*.test.ts', 'tests/*.test.ts',
];

/** The build makes the command line and the worker of its batches; the same file tells the test runner which tests need a browser. */
export default defineConfig({
  build: {
    ssr: true,
    target: 'node20',
    outDir: '.build/cli',
    emptyOutDir: true,
    rollupOptions: {
      input: { groovewright: 'src/cli/main.ts', 'batch-worker': 'src/cli/batch-worker.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: 'shared-[name].js' },
    },
  },
  test: {
    // Two at once on two cores: the runner's own choice would leave one of them idle.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: { name: 'unit', include: ['tests/**/*.test.{ts,tsx}'], exclude: ['tests/browser/**'], testTimeout: 60_000 },
      },
      // The same tests in two parts, for `npm run unit`: most keep nothing in modules, so files that follow one another share them.
      {
        extends: true,
        test: { name: 'sharing', include: SHARING, testTimeout: 60_000, isolate: false },
      },
      {
        extends: true,
        test: { name: 'alone', include: ['tests/**/*.test.{ts,tsx}'], exclude: ['tests/browser/**', ...SHARING], testTimeout: 60_000 },
      },
      {
        extends: true,
        test: { name: 'figures', include: ['tests/bench/*figures.ts', 'tests/bench/tracing-pictures.ts'], testTimeout: 600_000, disableConsoleIntercept: true },
      },
      {
        extends: true,
        test: { name: 'tracing-pace', include: ['tests/bench/tracing-pace.ts'], testTimeout: 600_000, disableConsoleIntercept: true },
      },
      {
        extends: true,
        test: {
          name: 'pace', include: ['tests/bench/editor-pace.ts'], globalSetup: 'tests/browser/setup.ts', testTimeout: 600_000, hookTimeout: 300_000,
          disableConsoleIntercept: true,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser', include: ['tests/browser/**/*.test.ts'], globalSetup: 'tests/browser/setup.ts',
          testTimeout: 300_000, hookTimeout: 300_000,
        },
      },
    ],
  },
});
