import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchMinutes, type Materials, money, priceOf, type Rates } from '../../src/costing/index.ts';
import { EXAMPLE_RATES } from '../../src/values/examples.ts';

const materials: Materials = {
  setUps: 3,
  rows: [
    { part: 'sheet', item: 'Sheet', quantity: 1.25, unit: 'm2', counts: true }, { part: 'sheet', item: 'waste', quantity: 0.5, unit: 'm2', counts: false },
    { part: 'strip', item: 'run 1', quantity: 2.5, unit: 'm', counts: true }, { part: 'strip', item: 'run 2', quantity: 1.205, unit: 'm', counts: true },
    { part: 'supply', item: 'Supply', quantity: 2, unit: 'count', counts: true }, { part: 'machine', item: 'Machine', quantity: 90, unit: 'min', counts: true },
  ],
};
const rates = (of: Partial<Rates['of']>, rest: Partial<Rates> = {}): Rates =>
  ({ ...EXAMPLE_RATES, of: { sheet: 0, strip: 0, tube: 0, wire: 0, supply: 0, fuse: 0, fixing: 0, machine: 0, bench: 0, ...of }, ...rest });

describe('a price', () => {
  it('is quantity times rate, with margin on the cost and tax on both', () => {
    // By hand: 1.25 x 80 = 100; 3.705 x 4 = 14.82; 2 x 30 = 60; 1.5 h x 40 = 60; (3 x 20 + 30) min = 1.5 h x 50 = 75; cost 309.82;
    // a quarter on top is 77.455, rounded up to 77.46; net 387.28; a fifth of it 77.456 to 77.46; total 464.74.
    const price = priceOf(materials, rates({ sheet: 80, strip: 4, supply: 30, machine: 40, bench: 50 }, { margin: 0.25, tax: 0.2 }), benchMinutes(materials, { perSetUp: 20, assembly: 30 }));
    expect(price.lines.map(({ part, quantity, hundredths }) => [part, quantity, hundredths])).toEqual([
      ['sheet', 1.25, 10000], ['strip', 3.705, 1482], ['supply', 2, 6000], ['machine', 1.5, 6000], ['bench', 1.5, 7500],
    ]);
    expect(price).toMatchObject({ cost: 30982, margin: 7746, net: 38728, tax: 7746, total: 46474 });
  });

  it('rounds halves up, also those that binary digits miss', () => {
    const one = (rate: number) => priceOf({ setUps: 0, rows: [{ part: 'supply', item: '', quantity: 1, unit: 'count', counts: true }] }, rates({ supply: rate }), 0).total;
    // 1.005 is stored a little below itself.
    expect([one(1.005), one(2.675), one(0.004), one(0)]).toEqual([101, 268, 0, 0]);
  });

  it('adds up as it is printed, whatever the rates', () => {
    const rate = fc.integer({ min: 0, max: 10 ** 7 }).map((n) => n / 1000);
    const any = fc.record({ sheet: rate, strip: rate, supply: rate, machine: rate, bench: rate });
    fc.assert(fc.property(any, fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (of, margin, tax) => {
      const { lines, cost, net, total, ...price } = priceOf(materials, rates(of, { margin, tax }), 77);
      for (const { quantity, rate: by, hundredths } of lines) expect(Math.abs(hundredths - quantity * by * 100)).toBeLessThanOrEqual(0.5 + 1e-6);
      expect(lines.reduce((sum, { hundredths }) => sum + hundredths, 0)).toBe(cost);
      expect([cost + price.margin, net + price.tax]).toEqual([net, total]);
    }), { numRuns: 100 });
  });

  it('is written with two decimals and thousands apart', () => {
    expect([money(0, ''), money(5, 'kr'), money(123456789, '€'), money(-99, '')]).toEqual(['0.00', '0.05 kr', '1\u00a0234\u00a0567.89 €', '-0.99']);
  });
});
