import { expect, it } from 'vitest';
import correctSetUp from '../../nodes/correct-set-up.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';

const [measured, nothing] = correctSetUp.examples;
const { registration } = measured.inputs;

it('finds turn, shift and misfit from two measured holes, and hands them on with the pins', () => {
  const { registration: corrected, quantities } = outputsOf(correctSetUp, measured.inputs, measured.params);
  // The worked example of the references: 1.1666e-4 rad, misfit 0.03 mm.
  expect((quantities.correctionAngle!.value * Math.PI) / 180).toBeCloseTo(1.1666e-4, 8);
  expect(quantities.pinMisfit!.value).toBeCloseTo(0.03, 5);
  expect(corrected).toEqual({ ...registration, corrections: [{ setUp: 1, degrees: quantities.correctionAngle!.value, shift: [quantities.correctionRight!.value, quantities.correctionUp!.value] }] });
});

it('puts a new correction in the place of an old one', () => {
  const once = outputsOf(correctSetUp, measured.inputs, measured.params).registration;
  expect(outputsOf(correctSetUp, { registration: once }, measured.params).registration).toEqual(once);
});

it('leaves all as it is where nothing was measured', () => {
  expect(outputsOf(correctSetUp, nothing!.inputs)).toEqual({ registration, quantities: {} });
});

it('refuses one hole alone, and a set-up without pins', () => {
  expect(problemsOf(correctSetUp, { registration }, { first: [{ x: 0, y: 0 }] })[0]).toMatchObject({ place: 'second' });
  expect(problemsOf(correctSetUp, { registration }, { ...measured.params, setUp: 3 })[0]).toMatchObject({ place: 'setUp' });
});
