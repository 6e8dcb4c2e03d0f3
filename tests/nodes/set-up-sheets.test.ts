import { expect, it } from 'vitest';
import setUpSheets from '../../nodes/set-up-sheets.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { machine, stock } from '../support/shapes.ts';
import { readPdf } from '../papers/read-pdf.ts';

const [example] = setUpSheets.examples;

it('writes a PDF under its name, with what it is called and what there is to know', async () => {
  const { files: [file] } = outputsOf(setUpSheets, example.inputs, { name: 'Door sign', notes: 'Keep the film on.', file: 'bench.pdf' });
  expect(file!.path).toBe('bench.pdf');
  const [cover, page] = await readPdf('base64' in file! ? file.base64 : '');
  expect(cover!.words).toContain('Set-up sheets: Door sign');
  expect(cover!.words).toContain('Keep the film on.');
  expect(page!.words).toContain('programs/set-up-1-cutter-1.ngc');
});

it('marks a draft when any of the wired checks failed', async () => {
  const failed = { check: 'x', status: 'fail', value: 1, limit: 0, unit: 'mm', says: 'A wall is too thin.' } as const;
  const { files: [file] } = outputsOf(setUpSheets, { ...example.inputs, checks: [[], [failed]] });
  for (const { words } of await readPdf('base64' in file! ? file.base64 : '')) expect(words).toContain('DRAFT');
});

it('has nothing to write without a set-up', () => {
  expect(problemsOf(setUpSheets, { ...example.inputs, setups: [], machine, stock })).toMatchObject([{ place: 'setups', found: 'none' }]);
});
