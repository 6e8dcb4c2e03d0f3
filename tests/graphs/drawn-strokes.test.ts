import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { movesOf, readProgram } from '../../src/machining/index.ts';
import type { FileValue } from '../../src/runtime/index.ts';
import type { Results } from '../../src/values/index.ts';
import { root } from '../support/command-line.ts';
import { plainRead } from '../support/plain-reader.ts';
import { executed, makeRunner, penDrawing, shippedGraph, withInputs, withParam } from '../support/shipped-run.ts';

const graph = shippedGraph('drawn-strokes.json');
/** A ring, a cross and a curve on a sheet just large enough: every kind of place, quick to prove. */
const small = withParam(withInputs(graph, {
  artwork: penDrawing('<circle cx="60" cy="50" r="28"/><path d="M110 20L170 80M110 80L170 20"/><path d="M190 70C190 20 250 20 250 60S220 90 210 75"/>'),
  sheetWidth: 340, sheetHeight: 200,
}), 'proof', 'cell', 0.8);

const failed = ({ checks }: Results) => checks.filter(({ status }) => status === 'fail').map(({ says }) => says);
const valueOf = ({ checks }: Results, name: string) => checks.find(({ check }) => check === name)!.value;

describe('the shipped drawing', () => {
  let results: Results;
  beforeAll(async () => { results = (await makeRunner()(graph)).results; }, 120_000);

  it('lies in the graph as it lies beside it', () => {
    const artwork = graph.nodes.find(({ id }) => id === 'artwork')!.params.artwork as FileValue;
    expect(artwork).toEqual({ name: 'market-hall.svg', text: readFileSync(join(root, 'graphs/market-hall.svg'), 'utf8') });
  });

  it('passes every check, without a caution', () => {
    expect(results.checks.filter(({ status }) => status !== 'pass')).toEqual([]);
    expect(results.failures).toEqual([]);
    expect(results.cautions).toEqual([]);
  });

  it('is cut as drawn to a hundredth of a millimetre, and the groove keeps its width to a hundredth', () => {
    expect(valueOf(results, 'cut-matches-drawing')).toBeLessThan(0.01);
    expect(valueOf(results, 'groove-width-least')).toBeGreaterThan(9.99);
    expect(valueOf(results, 'groove-width-largest')).toBeLessThan(10.01);
  });

  it('gives programs that two readers read as planned', () => {
    for (const { text, moves } of results.setups.flatMap(({ programs }) => programs)) {
      const strict = readProgram(text);
      if (!strict.ok) throw new Error(JSON.stringify(strict.problems));
      const planned = moves.map(({ to }) => [to.x, to.y, to.z]);
      const near = planned.map((place) => place.map((value) => expect.closeTo(value, 4) as number));
      expect(movesOf(strict.moves, 0.001).map(({ to }) => [to.x, to.y, to.z])).toEqual(near);
      expect(plainRead(text).map(({ to }) => to)).toEqual(near);
    }
  });

  it('lifts first, turns the spindle before it cuts, and stops it after lifting', () => {
    const lines = results.setups[0]!.programs[0]!.text.split('\n').filter((line) => line !== '' && !line.startsWith('('));
    expect(lines.slice(0, 8)).toEqual(['G21', 'G17', 'G40', 'G49', 'G80', 'G90', 'G94', 'G54']);
    expect(lines.slice(8, 11)).toEqual(['G0 Z10.0', 'S16000 M3', 'G4 P5.0']);
    expect(lines.slice(-3)).toEqual(['G0 Z10.0', 'M5', 'M2']);
  });
});

