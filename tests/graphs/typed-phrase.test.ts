import { beforeAll, describe, expect, it } from 'vitest';
import type { GraphDocument } from '../../src/runtime/index.ts';
import { EXAMPLE_STRIP } from '../../src/values/examples.ts';
import type { Results } from '../../src/values/index.ts';
import { makeRunner, shippedGraph, withInputs } from '../support/shipped-run.ts';

/** All that is decided before a cutter moves: planning and proof are tested on the other recipes, and take their time. */
const DESIGN = [
  'phrase', 'trace', 'repair', 'fit', 'sheet', 'place', 'groove', 'board', 'strip', 'tube', 'light', 'mounting-holes', 'wiring', 'movement', 'cutter',
  'bill', 'rates', 'price', 'quote', 'measure', 'hanging', 'width-check', 'bend-check', 'wall-check', 'stroke-check', 'hole-check', 'cutter-check',
];

/** The part of a graph that has these nodes. */
function partOf(document: GraphDocument, ids: readonly string[]): GraphDocument {
  const kept = (place: string) => ids.includes(place.split('.')[0]!);
  return {
    ...document, nodes: document.nodes.filter(({ id }) => kept(id)), wires: document.wires.filter(({ from, to }) => kept(from) && kept(to)),
    inputs: document.inputs.filter(({ sets }) => kept(sets)),
  };
}

const graph = shippedGraph('typed-phrase.json');
const design = partOf(graph, DESIGN);
const run = makeRunner();

describe('the shipped phrase', () => {
  let results: Results;
  beforeAll(async () => { ({ results } = await run(design)); }, 120_000);

  it('passes every check of its design, without a caution but that its rates are nobody\'s yet', () => {
    expect(results.failures).toEqual([]);
    expect(results.checks.length).toBeGreaterThan(10);
    expect(results.checks.filter(({ status }) => status !== 'pass').map(({ check }) => check)).toEqual(['rates-own']);
    expect(results.cautions).toEqual([]);
    expect(results.quantities).toMatchObject({ letters: { value: 4 }, lines: { value: 1 }, strokes: { value: 7 } });
  });

  it('is lit: whole modules, each stroke in a run, one supply that carries them, and the wiring drawn', () => {
    const { stripModules, stripLength, lightPower, supplyPower, litShare } = results.quantities;
    const { moduleLength, wattsPerMetre } = EXAMPLE_STRIP;
    expect(stripLength!.value).toBeCloseTo(stripModules!.value * moduleLength, 9);
    expect(lightPower!.value).toBeCloseTo((stripLength!.value / 1000) * wattsPerMetre, 9);
    // A supply carries no more than 80 percent of its rating for hours on end: common practice.
    expect(supplyPower!.value).toBeGreaterThanOrEqual(lightPower!.value / 0.8);
    expect(litShare!.value).toBeGreaterThan(0.8);
    expect(results.files.map(({ path }) => path)).toEqual(['wiring.svg', 'bill-of-materials.csv', 'quote.pdf']);
  });

  it('is costed: what is to be bought is what is laid, and the price adds up', () => {
    const { stripLength, stripBought, sheetBought, priceNet, priceTax, priceTotal } = results.quantities;
    expect(stripBought!.value).toBeCloseTo(stripLength!.value / 1000, 6);
    expect(sheetBought!.value).toBeCloseTo(1.3 * 0.8, 9);
    expect(priceTotal!.value).toBeCloseTo(priceNet!.value + priceTax!.value, 9);
  });

  it('is refused with one problem when there is nothing to set', async () => {
    expect((await run(withInputs(design, { phrase: ' ' }))).results.failures).toMatchObject([{ node: 'phrase', problems: [{ place: 'phrase', found: 'nothing but spaces' }] }]);
  });

  it('offers what all recipes for signs do, with phrase and typeface in place of artwork', () => {
    const names = ({ inputs }: GraphDocument) => inputs.map(({ name }) => name);
    expect(names(graph)).toEqual(['phrase', 'typeface', ...names(shippedGraph('lettering-artwork.json')).slice(1)]);
  });
});
