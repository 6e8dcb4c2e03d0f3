import { expect, it } from 'vitest';
import importOutlines from '../../nodes/import-outlines.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';

const svg = (body: string) => ({ name: 'a.svg', text: `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50">${body}</svg>` });

it('reads filled shapes with their fill rule', () => {
  const { outlines } = outputsOf(importOutlines, {}, { artwork: svg('<path fill-rule="evenodd" d="M0 0H40V40H0Z M10 10H30V30H10Z"/>') });
  expect(outlines).toMatchObject([{ fillRule: 'evenodd', paths: [{ closed: true }, { closed: true }] }]);
});

it('says so when there are only lines', () => {
  expect(problemsOf(importOutlines, {}, { artwork: svg('<path d="M0 0H9" fill="none" stroke="red"/>') })[0]).toMatchObject({ found: '1 strokes and no filled shape' });
  expect(problemsOf(importOutlines, {})[0]).toMatchObject({ found: 'no file' });
});
