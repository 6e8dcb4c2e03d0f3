import { expect, it } from 'vitest';
import checkTravel from '../../nodes/check-travel.ts';
import type { Program } from '../../src/machining/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter, machine } from '../support/shapes.ts';

const program = (min: readonly [number, number, number], max: readonly [number, number, number]): Program => {
  const point = ([x, y, z]: readonly [number, number, number]) => ({ x, y, z });
  return { file: 'a.ngc', cutter, kinds: ['groove'], moves: [], text: '', reach: { min: point(min), max: point(max) }, minutes: 0, cuttingMinutes: 0, seconds: [], spindleStart: 0, blocks: 0 };
};
const checksOf = (...programs: Program[]) => outputsOf(checkTravel, { setups: [{ name: 'set-up 1', shift: [0, 0], programs }], machine }).checks;

it('compares the reach with the travel wherever zero lies', () => {
  expect(checksOf(program([-5, 100, -13], [895, 690, 10])).map(({ status, value }) => [status, value])).toEqual([['pass', 900], ['pass', 590], ['pass', 23]]);
});

it('fails the axis that is too short', () => {
  expect(checksOf(program([0, 0, -13], [901, 650, 10])).map(({ status }) => status)).toEqual(['fail', 'fail', 'pass']);
});

it('takes the programs of one set-up together, for they share a zero', () => {
  expect(checksOf(program([0, 0, -6], [500, 100, 10]), program([450, 0, -6], [920, 100, 10]))[0]).toMatchObject({ status: 'fail', value: 920 });
});

it('finds no reach where there is no program', () => {
  expect(outputsOf(checkTravel, { setups: [], machine }).checks.map(({ value }) => value)).toEqual([0, 0, 0]);
});
