import { beforeAll, describe, expect, it } from 'vitest';
import { runGraph } from '../../../src/cli/run-graph.ts';
import { type GraphDocument, createEvaluator } from '../../../src/runtime/index.ts';
import { fileLength, type ResultFile, type TextFile } from '../../../src/values/index.ts';
import { SMALL_DRAWING } from '../../support/shipped-graph.ts';
import { catalogue, shippedGraph, withInputs, withParam } from '../../support/shipped-run.ts';
import { TINY_GRAPH } from '../../support/tiny-graph.ts';
import { catalogue as tiny } from '../../support/tiny-nodes.ts';
import { converse } from './conversation.ts';

const word = withInputs(shippedGraph('drawn-strokes.json'), { artwork: SMALL_DRAWING });
/** Timings are measured, so no two runs agree on them. */
const withoutTimings = (files: readonly ResultFile[]) => files.map((file) =>
  (file.path === 'report.json' && 'text' in file ? { path: file.path, text: JSON.stringify({ ...JSON.parse(file.text) as object, timings: {} }, null, 2) } : file));
const commandLine = createEvaluator(catalogue);
/** What the command line would write. */
const written = async (document: GraphDocument, draft: boolean) => {
  const run = await runGraph(document, catalogue, commandLine, { graph: 'word.json', draft });
  return run.ok ? withoutTimings(run.value.files) : run.faults;
};

describe('the shipped recipe on a small drawing', () => {
  const talk = converse(catalogue);
  const ids = word.nodes.map(({ id }) => id);
  let first: Awaited<ReturnType<typeof talk.evaluate>>;
  beforeAll(async () => {
    first = await talk.evaluate(word, { seen: ['groove', 'board'], shown: 'proof', graph: 'word.json' });
    await talk.quiet();
  }, 120_000);

  it('is computed whole, what is in view told first, then the rest', () => {
    expect([...first.executed].sort()).toEqual([...ids].sort());
    const told = talk.of('report').map(({ node }) => node);
    expect([...told].sort()).toEqual([...ids].sort());
    expect(told.slice(0, 3).sort()).toEqual(['board', 'groove', 'proof']);
  });

  it('has thumbnails that stay small, for every node', () => {
    for (const [node, { thumbnail, says }] of Object.entries(talk.reports())) {
      expect(thumbnail.layers.length + thumbnail.lines.length, node).toBeGreaterThan(0);
      expect(JSON.stringify(thumbnail).length, node).toBeLessThan(12_000);
      expect(says, node).toMatch(/\w/);
    }
  });

  it('hands over its checks with the node they come from, and the worst to the node itself', () => {
    expect(first.outcome).toMatchObject({ status: 'pass', keptBack: [] });
    expect(first.outcome!.checks.length).toBeGreaterThan(10);
    // That values lie where the recipe was proved is told at the first of their nodes, which checks nothing itself.
    for (const { node, check } of first.outcome!.checks) if (check !== 'proved-range') expect(talk.reports()[node]!.worst).toBe('pass');
    expect(talk.reports()['groove']!.worst).toBeUndefined();
  });

  it('gives the files of the command line, byte for byte, as many and as long as it said', async () => {
    const files = await talk.ask('files', { graph: 'word.json', draft: false });
    expect(withoutTimings(files)).toEqual(await written(word, false));
    expect(first.outcome!.files).toEqual(files.map((file) => ({ path: file.path, characters: fileLength(file) })));
    const { timings } = JSON.parse((files.find(({ path }) => path === 'report.json') as TextFile).text) as { timings: Record<string, number> };
    expect(Object.keys(timings).sort()).toEqual([...ids].sort());
    expect(timings['proof']).toBeGreaterThan(0);
  });

  it('shows a check the programs and the groove they cut as its own picture, and can play them', async () => {
    const picture = await talk.ask('picture', { node: 'proof' });
    expect(picture.inputs).toEqual([]);
    expect(picture.outputs.layers.map(({ kind }) => kind)).toEqual(['sheet', 'region', 'groove', 'holes', 'tabs', 'rapids', 'passes', 'strokes']);
    expect(picture).toMatchObject({ playable: true, spots: {} });
  });

  it('shows what came into a node faint, but for layers that leave it as well', async () => {
    const [holes, place] = [await talk.ask('picture', { node: 'cable-holes' }), await talk.ask('picture', { node: 'place' })];
    expect(holes.inputs.map(({ name }) => name)).toEqual(['groove', 'centre lines']);
    expect(holes.spots['holes']).toHaveLength(holes.outputs.layers[0]!.items.length);
    expect(place.inputs.map(({ name }) => name)).toEqual(['sheet']);
    expect([holes, place].map(({ playable }) => playable)).toEqual([false, false]);
  });

  it('measures the groove where it is pointed at', async () => {
    const [channel] = (await talk.ask('picture', { node: 'groove' })).outputs.layers.filter(({ name }) => name === 'centre lines');
    const [x, y] = channel!.items[0]!.start!.at;
    const found = await talk.ask('probe', { node: 'groove', at: [x, y], within: 2 });
    expect(found.map(({ says }) => says)).toContain('depth of the groove');
    expect(found.find(({ says }) => says === 'depth of the groove')).toMatchObject({ value: 6, unit: 'mm' });
  });

  it('computes, while a slider is dragged, what leads to what is seen and nothing else', async () => {
    const done = await talk.evaluate(withParam(word, 'groove', 'width', 11), { seen: ['board'], shown: 'groove', whole: false });
    expect(done.executed).toEqual(['groove', 'board']);
    expect(done.outcome).toBeUndefined();
    const again = await talk.evaluate(withParam(word, 'groove', 'width', 11), { seen: ['board'], shown: 'groove', whole: false });
    expect(again.executed).toEqual([]);
  });

  it('keeps programs back when a check fails, and hands them out as drafts that say so', async () => {
    const failing = withParam(word, 'wall-check', 'leastFloor', 50);
    const done = await talk.evaluate(failing, { graph: 'word.json' });
    expect(done.executed).not.toContain('proof');
    expect(done.outcome).toMatchObject({ status: 'fail', keptBack: ['programs/set-up-1-cutter-1.ngc'] });
    expect(done.outcome!.files.map(({ path }) => path)).not.toContain('programs/set-up-1-cutter-1.ngc');
    for (const draft of [false, true]) {
      const files = withoutTimings(await talk.ask('files', { graph: 'word.json', draft }));
      expect(files).toEqual(await written(failing, draft));
      expect(files.some(({ path }) => path.endsWith('.ngc'))).toBe(draft);
    }
  });
});

