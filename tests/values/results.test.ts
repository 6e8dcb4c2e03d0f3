import { describe, expect, it } from 'vitest';
import { createEvaluator, type GraphDocument } from '../../src/runtime/index.ts';
import { collectResults, programFiles, reportOf, resultPorts } from '../../src/values/index.ts';
import { catalogue } from '../support/tiny-nodes.ts';

const graphOf = (params: Record<string, string | number>, ...results: string[]): GraphDocument => ({
  format: 'groovewright-graph', version: 1, title: 'Tiny', notes: '',
  nodes: [
    { id: 'drawing', type: 'tiny-drawing', position: [0, 0], params },
    ...results.map((id) => ({ id, type: 'tiny-results', position: [0, 0] as const, params: {} })),
  ],
  wires: results.flatMap((id) => [{ from: 'drawing.width', to: `${id}.width` }, { from: 'drawing.words', to: `${id}.words` }]),
  inputs: [], groups: [],
});

async function resultsOf(document: GraphDocument) {
  return collectResults(document, catalogue, await createEvaluator(catalogue).evaluate(document, resultPorts(document, catalogue)));
}

describe('the results of a run', () => {
  it('ask for every output that is a result, and for no other', () => {
    expect(resultPorts(graphOf({}, 'a'), catalogue)).toEqual(['checks', 'files', 'quantities', 'setups'].map((port) => ({ node: 'a', port })));
  });

  it('keep two quantities of one name apart', async () => {
    expect(Object.keys((await resultsOf(graphOf({}, 'a', 'b'))).quantities)).toEqual(['width', 'b.width']);
  });

  it('take the worst check for their status', async () => {
    expect((await resultsOf(graphOf({ width: 10 }, 'a'))).status).toBe('pass');
    expect((await resultsOf(graphOf({ width: 60 }, 'a'))).status).toBe('fail');
  });

  it('name the node that failed, not those that wait for it', async () => {
    const { failures, checks } = await resultsOf(graphOf({ manner: 'problem' }, 'a', 'b'));
    expect(failures.map(({ node }) => node)).toEqual(['drawing']);
    expect(checks).toEqual([]);
  });
});

describe('the programs of a run', () => {
  const withheld = graphOf({ width: 60 }, 'a');

  it('are handed over when no check failed, unmarked, draft or not', async () => {
    const results = await resultsOf(graphOf({ width: 10 }, 'a'));
    for (const draft of [false, true]) expect(programFiles(results, { draft }).map(({ text }) => text)).toEqual(['(width 10)\nM2\n']);
  });

  it('are withheld when a check failed, and marked in their first comment as a draft', async () => {
    const results = await resultsOf(withheld);
    expect(programFiles(results, { draft: false })).toEqual([]);
    expect(programFiles(results, { draft: true })[0]!.text).toMatch(/^\(DRAFT: .*\)\n\(width 60\)/);
  });

  it('are told in the report with whether they were written', async () => {
    const results = await resultsOf(withheld);
    const written = (draft: boolean) => reportOf(results, { graph: 'tiny.json', timings: { drawing: 1 }, draft }).setups[0]!.programs[0]!.written;
    expect([written(false), written(true)]).toEqual([false, true]);
  });
});

it('the report has what other programs rely on, and survives as JSON', async () => {
  const report = reportOf(await resultsOf(graphOf({ width: 10 }, 'a')), { graph: 'tiny.json', timings: { drawing: 1.5 }, draft: false });
  expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  expect(report).toMatchObject({
    graph: 'tiny.json', status: 'pass', timings: { drawing: 1.5 }, quantities: { width: { value: 10, unit: 'mm' } },
    checks: [{ check: 'width', status: 'pass', value: 10, limit: 50, unit: 'mm', at: [1, 2] }],
    setups: [{ shift: [0, 0], programs: [{ file: 'programs/set-up-1-cutter-1.ngc', cutterDiameter: 6, reach: { min: [0, 0, 0] }, minutes: 1.5, blocks: 2 }] }],
  });
});
