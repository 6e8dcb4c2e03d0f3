import { it } from 'vitest';
import type { GraphDocument } from '../../src/runtime/index.ts';
import type { Results } from '../../src/values/index.ts';
import { executed, makeRunner, penDrawing, shippedGraph, withInputs, withParam } from '../support/shipped-run.ts';

/** Prints what the shipped demo comes to: width, proof, blocks, times, and what edits compute. Asserts nothing: tests/graphs does. */
const graph = shippedGraph('drawn-strokes.json');
const say = (line: string) => console.log(line);
const quantity = (results: Results, name: string) => { const { value, unit } = results.quantities[name]!; return `${value.toFixed(4)} ${unit}`; };
const check = (results: Results, name: string) => results.checks.find((one) => one.check === name)!.says;
const programs = (results: Results) => results.setups.flatMap((setup) => setup.programs);
const blocks = (results: Results) => programs(results).reduce((sum, program) => sum + program.blocks, 0);

it('figures of the demo', async () => {
  const run = makeRunner();
  const started = performance.now();
  const { evaluation, results } = await run(graph);
  const took = performance.now() - started;
  say(check(results, 'groove-width-least'));
  say(check(results, 'groove-width-largest'));
  say(check(results, 'cut-matches-drawing'));
  say(`Proved on ${results.quantities.proofSamples!.value} samples, ${quantity(results, 'proofCell')} apart`);
  const lines = (await makeRunner()(withParam(graph, 'machine', 'arcs', 'lines'))).results;
  say(`Blocks: ${blocks(results)} with arcs, ${blocks(lines)} with lines only (${(blocks(lines) / blocks(results)).toFixed(2)} times)`);
  for (const { file, minutes, cuttingMinutes } of programs(results))
    say(`${file}: ${minutes.toFixed(1)} min, of which ${(100 * (1 - cuttingMinutes / minutes)).toFixed(1)} % not cutting`);
  say(`Whole evaluation ${(took / 1000).toFixed(2)} s; by node, ms:`);
  const times = [...evaluation.nodes].map(([node, { milliseconds }]) => [node, milliseconds] as const).sort((a, b) => b[1] - a[1]);
  say(times.map(([node, ms]) => `${node} ${ms.toFixed(0)}`).join(', '));
  const edits: [string, (document: GraphDocument) => GraphDocument][] = [
    ['the cutter\'s chip load', (document) => withParam(document, 'cutter', 'chipLoad', 0.12)],
    ['the channel width', (document) => withInputs(document, { channelWidth: 11 })],
    ['the artwork', (document) => withInputs(document, { artwork: penDrawing('<path d="M60 50C100 10 200 90 240 50"/>') })],
  ];
  for (const [name, edit] of edits) {
    const own = makeRunner();
    await own(graph);
    const nodes = executed((await own(edit(graph))).evaluation);
    say(`After changing only ${name}: ${nodes.length} of ${graph.nodes.length} nodes: ${nodes.join(', ')}`);
  }
}, 600_000);
