import { expect, it } from 'vitest';
import hiddenStandOffs from '../../nodes/hidden-stand-offs.ts';
import type { Hole } from '../../src/machining/index.ts';
import { readPdf } from '../papers/read-pdf.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { channelOf, rectangle, stock } from '../support/shapes.ts';

// A board of 12 mm, 0.2 mm thinner at worst, with a groove 6 mm deep from y 95 to 105.
const board = rectangle(50, 50, 300, 100);
const channel = channelOf(rectangle(95, 95, 210, 10));
const at = (x: number, y: number, purpose: Hole['purpose'] = 'mounting'): Hole => ({ centre: { x, y }, diameter: 5, purpose });
const inputs = { places: [[at(80, 130), at(300, 130)]], cables: [], board, channel, stock };
const checksOf = (places: readonly Hole[], params: Partial<Record<'depth' | 'diameter', number>> = {}, cables: readonly Hole[] = []) =>
  Object.fromEntries(outputsOf(hiddenStandOffs, { ...inputs, places: [places], cables: [cables] }, params).checks.map(({ check, status, value }) => [check, [status, Math.round(value * 1000) / 1000]]));

// At least 3 mm left, walls of 3 to 5 mm, two diameters to the edge: common practice, no source. Distances by arithmetic.
it('leaves a floor in front of every socket at the thinnest sheet', () => {
  expect(checksOf([at(80, 130)], { depth: 8.8 })['socket-floor']).toEqual(['pass', 3]);
  expect(checksOf([at(80, 130)], { depth: 9 })['socket-floor']).toEqual(['fail', 2.8]);
});

it('measures to the groove beside and above the socket', () => {
  // 12 - 0.2 - 6 - 4 = 1.8 mm above; beside 115 - 4 - 105 = 6 mm.
  expect(checksOf([at(200, 100)], { depth: 4 })['socket-to-groove']).toEqual(['fail', 1.8]);
  expect(checksOf([at(200, 100)], { depth: 2 })['socket-to-groove']).toEqual(['pass', 3.8]);
  expect(checksOf([at(200, 115)], { depth: 4 })['socket-to-groove']).toEqual(['pass', Math.round(Math.hypot(6, 1.8) * 1000) / 1000]);
  expect(checksOf([at(200, 115)], { depth: 8 })['socket-to-groove']).toEqual(['pass', 6]);
  expect(checksOf([at(200, 111)], { depth: 8 })['socket-to-groove']).toEqual(['fail', 2]);
  expect(checksOf([at(200, 100)], { depth: 8 })['socket-to-groove']![0]).toBe('fail');
  expect(checksOf([at(200, 100)], { depth: 8 })['socket-to-groove']![1]).toBeLessThan(0);
});

it('measures to the edge and to holes in its own diameter', () => {
  expect(checksOf([at(70, 130)], { diameter: 10 })['socket-to-edge']).toEqual(['pass', 2]);
  expect(checksOf([at(62, 130)], { diameter: 10 })['socket-to-edge']).toEqual(['fail', 1.2]);
  expect(checksOf([at(80, 130)], { diameter: 10 }, [at(90, 130, 'cable')])['socket-to-hole']).toEqual(['fail', 2.5]);
});

it('writes a mirrored template of the back: places count from the edge that is left from behind', async () => {
  const { files: [file], quantities } = outputsOf(hiddenStandOffs, { ...inputs, cables: [[at(100, 100, 'cable')]] }, { name: 'Door sign', depth: 6 });
  expect(file!.path).toBe('back-template.pdf');
  expect(quantities.sockets!.value).toBe(2);
  const pages = await readPdf('base64' in file! ? file.base64 : '');
  expect(pages[0]!.words).toContain('Back template: Door sign');
  const words = pages.map((page) => page.words).join(' ');
  for (const text of ['seen from behind', 'socket 1', 'x 270, y 80', 'x 50, y 80', 'ø 8, 6 deep', 'depth stop to 6 mm', '1 cable hole']) expect(words).toContain(text);
  for (const text of ['seen from the front', 'Wall template', 'in the board']) expect(words).not.toContain(text);
});

it('says what is missing', () => {
  expect(problemsOf(hiddenStandOffs, { ...inputs, places: [[]] })[0]).toMatchObject({ place: 'places', found: 'none' });
  expect(problemsOf(hiddenStandOffs, { ...inputs, board: { loops: [] } })[0]).toMatchObject({ place: 'board' });
  expect(problemsOf(hiddenStandOffs, { ...inputs, board: rectangle(0, 0, 60_000, 20_000) })[0]).toMatchObject({ place: 'board', expected: 'a template of at most 500 pages' });
});
