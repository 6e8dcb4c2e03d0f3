import '../src/values/types.ts';
import { emptyRegion } from '../src/geometry/index.ts';
import { cutRoom, type Dowel, dowelProblems, pinProgram, planRegistration, type Registration, type RegistrationRequest } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK, EXAMPLE_TILING } from '../src/values/examples.ts';

export default defineNode({
  name: 'registration',
  title: 'Pins and dowel holes',
  doc: 'Plans how each set-up after the first finds its place: two pins in the spoilboard, and for every set-up two holes in the sheet that come to lie on them. They are drilled in the set-up before, exactly a shift away: one round, one a slot along the line of the pins. Holes go into waste where they can, else under the tube.',
  inputs: {
    tiling: { type: 'tiling', doc: 'The set-ups.' },
    stock: { type: 'stock', doc: 'The sheet.' },
    machine: { type: 'machine', doc: 'The machine, for the program that makes the holes for the pins.' },
    cutter: { type: 'cutter', doc: 'The cutter for the dowel holes and the holes for the pins, no wider than the pins.' },
    board: { type: 'region', optional: true, doc: 'The board: what lies outside it is waste.' },
    channel: { type: 'channel', optional: true, doc: 'The groove: a dowel hole in it is hidden by the tube.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'All other holes, to keep clear of.' },
  },
  outputs: {
    registration: { type: 'registration', doc: 'Pins, dowel holes, and the largest step at each seam.' },
    holes: { type: 'holes', doc: 'The dowel holes, to be made along with all others.' },
    checks: { type: 'checks', doc: 'The largest step at any seam, as it is to be expected and in the worst case.' },
    quantities: { type: 'quantities', doc: 'Pins, dowel holes, those that can be seen, pin distance, largest and likely step.' },
    files: { type: 'files', doc: 'The program that makes the holes for the pins in the spoilboard, when there are any.' },
  },
  params: {
    pinDiameter: { kind: 'number', unit: 'mm', default: 6, min: 1, max: 50, step: 0.5, label: 'Pin diameter', doc: 'Diameter of the pins; never less than the cutter\'s, which makes their holes.' },
    clearance: { kind: 'number', unit: 'mm', default: 0.02, min: 0, max: 1, step: 0.01, label: 'Clearance', doc: 'How much wider a dowel hole is than its pin. A close sliding fit of 6 mm has at most 0.024 mm.' },
    pitchError: { kind: 'number', unit: 'mm', default: 0.03, min: 0, max: 1, step: 0.01, label: 'Place error', doc: 'Greatest error of the place of a hole that the machine makes.' },
    greatestStep: { kind: 'number', unit: 'mm', default: 0.3, min: 0.01, max: 5, step: 0.05, label: 'Greatest step', doc: 'Largest step at a seam that is allowed; the tube hides steps on the groove\'s walls.' },
    wall: { kind: 'number', unit: 'mm', default: 3, min: 0, max: 100, step: 0.5, label: 'Wall', doc: 'Least material beside a dowel hole.' },
    kelvin: { kind: 'number', unit: 'K', default: 10, min: 0, max: 80, step: 1, label: 'Change of temperature', doc: 'By how much the workshop\'s temperature may change between set-ups: the slots allow for it.' },
    pinDepth: { kind: 'number', unit: 'mm', default: 12, min: 1, max: 100, step: 1, label: 'Depth of pin holes', doc: 'How deep the holes for the pins go into the spoilboard.' },
    seat: { kind: 'choice', options: ['planned', 'by hand'], default: 'planned', label: 'Pins', doc: 'Whether pins are planned or stand where they were put.' },
    pins: { kind: 'points', default: [], label: 'Places of pins', doc: 'Two places in program coordinates, the round hole\'s pin first. In the first set-up they are places on the sheet.' },
    name: { kind: 'text', default: 'sign', maxLength: 60, label: 'Name', doc: 'What the work is called; the first comment of the pins\' program.' },
  },
  handles: [{ kind: 'places', param: 'pins', from: 'registration', on: 'machine', sets: { seat: 'by hand' }, doc: 'Drag a pin: it stands there in every set-up, and the dowel holes follow.' }],
  examples: [{
    title: 'one set-up needs no pins',
    inputs: {
      tiling: EXAMPLE_TILING,
      stock: EXAMPLE_STOCK, machine: EXAMPLE_MACHINE, cutter: EXAMPLE_CUTTER, board: EXAMPLE_BOARD, channel: undefined, holes: [],
    },
  }],
  compute({ tiling, stock, machine, cutter, board = emptyRegion, channel, holes }, { pins, seat, pinDepth, pinDiameter, name, greatestStep, ...params }) {
    const request: RegistrationRequest = {
      ...params, pinDiameter: Math.max(pinDiameter, cutter.diameter), tiling, stock, board, channel: channel?.region ?? emptyRegion, centreLines: channel?.centreLines ?? [], holes: holes.flat(), cutRoom: cutRoom([cutter.diameter]), limit: greatestStep, pins: seat === 'by hand' ? pins : [],
    };
    const plan = planRegistration(request);
    if (!plan.ok) return plan;
    const { registration } = plan;
    const program = registration.pins.length > 0 ? pinProgram({ registration, cutter, machine, depth: pinDepth, name }) : undefined;
    if (program && !program.ok) return program;
    return {
      ok: true,
      outputs: {
        registration, holes: registration.dowels.map(({ hole }) => hole), checks: stepCheck(registration, greatestStep), quantities: quantitiesOf(registration),
        files: program ? [{ path: program.program.file, text: program.program.text }] : [],
      },
      cautions: [...dowelProblems(request, registration.dowels), ...inView(registration.dowels)],
    };
  },
});

/** What is to be expected fails; what would need all errors at once to go the same way is worth a caution. */
function stepCheck({ steps }: Registration, limit: number): Check[] {
  if (steps.length === 0) return [];
  const largest = (measure: 'worst' | 'likely') => steps.reduce((a, b) => (b[measure] > a[measure] ? b : a));
  const [worst, likely] = [largest('worst'), largest('likely')];
  return [
    atMost({ check: 'seam-step', subject: 'Largest step to be expected at a seam', value: likely.likely, limit, unit: 'mm', at: likely.at, advice: STEP_ADVICE }),
    atMost({ check: 'seam-step-worst', subject: 'Largest step at a seam if all errors add up', value: worst.worst, limit, unit: 'mm', at: worst.at, advice: STEP_ADVICE }, 'caution'),
  ];
}

const STEP_ADVICE = 'Put the pins farther apart, fit them closer, or measure them and correct the next set-up.';

function inView(dowels: readonly Dowel[]): Problem[] {
  return dowels.filter(({ lies }) => lies === 'board').map(({ hole: { centre } }) => ({
    expected: 'dowel holes in the waste or under the tube', found: `one to be seen at (${centre.x.toFixed(1)}, ${centre.y.toFixed(1)}) mm`,
    advice: 'Take a sheet with more waste round the board, or plug the hole.',
  }));
}

function quantitiesOf({ pins, dowels, steps }: Registration) {
  const [a, b] = pins;
  return {
    pins: { value: pins.length, unit: 'count' }, dowelHoles: { value: dowels.length, unit: 'count' },
    dowelHolesInView: { value: dowels.filter(({ lies }) => lies === 'board').length, unit: 'count' },
    ...(a && b && { pinDistance: { value: Math.hypot(b.at.x - a.at.x, b.at.y - a.at.y), unit: 'mm' } }),
    ...(steps.length > 0 && { largestStep: { value: Math.max(...steps.map(({ worst }) => worst)), unit: 'mm' }, likelyStep: { value: Math.max(...steps.map(({ likely }) => likely)), unit: 'mm' } }),
  };
}
