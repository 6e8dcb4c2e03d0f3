import { expect, it } from 'vitest';
import rates from '../../nodes/rates.ts';
import { outputsOf } from '../support/run-node.ts';

it('starts with placeholders that nobody has said are their own', () => {
  const { rates: { own, of, currency } } = outputsOf(rates, {});
  expect([own, currency, new Set(Object.values(of))]).toEqual([false, '', new Set([1])]);
});

it('hands on what the shop put in, without blanks around words', () => {
  expect(outputsOf(rates, {}, { own: true, sheet: 85.5, currency: ' kr ', taxName: ' ', tax: 0.2 }).rates).toMatchObject({ own: true, of: { sheet: 85.5, strip: 1 }, currency: 'kr', taxName: 'Tax', tax: 0.2 });
});
