import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/artwork/index.ts';
import type { Stroke } from '../../src/artwork/index.ts';
import type { Evaluation, FileValue } from '../../src/runtime/index.ts';
import type { Results } from '../../src/values/index.ts';
import { compare } from '../lettering/truth/compare.ts';
import { root } from '../support/command-line.ts';
import { makeRunner, shippedGraph } from '../support/shipped-run.ts';

const graph = shippedGraph('lettering-artwork.json');
const text = (name: string) => readFileSync(join(root, 'graphs', name), 'utf8');

/** The pen drawing that the lettering was made from by a nib of 9 to 17 mm: its lines are the true centre lines. */
function drawn(): readonly Stroke[] {
  const read = readDrawing(text('market-hall.svg'));
  if (!read.ok) throw new Error('the pen drawing could not be read');
  return read.drawing.strokes;
}

describe('the shipped lettering', () => {
  let results: Results;
  let evaluation: Evaluation;
  beforeAll(async () => { ({ results, evaluation } = await makeRunner()(graph)); }, 120_000);

  it('lies in the graph as it lies beside it', () => {
    const artwork = graph.nodes.find(({ id }) => id === 'artwork')!.params.artwork as FileValue;
    expect(artwork).toEqual({ name: 'lantern-aisle.svg', text: text('lantern-aisle.svg') });
  });

  it('passes every check, without a caution', () => {
    expect(results.checks.filter(({ status }) => status !== 'pass').map(({ says }) => says)).toEqual([]);
    expect(results.failures).toEqual([]);
    expect(results.setups[0]!.programs).toHaveLength(1);
  });

  it('is traced to the very strokes it was drawn with', () => {
    const trace = evaluation.nodes.get('trace');
    if (trace?.state !== 'ready') throw new Error('the lettering could not be traced');
    const strokes = trace.outputs['strokes'] as readonly Stroke[];
    const truth = { name: 'lantern aisle', width: 13, outlines: [], strokes: drawn().map(({ path }) => ({ path, ends: [] })), counts: [10] };
    const { count, kinks, inner } = compare(truth, { strokes });
    expect({ count, kinks }).toEqual({ count: 10, kinks: 0 });
    // Percent of the width, as for words of several strokes in a study of such tracings: mean 0.4, 95th percentile 1.2.
    expect(inner.mean).toBeLessThan(0.4);
    expect(inner.p95).toBeLessThan(1.2);
  });
});
