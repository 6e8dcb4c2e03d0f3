import { describe, expect, it } from 'vitest';
import { GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument } from '../../../src/runtime/index.ts';
import { jobAt, jobSetUps, layersAround } from '../../../src/editor/worker/set-ups.ts';
import type { Desk } from '../../../src/editor/worker/desk.ts';
import { EXAMPLE_CHANNEL, EXAMPLE_MACHINE, EXAMPLE_STOCK } from '../../../src/values/examples.ts';
import type { Carried } from '../../../src/values/index.ts';
import { tilingAt } from '../../machining/set-ups-fixture.ts';

const tiling = tilingAt({ width: 300, height: 100 }, [100], []);
const holding = (x: number) => ({ holdDowns: [{ kind: 'screw', at: { x, y: 5 }, keepOut: 20, height: 6, setUps: [0] }], areas: [], supports: [] });
const OUTPUTS: Readonly<Record<string, readonly Carried[]>> = {
  sheet: [{ port: 'stock', type: 'stock', value: EXAMPLE_STOCK }], machine: [{ port: 'machine', type: 'machine', value: EXAMPLE_MACHINE }],
  groove: [{ port: 'channel', type: 'channel', value: EXAMPLE_CHANNEL }], plan: [{ port: 'tiling', type: 'tiling', value: tiling }],
  hold: [{ port: 'holding', type: 'holding', value: holding(5) }], again: [{ port: 'holding', type: 'holding', value: holding(50) }],
  passes: [{ port: 'passes', type: 'passes', value: [] }],
};
const WIRES = ['sheet.stock plan.stock', 'machine.machine plan.machine', 'groove.channel plan.channel', 'plan.tiling hold.tiling', 'hold.holding again.holding', 'plan.tiling passes.tiling', 'passes.passes check.passes'];
const document: GraphDocument = {
  format: GRAPH_FORMAT, version: GRAPH_VERSION, title: '', notes: '', inputs: [], groups: [],
  nodes: ['sheet', 'machine', 'groove', 'plan', 'hold', 'again', 'passes', 'check'].map((id) => ({ id, type: id, position: [0, 0], params: {} })),
  wires: WIRES.map((wire) => { const [from, to] = wire.split(' '); return { from: from!, to: to! }; }),
};
const desk = {
  document: () => document, outputs: (id: string) => OUTPUTS[id] ?? [],
  inputs: (id: string) => document.wires.flatMap(({ from, to }) => (to.startsWith(`${id}.`) ? OUTPUTS[from.split('.')[0]!] ?? [] : [])),
} as unknown as Desk;

describe('the set-ups of a step', () => {
  it('are those planned above it, on the machine above it, where its values belong to set-ups at all', () => {
    const setUps = jobSetUps(jobAt(desk, 'check'))!;
    expect(setUps.list.map(({ name, shift }) => [name, shift])).toEqual([['set-up 1', [0, 0]], ['set-up 2', [94, 0]]]);
    expect(setUps.reach).toEqual({ minX: 0, minY: 0, maxX: 206, maxY: 100 });
    const { bedMargin } = EXAMPLE_MACHINE;
    expect(setUps.bed).toEqual({ minX: -bedMargin, minY: -bedMargin, maxX: 206 + bedMargin, maxY: 100 + bedMargin });
    expect(jobSetUps(jobAt(desk, 'groove'))).toBeUndefined();
    expect(jobSetUps({ tiling: { port: 'tiling', type: 'tiling', value: tilingAt({ width: 300, height: 100 }, [], []) } })).toBeUndefined();
  });

  it('have around them what they were planned for, and the last of what was made for them, less what the step shows itself', () => {
    const around = (id: string) => layersAround(desk, id).map(({ name, items }) => `${name} ${items[0]!.title?.split(',')[0] ?? ''}`);
    expect(around('check')).toEqual([expect.stringContaining('sheet'), expect.stringContaining('groove'), 'hold-downs screw 1', expect.stringContaining('centre lines')]);
    expect(layersAround(desk, 'check').find(({ name }) => name === 'hold-downs')!.items[0]!.d).toMatch(/^M60 5/);
    expect(around('hold').some((name) => name.startsWith('hold-downs'))).toBe(false);
    expect(layersAround(desk, 'groove')).toEqual([]);
  });
});
