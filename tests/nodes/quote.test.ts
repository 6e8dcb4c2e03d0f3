import { beforeAll, describe, expect, it } from 'vitest';
import priceNode from '../../nodes/price.ts';
import quote from '../../nodes/quote.ts';
import { encode } from 'fast-png';
import { EXAMPLE_BOARD, EXAMPLE_LIGHTING, EXAMPLE_MATERIALS, EXAMPLE_RATES } from '../../src/values/examples.ts';
import { POINT, type PdfPage, readPdf } from '../papers/read-pdf.ts';
import { outputsOf } from '../support/run-node.ts';

const png = Buffer.from(encode({ width: 4, height: 2, data: new Uint8Array(24).fill(200), channels: 3 })).toString('base64');
const image = { png, small: png, columns: 4, rows: 2, box: { minX: 0, minY: 0, maxX: 4, maxY: 2 }, says: '' };
const rates = { ...EXAMPLE_RATES, own: true, currency: 'kr', margin: 0.25, tax: 0.2, taxName: 'Levy', of: { sheet: 812.5, strip: 99.95, tube: 45, wire: 12, supply: 300, fuse: 5, fixing: 8, machine: 640, bench: 480 } };
const priced = outputsOf(priceNode, { materials: EXAMPLE_MATERIALS, rates }, { assembly: 200 });
const inputs = { price: priced.price, materials: EXAMPLE_MATERIALS, board: EXAMPLE_BOARD, lighting: EXAMPLE_LIGHTING, image };
const pagesOf = async (more: object = {}, params: object = {}): Promise<PdfPage[]> => {
  const [file] = outputsOf(quote, { ...inputs, ...more }, params).files;
  return readPdf((file as { base64: string }).base64);
};

describe('a quote', () => {
  let pages: PdfPage[];
  beforeAll(async () => { pages = await pagesOf({}, { name: 'Café Nocturne', customer: 'the market hall', notes: 'Goes to the north wall.' }); });

  it('is one page, in both papers', async () => {
    expect(pages).toHaveLength(1);
    // ISO 216: A4 is 210 x 297 mm. US Letter: 612 x 792 points.
    expect([pages[0]!.width, pages[0]!.height]).toEqual([expect.closeTo(210 / POINT, 2), expect.closeTo(297 / POINT, 2)]);
    const letter = await pagesOf({}, { paper: 'US Letter' });
    expect(letter.map(({ width, height }) => [width, height])).toEqual([[expect.closeTo(612, 2), expect.closeTo(792, 2)]]);
  });

  it('says what the report says: every line, sum and total', () => {
    for (const [name, { value, unit }] of Object.entries(priced.quantities)) {
      const printed = `${value.toFixed(2).replace(/\B(?=(\d{3})+\.)/g, '\u00a0')} ${unit}`;
      expect(pages[0]!.words.replaceAll('\u00a0', ' '), name).toContain(printed.replaceAll('\u00a0', ' '));
    }
    for (const { item, quantity, rate } of priced.price.lines) for (const word of [item, String(quantity), String(rate)]) expect(pages[0]!.words).toContain(word);
    expect(pages[0]!.words).toContain('Levy');
  });

  it('tells size, weight and light, for whom it is, and what to mind', () => {
    for (const word of ['Quote: Café Nocturne', 'For the market hall', '300 x 100 mm', '2 W at 24 V, 3000 K', 'Goes to the north wall.', 'holds for 30 days', 'licensed people; local code decides']) expect(pages[0]!.words).toContain(word);
    expect(pages[0]!.words).not.toContain('DRAFT');
  });

  it('says that it is a draft as long as rates are placeholders, and nothing about days when there are none', async () => {
    const [page] = await pagesOf({ price: { ...priced.price, rates: { ...rates, own: false } } }, { validDays: 0 });
    expect(page!.words).toContain('DRAFT: rates are placeholders');
    expect(page!.words).not.toContain('holds for');
  });

  it('does without picture, board and light, and is the same every time', () => {
    const bare = { ...inputs, image: undefined, board: undefined, lighting: undefined, materials: undefined };
    expect(outputsOf(quote, bare).files).toEqual(outputsOf(quote, bare).files);
  });
});