describe('another drawing on a small sheet', () => {
  it.each([
    ['arcs become lines', { 'machine.arcs': 'lines' }],
    ['inches', { 'machine.units': 'inch' }],
    ['no helical arcs, three decimals', { 'machine.helicalArcs': false, 'machine.decimals': 3 }],
    ['line numbers and percent lines', { 'machine.lineNumbers': true, 'machine.percentLines': true }],
    ['no finishing pass', { 'groove-passes.finishingAllowance': 0, 'outline-passes.finishingAllowance': 0 }],
    ['conventional cutting', { 'groove-passes.direction': 'conventional', 'hole-passes.direction': 'conventional', 'outline-passes.direction': 'conventional' }],
    ['a groove as wide as its cutter', { 'groove.width': 6, 'cutter.diameter': 6 }],
    ['a groove hardly wider than its cutter', { 'groove.width': 6.3, 'cutter.diameter': 6 }],
    ['a wide groove', { 'groove.width': 16 }],
    ['turned by 33 degrees', { 'place.turn': 33, 'sheet.height': 320 }],
    ['a rectangular board', { 'board.shape': 'rectangle' }],
    ['no tabs', { 'outline-passes.tabHeight': 0 }],
    ['holes along the outline', { 'mounting-holes.pattern': 'along the outline', 'mounting-holes.pitch': 120 }],
    ['larger lettering', { 'fit.finishedWidth': 300, 'sheet.width': 460, 'sheet.height': 260 }],
  ] as const)('is proved with %s', async (_, params) => {
    const changed = Object.entries(params).reduce((document, [place, value]) => withParam(document, ...(place.split('.') as [string, string]), value), small);
    const { results } = await makeRunner()(changed);
    expect(results.failures).toEqual([]);
    expect(failed(results)).toEqual([]);
    expect(valueOf(results, 'cut-matches-drawing')).toBeLessThan(0.015);
  });
});

describe('an edit computes only what it touches', () => {
  const chain = ['groove-passes', 'hole-passes', 'outline-passes', 'order', 'programs', 'proof', 'seam-proof', 'travel-check', 'holding-check', 'sheets'];
  async function executedAfter(edit: (document: typeof graph) => typeof graph): Promise<string[]> {
    const run = makeRunner();
    await run(small);
    return executed((await run(edit(small))).evaluation).sort();
  }

  it('after the cutter\'s chip load: passes and programs, no geometry', async () => {
    expect(await executedAfter((document) => withParam(document, 'cutter', 'chipLoad', 0.12))).toEqual([...chain, 'bill', 'cutter', 'cutter-check', 'tiling', 'pins', 'hold'].sort());
  });

  it('after the groove\'s width: nothing before the groove', async () => {
    const all = small.nodes.map(({ id }) => id);
    // One set-up has no pins to correct, and the sheet is held as it was.
    const before = ['artwork', 'fit', 'place', 'sheet', 'cutter', 'machine', 'cable-holes', 'correct', 'overhang-check'];
    const after = await executedAfter((document) => withInputs(document, { channelWidth: 11 }));
    expect(after).toEqual(all.filter((id) => !before.includes(id) || id === 'cable-holes').sort());
  });

  it('after the drawing: all but sheet, cutter and machine', async () => {
    const all = small.nodes.map(({ id }) => id);
    const after = await executedAfter((document) => withInputs(document, { artwork: penDrawing('<path d="M60 50C100 10 200 90 240 50"/>') }));
    expect(after).toEqual(all.filter((id) => !['sheet', 'cutter', 'machine', 'correct'].includes(id)).sort());
  });

  it('after a title, a place on the canvas, or the same value again: nothing', async () => {
    const moved = (document: typeof graph) => ({ ...document, title: 'Other', nodes: document.nodes.map((node) => ({ ...node, position: [0, 0] as const, title: 'x' })) });
    expect(await executedAfter((document) => withInputs(moved(document), { channelWidth: 10 }))).toEqual([]);
  });

  it('after a comment in the drawing: only its reading, for the strokes are equal', async () => {
    const artwork = small.nodes.find(({ id }) => id === 'artwork')!.params.artwork as { name: string; text: string };
    const commented = { name: artwork.name, text: artwork.text.replace('<circle', '<!-- a ring --><circle') };
    expect(await executedAfter((document) => withInputs(document, { artwork: commented }))).toEqual(['artwork']);
  });
});
