import '../src/values/types.ts';
import { outlinePasses } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'outline-passes',
  title: 'Outline passes',
  doc: 'Plans how the board is parted from the sheet: round its outside through the sheet, layer by layer, leaving tabs so that it cannot come loose. Cut-outs inside the board go first.',
  inputs: {
    board: { type: 'region', doc: 'The finished board.' },
    cutter: { type: 'cutter', doc: 'The cutter.' },
    machine: { type: 'machine', doc: 'The machine, for its heights and its greatest feed.' },
    stock: { type: 'stock', doc: 'The sheet to go through.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups, where the sheet is cut in several: the outline is cut in pieces, with no tab near a seam.' },
  },
  outputs: {
    passes: { type: 'passes', doc: 'The passes in the order they must run.' },
    tabs: { type: 'tabs', doc: 'The tabs that are left.' },
  },
  params: {
    tabPitch: { kind: 'number', unit: 'mm', default: 250, min: 20, max: 5000, step: 10, label: 'Tab pitch', doc: 'Greatest distance between tabs along the outline; there are two at least.' },
    tabWidth: { kind: 'number', unit: 'mm', default: 8, min: 1, max: 100, step: 1, label: 'Tab width', doc: 'Length of each tab along the cut.' },
    tabHeight: { kind: 'number', unit: 'mm', default: 2.5, min: 0, max: 50, step: 0.1, label: 'Tab height', doc: 'Height of each tab above the sheet\'s underside; 0 leaves no tabs, and the board comes loose.' },
    leadIn: { kind: 'number', unit: 'mm', default: 4, min: 0, max: 100, step: 0.5, label: 'Lead-in', doc: 'Radius of the arc from the waste onto the outline, where there is room.' },
    finishingAllowance: { kind: 'number', unit: 'mm', default: 0.2, min: 0, max: 2, step: 0.05, label: 'Finishing allowance', doc: 'Material left on the edge for one finishing pass at full depth; 0 leaves that pass out.' },
    direction: { kind: 'choice', options: ['climb', 'conventional'], default: 'climb', label: 'Direction', doc: 'Direction of cutting round the board.' },
    fitTolerance: { kind: 'number', unit: 'mm', default: 0.004, min: 0.001, max: 0.1, step: 0.001, label: 'Fit tolerance', doc: 'Greatest distance between the planned path and the lines and arcs that are cut.' },
  },
  examples: [{ title: 'a small board', inputs: { board: EXAMPLE_BOARD, cutter: EXAMPLE_CUTTER, machine: EXAMPLE_MACHINE, stock: EXAMPLE_STOCK, tiling: undefined } }],
  compute({ board, cutter, machine, stock, tiling }, { tabPitch, tabWidth, tabHeight, ...params }) {
    const plan = outlinePasses({
      ...params, region: board, cutter, ...(tiling && { tiling }), stock, tolerance: OFFSET_TOLERANCE, retract: machine.heights.retract, greatestFeed: machine.greatestFeed,
      ...(tabHeight > 0 && { tabs: { pitch: tabPitch, width: tabWidth, height: tabHeight } }),
    });
    return plan.ok ? { ok: true, outputs: { passes: plan.passes, tabs: plan.tabs }, cautions: plan.cautions } : plan;
  },
});

/** Chord deviation that offsetting the board may add, mm: half of what fitting may. */
const OFFSET_TOLERANCE = 0.002;
