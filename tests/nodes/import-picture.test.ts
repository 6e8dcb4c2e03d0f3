import { encode } from 'fast-png';
import { expect, it } from 'vitest';
import importPicture from '../../nodes/import-picture.ts';
import { arrangementBox } from '../../src/artwork/index.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';

/** A page of white with black boxes [left, top, width, height], in pixels. */
function page(columns: number, rows: number, boxes: readonly (readonly [number, number, number, number])[], grey = 0) {
  const data = new Uint8Array(columns * rows).fill(255);
  for (const [left, top, width, height] of boxes) for (let y = top; y < top + height; y++) data.fill(grey, y * columns + left, y * columns + left + width);
  return { name: 'page.png', base64: Buffer.from(encode({ width: columns, height: rows, data, channels: 1, depth: 8 })).toString('base64') };
}
/** Whether the box of all outlines is that one, to a fifth of a pixel. */
function liesIn(outlines: Parameters<typeof arrangementBox>[0]['outlines'], sides: readonly [number, number, number, number], pixel: number) {
  const { minX, minY, maxX, maxY } = arrangementBox({ strokes: [], outlines })!;
  [minX, minY, maxX, maxY].forEach((side, i) => { expect(Math.abs(side - sides[i]!)).toBeLessThan(0.2 * pixel); });
}

const STEM = page(200, 100, [[40, 20, 20, 60]]);

it('gives outlines at their real size and place, y up from the lower left corner of the picture', () => {
  const { outlines, checks, quantities } = outputsOf(importPicture, {}, { picture: STEM, pictureWidth: 400 });
  liesIn(outlines, [80, 40, 120, 160], 2);
  expect(checks.filter(({ status }) => status !== 'pass')).toEqual([]);
  expect(quantities).toMatchObject({ pictureWidth: { value: 400 }, pictureResolution: { value: 0.5, unit: '1/mm' }, specksDropped: { value: 0 } });
});

it('takes the width for that of the lettering where it was measured there', () => {
  const { outlines, quantities } = outputsOf(importPicture, {}, { picture: STEM, pictureWidth: 100, widthOf: 'the lettering' });
  liesIn(outlines, [200, 100, 300, 400], 5);
  expect(quantities['pictureWidth']!.value).toBeCloseTo(1000, 3);
});

it('asks for the width where the file states no resolution', () => {
  expect(problemsOf(importPicture, {}, { picture: STEM })[0]).toMatchObject({ expected: 'the real width of the picture' });
  expect(problemsOf(importPicture, {})[0]).toMatchObject({ found: 'no file' });
  expect(problemsOf(importPicture, {}, { picture: { name: 'a.png', text: '<svg/>' }, pictureWidth: 100 })[0]!.found).toBe('“a.png”, which is text');
});

it('warns, with the place, of lettering cut off by the edge, of few pixels, of faint lettering and of dirt', () => {
  const cautions = (picture: ReturnType<typeof page>) =>
    outputsOf(importPicture, {}, { picture, pictureWidth: 200, lettering: 'darker than its ground' }).checks.filter(({ status }) => status === 'caution');
  expect(cautions(page(200, 100, [[40, 0, 20, 60]]))).toMatchObject([{ check: 'picture-edge', value: 1, at: [50, 99.5] }]);
  expect(cautions(page(200, 100, [[40, 20, 3, 60]]))).toMatchObject([{ check: 'picture-resolution', limit: 5 }]);
  expect(cautions(page(200, 100, [[40, 20, 20, 60]], 235))).toMatchObject([{ check: 'picture-contrast' }]);
  const specks = Array.from({ length: 60 }, (_, i) => [80 + 5 * (i % 20), 10 + 20 * Math.floor(i / 20), 3, 3] as const);
  expect(cautions(page(200, 100, [[40, 20, 20, 60], ...specks]))).toMatchObject([{ check: 'picture-specks', value: 60 }]);
});

it('drops spots under the stated size, and keeps them where that is less', () => {
  const picture = page(200, 100, [[40, 20, 20, 60], [100, 50, 8, 8]]);
  const shapes = (speckSize: number) => outputsOf(importPicture, {}, { picture, pictureWidth: 200, speckSize }).outlines.length;
  expect([shapes(12), shapes(5)]).toEqual([1, 2]);
});

it('doubts a width that is just what another unit would make of the resolution in the file', () => {
  const withResolution = (perMetre: number) => {
    const bytes = Buffer.from(STEM.base64, 'base64');
    // The chunk of ISO/IEC 15948, 11.3.5.3, right behind the header; its check sum is not asked, as the chunk tells no pixels.
    const chunk = Buffer.alloc(21);
    chunk.writeUInt32BE(9, 0);
    chunk.write('pHYs', 4, 'latin1');
    chunk.writeUInt32BE(perMetre, 8);
    chunk.writeUInt32BE(perMetre, 12);
    chunk[16] = 1;
    return { name: 'page.png', base64: Buffer.concat([bytes.subarray(0, 33), chunk, bytes.subarray(33)]).toString('base64') };
  };
  const picture = withResolution(10_000);
  const cautions = (pictureWidth: number) => {
    const outcome = outcomeOf(importPicture, {}, { picture, pictureWidth });
    if (!outcome.ok) throw new Error(outcome.problems[0].found);
    return outcome.cautions ?? [];
  };
  liesIn(outputsOf(importPicture, {}, { picture }).outlines, [4, 2, 6, 8], 0.1);
  expect(cautions(20 * 25.4)).toMatchObject([{ place: 'pictureWidth', advice: expect.stringContaining('inches') as string }]);
  expect([cautions(20), cautions(600), cautions(0)]).toEqual([[], [], []]);
});
