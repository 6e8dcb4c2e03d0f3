import '../src/values/types.ts';
import { holePasses, throughDepth } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'hole-passes',
  title: 'Hole passes',
  doc: 'Plans how each hole is made through the sheet: drilled in pecks by a cutter of its own diameter, or bored down a helix by a thinner one. A cutter wider than a hole is refused.',
  inputs: {
    holes: { type: 'holes', many: true, doc: 'The holes to make.' },
    cutter: { type: 'cutter', doc: 'The cutter, no wider than the smallest hole.' },
    machine: { type: 'machine', doc: 'The machine, for its heights and its greatest feed.' },
    stock: { type: 'stock', doc: 'The sheet to go through.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups, where the sheet is cut in several: each hole belongs to one of them.' },
  },
  outputs: { passes: { type: 'passes', doc: 'One pass per hole.' } },
  params: {
    peckDepth: { kind: 'number', unit: 'mm', default: 3, min: 0.1, max: 50, step: 0.1, label: 'Peck depth', doc: 'Greatest depth drilled before the cutter is lifted out to clear chips.' },
    direction: { kind: 'choice', options: ['climb', 'conventional'], default: 'climb', label: 'Direction', doc: 'Direction of cutting round a bored hole.' },
  },
  examples: [{
    title: 'one hole of 8 mm with a 6 mm cutter',
    inputs: { holes: [[{ centre: { x: 50, y: 50 }, diameter: 8, purpose: 'mounting' }]], cutter: EXAMPLE_CUTTER, machine: EXAMPLE_MACHINE, stock: EXAMPLE_STOCK, tiling: undefined },
  }],
  compute({ holes, cutter, machine, stock, tiling }, params) {
    const plan = holePasses({
      ...params, holes: holes.flat(), cutter, ...(tiling && { tiling }), throughDepth: throughDepth(stock), retract: machine.heights.retract, greatestFeed: machine.greatestFeed,
    });
    return plan.ok ? { ok: true, outputs: { passes: plan.passes }, cautions: plan.cautions } : plan;
  },
});
