import { expect, it } from 'vitest';
import saveDrawing from '../../nodes/save-drawing.ts';
import { readDrawing } from '../../src/artwork/index.ts';
import { outputsOf } from '../support/run-node.ts';
import type { TextFile } from '../../src/values/index.ts';
import { channelOf, circle, line, rectangle, stock } from '../support/shapes.ts';

const inputs = {
  strokes: [{ path: line([100, 100], [300, 120]), width: 5 }], outlines: undefined, channel: channelOf(rectangle(95, 95, 210, 10), line([100, 100], [300, 120]), circle(400, 100, 20)),
  board: rectangle(50, 50, 500, 200), holes: [[{ centre: { x: 70, y: 70 }, diameter: 6, purpose: 'mounting' as const }]], tiling: undefined, stock,
};
const textOf = (given: Parameters<typeof saveDrawing.compute>[0]) => (outputsOf(saveDrawing, given).files[0] as TextFile).text;

it('has every group, in order, even when empty', () => {
  const ids = (text: string) => [...text.matchAll(/<g id="([^"]+)"/g)].map(([, id]) => id);
  const all = ['artwork', 'strokes', 'channel', 'board', 'holes', 'seams'];
  expect(ids(textOf(inputs))).toEqual(all);
  expect(ids(textOf({ ...inputs, strokes: undefined, channel: undefined, board: undefined, holes: [] }))).toEqual(all);
});

it('is the sheet to scale, width, height and viewBox in mm', () => {
  expect(textOf(inputs)).toMatch(/<svg[^>]* width="600mm" height="300mm" viewBox="0 0 600 300"/);
});

it('reads back as the strokes that were drawn', () => {
  const reading = readDrawing(textOf(inputs));
  expect(reading.ok && reading.drawing.strokes[0]!.path.start).toMatchObject({ x: expect.closeTo(100, 3) as number, y: expect.closeTo(100, 3) as number });
});
