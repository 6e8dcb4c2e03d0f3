import { expect, it } from 'vitest';
import importStrokes from '../../nodes/import-strokes.ts';
import { pathLength } from '../../src/geometry/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';

const svg = (body: string) => ({ name: 'a.svg', text: `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50">${body}</svg>` });

it('reads open and unfilled closed paths in mm, y up', () => {
  const { strokes } = outputsOf(importStrokes, {}, { artwork: svg('<path d="M10 40H90" fill="none" stroke="red" stroke-width="4"/><circle cx="50" cy="25" r="10" fill="none" stroke="red"/>') });
  expect(strokes.map(({ path }) => path.closed)).toEqual([false, true]);
  expect(strokes[0]).toMatchObject({ width: 4, path: { start: { x: 10, y: 10 } } });
  expect(pathLength(strokes[1]!.path)).toBeCloseTo(20 * Math.PI, 2);
});

it('says what is missing when no file was chosen, the file is no text, or it has no stroke', () => {
  expect(problemsOf(importStrokes, {})[0]).toMatchObject({ place: 'artwork', found: 'no file' });
  expect(problemsOf(importStrokes, {}, { artwork: { name: 'a.svg', base64: 'H4sI' } })[0]).toMatchObject({ found: '“a.svg”, which is not UTF-8 text' });
  expect(problemsOf(importStrokes, {}, { artwork: svg('<path d="M0 0H9V9Z" fill="red"/>') })[0]).toMatchObject({ found: '1 filled shapes and no stroke' });
});

it('passes on why a drawing cannot be read', () => {
  expect(problemsOf(importStrokes, {}, { artwork: { name: 'a.svg', text: '<svg><g></svg>' } })).toHaveLength(1);
});
