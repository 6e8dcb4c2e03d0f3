import { expect, it } from 'vitest';
import wallTemplate from '../../nodes/wall-template.ts';
import { readPdf } from '../papers/read-pdf.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { rectangle } from '../support/shapes.ts';

const [{ inputs }] = wallTemplate.examples;

it('writes a PDF under its name: a title, and a page with both holes', async () => {
  const { files: [file] } = outputsOf(wallTemplate, inputs, { name: 'Door sign', file: 'wall.pdf' });
  expect(file!.path).toBe('wall.pdf');
  const pages = await readPdf('base64' in file! ? file.base64 : '');
  expect(pages[0]!.words).toContain('Wall template: Door sign');
  const words = pages.map((page) => page.words).join(' ');
  for (const text of ['hole 1', 'hole 2', 'slot 6 x 8', 'cables, pipes, reinforcement']) expect(words).toContain(text);
});

it('says what is missing', () => {
  expect(problemsOf(wallTemplate, { ...inputs, holes: [] })).toMatchObject([{ place: 'holes', found: 'none' }]);
  expect(problemsOf(wallTemplate, { ...inputs, board: { loops: [] } })).toMatchObject([{ place: 'board' }]);
  expect(problemsOf(wallTemplate, { ...inputs, board: rectangle(0, 0, 60_000, 20_000) })).toMatchObject([{ place: 'board', expected: 'a template of at most 500 pages' }]);
});
