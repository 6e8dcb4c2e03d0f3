import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { decodePicture, readDrawing, type Stroke } from '../../src/artwork/index.ts';
import { applyToPath, rotation } from '../../src/geometry/index.ts';
import type { Evaluation, FileValue } from '../../src/runtime/index.ts';
import type { Results } from '../../src/values/index.ts';
import { demoScan } from '../artwork/picture/demo.ts';
import { compare } from '../lettering/truth/compare.ts';
import { root } from '../support/command-line.ts';
import { makeRunner, shippedGraph } from '../support/shipped-run.ts';

const graph = shippedGraph('scanned-lettering.json');
const bytes = readFileSync(join(root, 'graphs/lantern-aisle-scan.png'));

describe('the shipped scan', () => {
  let results: Results;
  let evaluation: Evaluation;
  beforeAll(async () => { ({ results, evaluation } = await makeRunner()(graph)); }, 120_000);

  it('lies in the graph as it lies beside it', () => {
    const picture = graph.nodes.find(({ id }) => id === 'artwork')!.params.picture as FileValue;
    expect(picture).toEqual({ name: 'lantern-aisle-scan.png', base64: bytes.toString('base64') });
  });

  it('is what a scan of the shipped lettering with those faults gives', () => {
    const read = decodePicture(bytes);
    const { columns, rows, greys } = demoScan();
    if (!read.ok) throw new Error(read.problems[0].found);
    expect([read.picture.columns, read.picture.rows]).toEqual([columns, rows]);
    const linear = (code: number) => (code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4);
    expect(greys.findIndex((grey, i) => Math.abs(linear(grey / 15) - read.picture.light[i]!) > 1e-3)).toBe(-1);
  });

  it('passes every check, without a caution', () => {
    expect(results.checks.filter(({ status }) => status !== 'pass').map(({ says }) => says)).toEqual([]);
    expect(results.cautions).toEqual([]);
    expect(results.failures).toEqual([]);
    expect(results.setups[0]!.programs).toHaveLength(1);
    expect(results.quantities['specksDropped']!.value).toBeGreaterThan(5);
  });

  it('is traced to the strokes it was drawn with, which lie askew by 0.3 degrees', () => {
    const smooth = evaluation.nodes.get('smooth');
    if (smooth?.state !== 'ready') throw new Error('the scan could not be traced');
    const drawing = readDrawing(readFileSync(join(root, 'graphs/market-hall.svg'), 'utf8'));
    if (!drawing.ok) throw new Error('the pen drawing could not be read');
    const strokes = drawing.drawing.strokes.map(({ path }) => ({ path: applyToPath(rotation(0.3), path), ends: [] }));
    const { count, kinks, inner } = compare({ name: 'scan', width: 13, outlines: [], strokes, counts: [10] }, { strokes: smooth.outputs['strokes'] as readonly Stroke[] });
    expect({ count, kinks }).toEqual({ count: 10, kinks: 0 });
    // Percent of the width; two percent is what a customer's scan is to keep.
    expect(inner.mean).toBeLessThan(0.6);
    expect(inner.p95).toBeLessThan(2);
  });
});
