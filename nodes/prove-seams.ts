import '../src/values/types.ts';
import { boxOfPoints } from '../src/geometry/index.ts';
import {
  compareCuts, type Cutter, type CutRun, type Difference, groovePasses, holePasses, type PassKind, planSetUps, runsOf, type SeamDesign, type SetUp, type SimulatedStep, simulateSteps, throughDepth,
} from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_MACHINE, EXAMPLE_STOCK, EXAMPLE_TILING } from '../src/values/examples.ts';

export default defineNode({
  name: 'prove-seams',
  title: 'Prove the seams',
  doc: 'Cuts the board twice in a simulation, by all set-ups together and by a machine without limits, and tells the largest difference. Then it displaces each set-up as far as its pins allow and measures the step that leaves at each seam.',
  inputs: {
    setups: { type: 'set-ups', doc: 'The set-ups with their programs.' },
    tiling: { type: 'tiling', doc: 'The set-ups and seams as planned.' },
    registration: { type: 'registration', optional: true, doc: 'The pins: how far a set-up may be off.' },
    machine: { type: 'machine', doc: 'The machine; its travel does not count here.' },
    channel: { type: 'channel', doc: 'The groove as drawn.' },
    board: { type: 'region', doc: 'The board as drawn.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'The holes as drawn.' },
    stock: { type: 'stock', doc: 'The sheet.' },
  },
  outputs: {
    checks: { type: 'checks', doc: 'The largest difference to an unlimited machine, and the largest step at a seam.' },
    quantities: { type: 'quantities', doc: 'The same as numbers.' },
  },
  params: {
    cell: { kind: 'number', unit: 'mm', default: 0.5, min: 0.05, max: 2, step: 0.05, label: 'Cell', doc: 'Distance between samples of the whole board.' },
    seamCell: { kind: 'number', unit: 'mm', default: 0.1, min: 0.02, max: 2, step: 0.02, label: 'Cell at seams', doc: 'Distance between samples where steps are measured.' },
    allowed: { kind: 'number', unit: 'mm', default: 0.03, min: 0.001, max: 1, step: 0.005, label: 'Allowed', doc: 'Largest difference to the unlimited cut.' },
    greatestStep: { kind: 'number', unit: 'mm', default: 0.3, min: 0.01, max: 5, step: 0.05, label: 'Greatest step', doc: 'Largest step at a seam in the worst case.' },
  },
  examples: [{
    title: 'one set-up that has nothing to cut',
    inputs: {
      setups: [], registration: undefined, machine: EXAMPLE_MACHINE, channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, holes: [], stock: EXAMPLE_STOCK,
      tiling: EXAMPLE_TILING,
    },
    params: { cell: 1 },
  }],
  compute({ setups, tiling, registration, machine, channel, board, holes, stock }, { cell, seamCell, allowed, greatestStep }, { checkpoint }) {
    // Where nothing was divided there is nothing to compare.
    if (tiling.seams.length === 0) return { ok: true, outputs: { checks: [], quantities: {} } };
    const design: SeamDesign = { channel, board, holes: holes.flat(), stock };
    const area = boxOfPoints(board.loops.flat());
    const whole = unlimited(setups, design, machine);
    if (!whole.ok) return whole;
    if (!area) return { ok: false, problems: [{ place: 'board', expected: 'a board', found: 'none', advice: 'Wire the board to this node.' }] };
    checkpoint(0.2);
    const difference = compareCuts(setups.flatMap((setup) => runsOf(setup)), whole.runs, design, area, cell, DEPTH_TOLERANCE);
    checkpoint(0.6);
    const steps = registration ? simulateSteps(setups, tiling, registration, design, seamCell, DEPTH_TOLERANCE) : [];
    return { ok: true, outputs: { checks: [differenceCheck(difference, allowed), ...stepCheck(steps, greatestStep)], quantities: quantitiesOf(difference, steps) } };
  },
});

/** Heights of two cuts that differ by less are the same, mm. */
const DEPTH_TOLERANCE = 0.01;

type Runs = { readonly ok: true; readonly runs: readonly CutRun[] } | { readonly ok: false; readonly problems: readonly [Problem, ...Problem[]] };

/** Grooves and holes as one set-up with the same cutters would cut them; the board's own edge is proved elsewhere. */
function unlimited(setups: readonly SetUp[], { channel, holes, stock }: SeamDesign, machine: typeof EXAMPLE_MACHINE): Runs {
  const common = { retract: machine.heights.retract, greatestFeed: machine.greatestFeed, direction: 'climb' as const };
  const [grooveCutter, holeCutter] = [cutterFor(setups, 'groove'), cutterFor(setups, 'hole')];
  const groove = grooveCutter ? groovePasses({ ...channel, ...common, cutter: grooveCutter, stepover: 0.4, finishingAllowance: 0 }) : undefined;
  const bored = holeCutter ? holePasses({ ...common, holes, cutter: holeCutter, throughDepth: throughDepth(stock), peckDepth: holeCutter.depthOfCut }) : undefined;
  if (groove && !groove.ok) return groove;
  if (bored && !bored.ok) return bored;
  const passes = [...(groove?.passes ?? []), ...(bored?.passes ?? [])];
  return { ok: true, runs: planSetUps({ passes, machine, name: 'unlimited', tolerance: 0.002 }).flatMap((setup) => runsOf(setup)) };
}

const cutterFor = (setups: readonly SetUp[], kind: PassKind): Cutter | undefined => setups.flatMap(({ programs }) => programs).find(({ kinds }) => kinds.includes(kind))?.cutter;

const differenceCheck = ({ mm, at }: Difference, limit: number): Check => atMost({
  check: 'as-unlimited', subject: 'Largest difference between all set-ups together and a machine without limits', value: mm, limit, unit: 'mm', ...(at && { at }),
  advice: 'Do not run these programs; look at the seam near this place.',
});

function stepCheck(steps: readonly SimulatedStep[], limit: number): Check[] {
  if (steps.length === 0) return [];
  const { mm, at } = steps.reduce((a, b) => (b.mm > a.mm ? b : a));
  return [atMost({
    check: 'seam-step-simulated', subject: 'Largest step at a seam, simulated with the worst registration', value: mm, limit, unit: 'mm', ...(at && { at }),
    advice: 'Put the pins farther apart, fit them closer, or measure them and correct the next set-up.',
  })];
}

const quantitiesOf = ({ mm }: Difference, steps: readonly SimulatedStep[]) => ({
  differenceToUnlimited: { value: mm, unit: 'mm' }, ...(steps.length > 0 && { simulatedStep: { value: Math.max(...steps.map((step) => step.mm)), unit: 'mm' } }),
});
