import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const HOST = [['node:*', 'fs', 'path', 'vite', 'vite/*'], 'The core runs in a worker too: pass what is needed as an argument.'];
const VIEW = [['react', 'react/*', 'react-dom', 'react-dom/*', 'rete', 'rete-*'], 'Only src/editor may know the view libraries.'];
const OUTER = [['**/cli/**', '**/editor/**'], 'The core does not know the command line or the editor.'];

/** A hint while typing; tests/layers.test.ts holds the law. */
const layer = (files, banned) => ({
  files,
  rules: { 'no-restricted-imports': ['error', { patterns: banned.map(([group, message]) => ({ group, message })) }] },
});

const CORE = ['src/{geometry,artwork,lettering,machining,lighting,lit,papers,values,runtime}/**/*.ts', 'nodes/**/*.ts'];

export default tseslint.config(
  { ignores: ['.build/**', 'out/**', 'node_modules/**'] },
  ...tseslint.configs.strict,
  {
    languageOptions: { ecmaVersion: 2023, sourceType: 'module' },
    rules: {
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', 6],
      'max-depth': ['error', 4],
      complexity: ['error', 20],
      eqeqeq: 'error',
      'no-console': 'error',
      'prefer-const': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
    },
  },
  { files: ['src/editor/**/*.{ts,tsx}'], ...reactHooks.configs.flat['recommended-latest'] },
  { files: ['tests/**'], rules: { 'max-lines-per-function': 'off' } },
  { files: ['src/cli/**', '.config/**', 'tests/bench/**'], rules: { 'no-console': 'off' } },
  layer(['src/geometry/**/*.ts', 'src/artwork/**/*.ts', 'src/machining/**/*.ts', 'src/papers/**/*.ts'], [HOST, VIEW, OUTER]),
  layer(['src/runtime/**/*.ts'], [HOST, VIEW, OUTER, [['**/nodes/**', '**/geometry/**', '**/values/**'], 'The runtime knows values only by the name of their type.']]),
  layer(['nodes/**/*.ts'], [HOST, VIEW, OUTER, [['./*', '../nodes/**'], 'A node never imports another node.']]),
  {
    files: CORE,
    rules: {
      'no-restricted-syntax': ['error', { selector: 'ImportExpression', message: 'No dynamic import in the core.' }],
      'no-restricted-properties': ['error',
        { object: 'Math', property: 'random', message: 'Evaluation must be deterministic.' },
        { object: 'Date', property: 'now', message: 'Evaluation must be deterministic.' }],
    },
  },
);
