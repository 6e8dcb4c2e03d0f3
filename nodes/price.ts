import '../src/values/types.ts';
import { benchMinutes, type Price, priceOf } from '../src/costing/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, type Quantities, atMost } from '../src/values/check.ts';
import { EXAMPLE_MATERIALS, EXAMPLE_RATES } from '../src/values/examples.ts';

export default defineNode({
  name: 'price',
  title: 'Price',
  doc: 'What the sign costs: every quantity of the bill times its rate, time at the bench, margin and tax. Each line is rounded to hundredths, halves up, so that the printed lines add up to the printed total.',
  inputs: {
    materials: { type: 'materials', doc: 'The bill of materials.' },
    rates: { type: 'rates', doc: 'The shop\'s rates.' },
  },
  outputs: {
    price: { type: 'price', doc: 'The lines of the price and their sums, for a quote.' },
    checks: { type: 'checks', doc: 'Whether the rates are the shop\'s own.' },
    quantities: { type: 'quantities', doc: 'Each line, and the sums.' },
  },
  params: {
    perSetUp: { kind: 'number', unit: 'count', default: 15, min: 0, max: 100_000, step: 5, label: 'Minutes a set-up', doc: 'Work at the bench for each set-up of the sheet. 15 is a placeholder.' },
    assembly: { kind: 'number', unit: 'count', default: 60, min: 0, max: 100_000, step: 5, label: 'Minutes of assembly', doc: 'Work at the bench for the rest: cleaning, strip, tube, wiring, packing. 60 is a placeholder.' },
  },
  examples: [{ title: 'a small board at placeholder rates', inputs: { materials: EXAMPLE_MATERIALS, rates: EXAMPLE_RATES } }],
  compute({ materials, rates }, times) {
    const price = priceOf(materials, rates, benchMinutes(materials, times));
    return { ok: true, outputs: { price, checks: [ratesCheck(rates.own)], quantities: quantitiesOf(price) } };
  },
});

const ratesCheck = (own: boolean): Check => atMost({
  check: 'rates-own', subject: 'Rates that are placeholders, not prices', value: own ? 0 : 1, limit: 0, unit: 'count', advice: 'Put your own into “Rates”, and say there that they are yours.',
}, 'caution');

function quantitiesOf({ lines, cost, margin, net, tax, total, rates }: Price): Quantities {
  const amount = (hundredths: number) => ({ value: hundredths / 100, unit: rates.currency });
  const named = (part: string) => `price${part.charAt(0).toUpperCase()}${part.slice(1)}`;
  return {
    ...Object.fromEntries(lines.map(({ part, hundredths }) => [named(part), amount(hundredths)])),
    priceCost: amount(cost), priceMargin: amount(margin), priceNet: amount(net), priceTax: amount(tax), priceTotal: amount(total),
  };
}