describe('files', () => {
  it('wait for the present document: an old program is never handed out', async () => {
    const talk = converse(tiny);
    const at = (width: number) => ({ ...TINY_GRAPH, nodes: TINY_GRAPH.nodes.map((node) => (node.id === 'drawing' ? { ...node, params: { width } } : node)) }) as unknown as GraphDocument;
    await talk.evaluate(at(10));
    const gesture = talk.evaluate(at(20), { whole: false, seen: ['drawing'] });
    const files = talk.ask('files', { graph: 'tiny.json', draft: false });
    await gesture;
    await talk.evaluate(at(30));
    expect(((await files).find(({ path }) => path.endsWith('.ngc')) as TextFile).text).toBe('(width 30)\nM2\n');
  });

  it('of an evaluation that was stopped, of a graph without results, and of one that failed are refused with the reason', async () => {
    const talk = converse(tiny);
    const document = TINY_GRAPH as unknown as GraphDocument;
    const done = talk.evaluate(document, { revision: 1 });
    talk.session.receive({ kind: 'cancel', revision: 2 });
    expect(await done).toMatchObject({ cancelled: true });
    await expect(talk.ask('files', { graph: 'tiny.json', draft: false })).rejects.toMatchObject({ found: 'one that was stopped before' });
    await talk.evaluate({ ...document, nodes: [], wires: [], inputs: [] }, { revision: 3 });
    await expect(talk.ask('files', { graph: 'tiny.json', draft: false })).rejects.toMatchObject({ place: 'tiny.json', found: 'none' });
    const failed = { ...document, nodes: document.nodes.map((node) => (node.id === 'drawing' ? { ...node, params: { manner: 'problem' } } : node)) };
    expect((await talk.evaluate(failed, { revision: 4 })).outcome).toMatchObject({ status: 'fail', files: [] });
    await expect(talk.ask('files', { graph: 'tiny.json', draft: false })).rejects.toMatchObject({ place: 'The drawing (node drawing), width' });
  });
});
