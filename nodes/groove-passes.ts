import '../src/values/types.ts';
import { groovePasses } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'groove-passes',
  title: 'Groove passes',
  doc: 'Plans how the cutter clears the groove: rings from the inside out, layer by layer, entered on a ramp, then one finishing pass along the walls at full depth. A groove hardly wider than the cutter is cut along its centre lines.',
  inputs: {
    channel: { type: 'channel', doc: 'The groove to cut.' },
    cutter: { type: 'cutter', doc: 'The cutter, no wider than the groove.' },
    machine: { type: 'machine', doc: 'The machine, for its heights and its greatest feed.' },
    stock: { type: 'stock', doc: 'The sheet, which must be thicker than the groove is deep.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups, where the sheet is cut in several: a groove that no set-up reaches whole is cut from both sides of the seam, each a lap beyond it.' },
  },
  outputs: { passes: { type: 'passes', doc: 'The passes in the order they must run.' } },
  params: {
    stepover: { kind: 'number', unit: 'ratio', default: 0.4, min: 0.05, max: 0.45, step: 0.05, label: 'Stepover', doc: 'Sideways step between rings, as a share of the cutter\'s diameter.' },
    finishingAllowance: { kind: 'number', unit: 'mm', default: 0.2, min: 0, max: 2, step: 0.05, label: 'Finishing allowance', doc: 'Material left on the walls for the finishing pass; 0 leaves that pass out.' },
    direction: { kind: 'choice', options: ['climb', 'conventional'], default: 'climb', label: 'Direction', doc: 'Climb cutting gives the better wall in acrylic; conventional is for machines with play.' },
    fitTolerance: { kind: 'number', unit: 'mm', default: 0.004, min: 0.001, max: 0.1, step: 0.001, label: 'Fit tolerance', doc: 'Greatest distance between the planned path and the lines and arcs that are cut.' },
  },
  examples: [{ title: 'a straight groove', inputs: { channel: EXAMPLE_CHANNEL, cutter: EXAMPLE_CUTTER, machine: EXAMPLE_MACHINE, stock: EXAMPLE_STOCK, tiling: undefined } }],
  compute({ channel, cutter, machine, stock, tiling }, params, { checkpoint }) {
    const problem = tooDeep(channel.depth, stock.thickness - stock.thicknessTolerance);
    if (problem) return { ok: false, problems: [problem] };
    const plan = groovePasses({ ...channel, ...params, cutter, ...(tiling && { tiling }), retract: machine.heights.retract, greatestFeed: machine.greatestFeed, progress: checkpoint });
    return plan.ok ? { ok: true, outputs: { passes: plan.passes }, cautions: plan.cautions } : plan;
  },
});

function tooDeep(depth: number, thinnest: number): Problem | undefined {
  if (depth < thinnest) return undefined;
  return {
    place: 'channel', expected: `a groove less deep than the thinnest sheet, ${thinnest.toFixed(2)} mm`, found: `${depth} mm deep`,
    advice: 'Cut a shallower groove or take a thicker sheet.',
  };
}
