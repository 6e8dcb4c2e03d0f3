import { describe, expect, it } from 'vitest';
import { checkGraph, type GraphDocument } from '../../src/runtime/index.ts';
import { catalogue, makeRunner, shippedGraph, withInputs } from '../support/shipped-run.ts';

const run = makeRunner();
const notPassed = (checks: readonly { readonly status: string; readonly says: string }[]) => checks.filter(({ status }) => status !== 'pass').map(({ says }) => says);

/** What is decided before a cutter moves, and how the sheet is cut in set-ups: planning and proof of a large sheet take their time, and are tested on the other recipes. */
const LATER = ['groove-passes', 'hole-passes', 'outline-passes', 'order', 'programs', 'proof', 'seam-proof', 'travel-check', 'holding-check', 'overhang-check', 'sheets', 'hold', 'lit', 'quote', 'bill', 'price'];
function planOf(document: GraphDocument): GraphDocument {
  const kept = (place: string) => !LATER.includes(place.split('.')[0]!);
  return { ...document, nodes: document.nodes.filter(({ id }) => kept(id)), wires: document.wires.filter(({ from, to }) => kept(from) && kept(to)), inputs: document.inputs.filter(({ sets }) => kept(sets)) };
}

describe.each(['house-numbers', 'drawn-board'])('the shipped recipe %s', (name) => {
  it('is cut and proved without a caution, and hands over its files', async () => {
    const { results } = await run(shippedGraph(`${name}.json`));
    expect([notPassed(results.checks), results.cautions, results.failures]).toEqual([[], [], []]);
    expect(results.setups.flatMap(({ programs }) => programs).length).toBeGreaterThan(0);
    expect(results.files.map(({ path }) => path).sort()).toEqual(['bill-of-materials.csv', 'drawing.svg', 'set-up-sheets.pdf']);
  }, 60_000);
});

describe.each(['long-sign', 'arc-phrase'])('the shipped recipe %s', (name) => {
  const plan = planOf(shippedGraph(`${name}.json`));

  it('is designed and shared out in set-ups without a caution', async () => {
    const { results, evaluation } = await run(plan);
    expect([notPassed(results.checks), results.cautions, results.failures]).toEqual([[], [], []]);
    const tiling = evaluation.nodes.get('tiling');
    expect(tiling?.state === 'ready' && (tiling.outputs['tiling'] as { tiles: readonly unknown[] }).tiles.length).toBe(name === 'long-sign' ? 3 : 2);
  }, 60_000);
});

describe('shipped recipes', () => {
  const names = ['drawn-strokes', 'lettering-artwork', 'scanned-lettering', 'typed-phrase', 'house-numbers', 'long-sign', 'drawn-board', 'arc-phrase'];

  it.each(names)('%s is a whole graph whose every step has a note for a lesson, and whose inputs have help', (name) => {
    const document = shippedGraph(`${name}.json`);
    expect(checkGraph(document, catalogue)).toEqual([]);
    expect(document.notes.length).toBeGreaterThan(30);
    expect(document.nodes.filter(({ note = '' }) => note.length < 10).map(({ id }) => id)).toEqual([]);
    for (const { label, help } of document.inputs) expect([label, help.length > 10]).toEqual([expect.stringMatching(/./) as string, true]);
  });

  it('a template for the wall and a board of its own come with their recipes', async () => {
    expect(shippedGraph('long-sign.json').nodes.map(({ type }) => type)).toContain('wall-template');
    const drawn = planOf(withInputs(shippedGraph('drawn-board.json'), { board: { name: 'small.svg', text: '<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="100mm" viewBox="0 0 300 100"><path d="M0 0H300V100H0Z"/></svg>' } }));
    const { results } = await run(drawn);
    expect(results.checks.find(({ check }) => check === 'board-margin')).toMatchObject({ status: 'fail' });
  }, 60_000);
});
