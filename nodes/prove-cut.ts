import '../src/values/types.ts';
import { type Proof, proveSetUps } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, amount, atMost } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'prove-cut',
  title: 'Prove the cut',
  doc: 'Reads the programs back, removes the material they remove on a fine grid, and compares what is left with the drawing. It knows nothing of how the passes were planned.',
  inputs: {
    setups: { type: 'set-ups', doc: 'The programs to prove.' },
    channel: { type: 'channel', doc: 'The groove as drawn.' },
    board: { type: 'region', doc: 'The board as drawn.' },
    holes: { type: 'holes', many: true, doc: 'The holes as drawn.' },
    tabs: { type: 'tabs', optional: true, doc: 'The tabs that should be left.' },
    stock: { type: 'stock', doc: 'The sheet.' },
  },
  outputs: {
    checks: { type: 'checks', doc: 'Wrong cuts and remainders, depth, rapids through material, tabs, cuts outside.' },
    quantities: { type: 'quantities', doc: 'The largest wrong cut and remainders in mm and mm2, and the grid that was used.' },
  },
  params: {
    cell: { kind: 'number', unit: 'mm', default: 0.15, min: 0.02, max: 2, step: 0.01, label: 'Cell', doc: 'Distance between samples; a fault smaller than this each way may lie between them.' },
    allowed: { kind: 'number', unit: 'mm', default: 0.03, min: 0.001, max: 1, step: 0.005, label: 'Allowed', doc: 'Greatest wrong cut or remainder, sideways.' },
    depthAllowed: { kind: 'number', unit: 'mm', default: 0.02, min: 0.001, max: 1, step: 0.005, label: 'Depth allowed', doc: 'Greatest error of the groove\'s depth.' },
    leadRoom: { kind: 'number', unit: 'mm', default: 10, min: 0, max: 500, step: 1, label: 'Lead room', doc: 'How far beyond the outline\'s cut the cutter may go into the waste, for lead-ins.' },
  },
  examples: [{
    title: 'programs that cut nothing leave everything to do',
    inputs: { setups: [], channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, holes: [], tabs: undefined, stock: EXAMPLE_STOCK },
    params: { cell: 0.5 },
  }],
  compute({ setups, channel, board, holes, tabs = [], stock }, { cell, allowed, depthAllowed, leadRoom }, { checkpoint }) {
    const settings = { cell, tolerance: allowed, depthTolerance: depthAllowed };
    const found = proveSetUps(setups, { channel, board, holes: holes.flat(), tabs, stock, leadRoom }, { ...settings, progress: checkpoint });
    if (found.ok) return { ok: true, outputs: { checks: checksOf(found.proof, settings), quantities: quantitiesOf(found.proof) } };
    const { place, ...problem } = found.problem;
    return { ok: false, problems: [{ ...problem, place: `${found.file} ${place}` }] };
  },
});

const ADVICE = 'Do not run these programs; look at this place in the drawing and at the cutter.';

function checksOf(proof: Proof, { tolerance, depthTolerance }: { tolerance: number; depthTolerance: number }): Check[] {
  const { wrongCut, remainder, unreachable, strayCut, spoilboardCut, offSheet, depthError, outline, rapidsThroughMaterial } = proof;
  const sideways = (check: string, subject: string, { mm, at }: Place) =>
    atMost({ check, subject, value: mm, limit: tolerance, unit: 'mm', ...(at && { at }), advice: ADVICE });
  return [
    matches(proof, tolerance),
    sideways('wrong-cut', 'Largest wrong cut', wrongCut),
    sideways('remainder', 'Largest remainder the cutter could reach', remainder),
    atMost({ check: 'unreachable', subject: 'Groove the cutter cannot reach', value: unreachable.mm2, limit: 0, unit: 'mm2', ...(unreachable.at && { at: unreachable.at }), advice: 'A thinner cutter would reach into this corner.' }, 'caution'),
    sideways('stray-cut', 'Largest cut outside board and waste room', strayCut),
    sideways('spoilboard-cut', 'Deepest cut into the spoilboard beyond the breakthrough', spoilboardCut),
    atMost({ check: 'cut-off-sheet', subject: 'Farthest cut beyond the sheet\'s edge', value: offSheet.mm, limit: 0, unit: 'mm', ...(offSheet.at && { at: offSheet.at }), advice: 'The cutter leaves the sheet here: mind clamps and stops, or take a larger sheet.' }, 'caution'),
    atMost({ check: 'groove-depth', subject: 'Largest error of the groove\'s depth', value: depthError.mm, limit: depthTolerance, unit: 'mm', ...(depthError.at && { at: depthError.at }), advice: ADVICE }),
    sideways('outline-uncut', 'Outline left uncut outside the tabs', outline.uncut),
    sideways('tab-height', 'Largest error of a tab\'s height', outline.tabError),
    atMost({ check: 'rapid-through-material', subject: 'Rapids through material', value: rapidsThroughMaterial.count, limit: 0, unit: 'count', ...(rapidsThroughMaterial.at && { at: rapidsThroughMaterial.at }), advice: ADVICE }),
  ];
}

type Place = Pick<Proof['wrongCut'], 'mm' | 'at'>;

/** The one check that says it all: the larger of wrong cut and reachable remainder, with all four figures. */
function matches({ wrongCut, remainder }: Proof, limit: number): Check {
  const worst = wrongCut.mm >= remainder.mm ? wrongCut : remainder;
  const check = atMost({ check: 'cut-matches-drawing', subject: 'Largest difference between cut and drawing', value: worst.mm, limit, unit: 'mm', ...(worst.at && { at: worst.at }), advice: ADVICE });
  const figures = `Wrong cut ${amount(wrongCut.mm, 'mm')}, ${amount(wrongCut.mm2, 'mm2')}; remainder ${amount(remainder.mm, 'mm')}, ${amount(remainder.mm2, 'mm2')}.`;
  return { ...check, says: `${check.says} ${figures}` };
}

function quantitiesOf({ wrongCut, remainder, unreachable, cell, samples }: Proof) {
  return {
    wrongCut: { value: wrongCut.mm, unit: 'mm' }, wrongCutArea: { value: wrongCut.mm2, unit: 'mm2' },
    remainder: { value: remainder.mm, unit: 'mm' }, remainderArea: { value: remainder.mm2, unit: 'mm2' },
    unreachableArea: { value: unreachable.mm2, unit: 'mm2' },
    proofCell: { value: cell, unit: 'mm' }, proofSamples: { value: samples, unit: 'count' },
  };
}
