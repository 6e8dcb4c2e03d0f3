import { expect, it } from 'vitest';
import checkOverhang from '../../nodes/check-overhang.ts';
import holdDown from '../../nodes/hold-down.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter, machine } from '../support/shapes.ts';
import { tilingAt } from '../machining/set-ups-fixture.ts';
import { EXAMPLE_STOCK } from '../../src/values/examples.ts';

/** The board of the references' worked example: 2.4 x 0.6 m, 12 mm, 1190 kg/m3 -> 20.563 kg (UFC 4-159-01 table 3-1). */
const stock = { ...EXAMPLE_STOCK, width: 2400, height: 600, thickness: 12, density: 1190 };
const tiling = tilingAt(stock, [800, 1600], [], 20);
const inputs = { tiling, stock, machine, holding: undefined };

it('tells the weight and who lifts it', () => {
  const { quantities } = outputsOf(checkOverhang, inputs);
  expect(quantities.sheetWeightToLift!.value).toBeCloseTo(20.563, 3);
  expect(quantities.peopleToLift!.value).toBe(2);
});

it('fails where the sheet sags or tips with nothing beside the bed, and passes on its planned supports', () => {
  expect(outputsOf(checkOverhang, inputs).checks.map(({ check, status }) => [check, status])).toEqual([['overhang-sag', 'fail'], ['overhang-tips', 'fail']]);
  const { holding } = outputsOf(holdDown, { tiling, stock, machine, cutters: [cutter], board: undefined, holes: [] }, { sag: 2 });
  const carried = outputsOf(checkOverhang, { ...inputs, holding });
  expect(carried.checks.map(({ status }) => status)).toEqual(['pass', 'pass']);
  expect(carried.checks[0]!.value).toBeLessThan(2.001);
});

it('sags more with a softer sheet', () => {
  const sag = (modulus: number) => outputsOf(checkOverhang, inputs, { modulus }).quantities['freeSag']!.value;
  expect(sag(2760) / sag(3200)).toBeCloseTo(3200 / 2760, 6);
});

it('has nothing to check for a sheet that lies on its bed', () => {
  expect(outputsOf(checkOverhang, { ...inputs, tiling: tilingAt(stock, [], []) }).checks).toEqual([]);
});
