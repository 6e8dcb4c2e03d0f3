import '../src/values/types.ts';
import { measuredPins, millimetres, type Registration } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';

const EXAMPLE: Registration = {
  pins: [{ at: { x: 0, y: 0 }, diameter: 6 }, { at: { x: 600, y: 0 }, diameter: 6 }], clearance: 0.02, pitchError: 0.03, steps: [], corrections: [],
  dowels: [
    { hole: { centre: { x: 500, y: 0 }, diameter: 6.02, purpose: 'dowel', setUp: 0 }, pin: 0, drilledIn: 0, usedIn: 1, lies: 'waste' },
    { hole: { centre: { x: 1100, y: 0 }, diameter: 6.02, purpose: 'dowel', setUp: 0, slot: { length: 1, angle: 0 } }, pin: 1, drilledIn: 0, usedIn: 1, lies: 'waste' },
  ],
};

export default defineNode({
  name: 'correct-set-up',
  title: 'Correct a set-up',
  doc: 'Turns and shifts the programs of one set-up to where its sheet really lies, from the places of its two dowel holes as measured on the machine.',
  inputs: { registration: { type: 'registration', doc: 'The pins and dowel holes.' } },
  outputs: {
    registration: { type: 'registration', doc: 'The same, with the correction for that set-up.' },
    quantities: { type: 'quantities', doc: 'The correction\'s angle and shift, and how much farther apart the holes were found than they should be.' },
  },
  params: {
    setUp: { kind: 'number', unit: 'count', default: 2, min: 2, max: 1000, step: 1, label: 'Set-up', doc: 'Number of the set-up that is to be corrected.' },
    first: { kind: 'points', default: [], label: 'Round hole', doc: 'Where the middle of the round dowel hole was found, in program coordinates.' },
    second: { kind: 'points', default: [], label: 'Slot', doc: 'Where the middle of the slot was found, in program coordinates.' },
    greatestMisfit: { kind: 'number', unit: 'mm', default: 0.3, min: 0, max: 10, step: 0.05, label: 'Greatest misfit', doc: 'A measurement that makes the holes\' distance wrong by more is worth a caution.' },
  },
  examples: [
    { title: 'found a little off', inputs: { registration: EXAMPLE }, params: { setUp: 2, first: [{ x: 0.02, y: -0.03 }], second: [{ x: 600.05, y: 0.04 }] } },
    { title: 'nothing measured', inputs: { registration: EXAMPLE } },
  ],
  compute({ registration }, { setUp, first, second, greatestMisfit }) {
    const [a, b] = [first[0], second[0]];
    if (!a && !b) return { ok: true, outputs: { registration, quantities: {} } };
    const pins = registration.dowels.filter(({ usedIn }) => usedIn === setUp - 1).map(({ pin }) => registration.pins[pin]!.at);
    if (!a || !b || pins.length < 2) return { ok: false, problems: [a && b ? noPins(setUp) : oneOnly()] };
    const { degrees, shift, misfit } = measuredPins([pins[0]!, pins[1]!], [a, b]);
    const corrections = [...registration.corrections.filter((one) => one.setUp !== setUp - 1), { setUp: setUp - 1, degrees, shift }];
    return {
      ok: true,
      outputs: {
        registration: { ...registration, corrections },
        quantities: {
          correctionAngle: { value: degrees, unit: 'deg' }, correctionRight: { value: shift[0], unit: 'mm' }, correctionUp: { value: shift[1], unit: 'mm' }, pinMisfit: { value: misfit, unit: 'mm' },
        },
      },
      cautions: Math.abs(misfit) > greatestMisfit ? [misfitted(misfit, greatestMisfit)] : [],
    };
  },
});

const noPins = (setUp: number): Problem => ({ place: 'setUp', expected: 'a set-up that lies on pins', found: `set-up ${setUp}, which does not`, advice: 'Give the number of a set-up after the first.' });

const oneOnly = (): Problem => ({ place: 'second', expected: 'both holes measured', found: 'one of them', advice: 'Measure the round hole and the slot.' });

const misfitted = (misfit: number, limit: number): Problem => ({
  place: 'second', expected: `holes as far apart as drilled, within ${millimetres(limit)} mm`, found: `${millimetres(Math.abs(misfit), 2)} mm ${misfit > 0 ? 'more' : 'less'}`,
  advice: 'Measure again: chips under the sheet or a wrong edge are likelier than a sheet that grew so much.',
});
