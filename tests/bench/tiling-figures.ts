import { expect, it } from 'vitest';
import tileStock from '../../nodes/tile-stock.ts';
import { regionBounds, type Region } from '../../src/geometry/index.ts';
import type { Channel, Cutter, Hole, Router, Stock } from '../../src/machining/index.ts';
import { createEvaluator } from '../../src/runtime/index.ts';
import { amount } from '../../src/values/check.ts';
import { outputsOf } from '../support/run-node.ts';
import { catalogue, shippedGraph, withInputs } from '../support/shipped-run.ts';

/** Prints where the seams of the shipped signs come to lie when they are 2 m wide: what they cross, against as many evenly spaced ones. */
const say = (line: string) => console.log(line);
const SIGNS = ['drawn-strokes.json', 'lettering-artwork.json', 'scanned-lettering.json'];
const WANTED = [['groove', 'channel'], ['board', 'board'], ['cable-holes', 'holes'], ['mounting-holes', 'holes'], ['sheet', 'stock'], ['cutter', 'cutter'], ['machine', 'machine']] as const;

async function signOf(name: string) {
  const document = withInputs(shippedGraph(name), { finishedWidth: 2000, sheetWidth: 2400, sheetHeight: 1500 });
  const evaluation = await createEvaluator(catalogue, { now: () => performance.now() }).evaluate(document, WANTED.map(([node, port]) => ({ node, port })));
  const [channel, board, cable, mounting, stock, cutter, machine] = WANTED.map(([node, port]) => {
    const found = evaluation.nodes.get(node);
    if (found?.state !== 'ready') throw new Error(`${name}: ${node} has no value`);
    return found.outputs[port];
  }) as [Channel, Region, readonly Hole[], readonly Hole[], Stock, Cutter, Router];
  return { channel, board, holes: [cable, mounting], stock, cutters: [cutter], machine };
}

it.each(SIGNS)('seams of %s', async (name) => {
  const sign = await signOf(name);
  const { minX, maxX, minY, maxY } = regionBounds(sign.board)!;
  say(`${name}: ${sign.channel.centreLines.length} grooves, board ${amount(maxX - minX, 'mm')} x ${amount(maxY - minY, 'mm')}`);
  for (const [travelX, travelY] of [[900, 2000], [700, 2000], [500, 2000], [900, 400]] as const) {
    const started = performance.now();
    const { tiling, checks, quantities: q } = outputsOf(tileStock, { ...sign, machine: { ...sign.machine, travelX, travelY } });
    const took = performance.now() - started;
    const near = checks.filter(({ check, status }) => check.endsWith('clear') && status !== 'pass').length;
    say(`  travel ${travelX} x ${travelY}: ${q.setUps!.value} set-ups, least ${q.setUpsLeast!.value}; ${q.seams!.value} seams cross ${q.seamCrossings!.value} grooves, evenly spaced ${q.seamCrossingsEvenly!.value}; cost ${q.seamCost!.value.toFixed(1)}; ${near} not clear; ${took.toFixed(0)} ms`);
    say(`    ${tiling.seams.map(({ axis, at, crossings }) => `${axis} ${at}: ${crossings.map(({ angle }) => angle.toFixed(0)).join(' ')}`).join('; ')}`);
    expect(q.setUps!.value).toBe(q.setUpsLeast!.value);
  }
}, 600_000);
