import { expect, it } from 'vitest';
import registration from '../../nodes/registration.ts';
import type { TextFile } from '../../src/values/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter, machine, rectangle, stock } from '../support/shapes.ts';
import { tilingAt } from '../machining/set-ups-fixture.ts';

const tiling = tilingAt(stock, [stock.width / 2], [], 40);
const inputs = { tiling, stock, machine, cutter, board: rectangle(60, 60, stock.width - 120, stock.height - 120), channel: undefined, holes: [] };

it('gives pins, dowel holes for the drill, the step at the seam and the pins\' program', () => {
  const { holes, checks, quantities, files, registration: found } = outputsOf(registration, inputs);
  expect(holes).toEqual(found.dowels.map(({ hole }) => hole));
  expect(holes.map(({ purpose }) => purpose)).toEqual(['dowel', 'dowel']);
  expect(checks.map(({ check, status, value }) => [check, status, value])).toEqual([['seam-step', 'pass', quantities.likelyStep!.value], ['seam-step-worst', 'pass', quantities.largestStep!.value]]);
  expect(files.map(({ path }) => path)).toEqual(['programs/spoilboard-pins.ngc']);
  expect((files[0] as TextFile).text).toMatch(/^\(sign, holes for the pins/);
});

it('fails when the step may be larger than allowed', () => {
  expect(outputsOf(registration, inputs, { pitchError: 0.5 }).checks.map(({ status, limit }) => [status, limit])).toEqual([['fail', 0.3], ['caution', 0.3]]);
});

it('takes pins put by hand, and warns of those on the board or off the sheet', () => {
  const pins = [{ x: 300, y: 100 }, { x: 320, y: 5000 }];
  const { registration: found } = outputsOf(registration, inputs, { seat: 'by hand', pins });
  expect(found.pins.map(({ at }) => at)).toEqual(pins);
  const outcome = registration.compute(inputs, { ...defaults(), seat: 'by hand', pins }, { checkpoint: () => undefined });
  expect(outcome.ok && outcome.cautions?.map(({ expected }) => expected)).toContainEqual(expect.stringContaining('clear of cuts'));
});

it('takes pins as thick as the cutter that makes their holes', () => {
  expect(outputsOf(registration, inputs, { pinDiameter: 3 }).registration.pins.map(({ diameter }) => diameter)).toEqual([6, 6]);
});

function defaults() {
  const { pinDiameter, clearance, pitchError, greatestStep, wall, kelvin, pinDepth, name } = registration.params;
  return {
    pinDiameter: pinDiameter.default, clearance: clearance.default, pitchError: pitchError.default, greatestStep: greatestStep.default, wall: wall.default,
    kelvin: kelvin.default, pinDepth: pinDepth.default, name: name.default,
  };
}
