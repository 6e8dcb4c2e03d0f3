import { expect, it } from 'vitest';
import price from '../../nodes/price.ts';
import { EXAMPLE_MATERIALS, EXAMPLE_RATES } from '../../src/values/examples.ts';
import { outputsOf } from '../support/run-node.ts';

const inputs = { materials: EXAMPLE_MATERIALS, rates: EXAMPLE_RATES };

it('cautions as long as rates are placeholders', () => {
  expect(outputsOf(price, inputs).checks).toMatchObject([{ check: 'rates-own', status: 'caution' }]);
  expect(outputsOf(price, { ...inputs, rates: { ...EXAMPLE_RATES, own: true } }).checks).toMatchObject([{ status: 'pass' }]);
});

it('tells every line and sum as a quantity in the currency', () => {
  const { quantities, price: { lines, total } } = outputsOf(price, { ...inputs, rates: { ...EXAMPLE_RATES, currency: 'kr', tax: 0.25 } }, { assembly: 120, perSetUp: 0 });
  expect(quantities['priceBench']).toEqual({ value: 2, unit: 'kr' });
  expect(quantities['priceTotal']).toEqual({ value: total / 100, unit: 'kr' });
  expect(Object.keys(quantities)).toHaveLength(lines.length + 5);
});
