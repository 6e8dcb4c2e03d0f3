import { expect, it } from 'vitest';
import holdDown from '../../nodes/hold-down.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter, machine, rectangle } from '../support/shapes.ts';
import { tilingAt } from '../machining/set-ups-fixture.ts';
import { EXAMPLE_STOCK } from '../../src/values/examples.ts';

const stock = { ...EXAMPLE_STOCK, width: 2400, height: 500 };
const tiling = tilingAt(stock, [800, 1600], [], 20);
const inputs = { tiling, stock, machine, cutters: [cutter], board: rectangle(80, 80, 2240, 340), holes: [] };

it('plans screws for every set-up and supports where the sheet would sag', () => {
  const { holding, quantities } = outputsOf(holdDown, inputs);
  expect(new Set(holding.holdDowns.flatMap(({ setUps }) => setUps))).toEqual(new Set([0, 1, 2]));
  expect(holding.supports.length).toBeGreaterThan(0);
  expect(quantities).toEqual({ holdDowns: { value: holding.holdDowns.length, unit: 'count' }, supports: { value: holding.supports.length, unit: 'count' } });
  expect(outputsOf(holdDown, inputs, { sag: 0.5 }).holding.supports.length).toBeGreaterThan(holding.supports.length);
});

it('takes places put by hand, in the set-ups in which they lie on the bed', () => {
  const { holding } = outputsOf(holdDown, inputs, { where: 'by hand', places: [{ x: 20, y: 20 }, { x: 800, y: 480 }] });
  expect(holding.holdDowns.map(({ at, setUps }) => [at.x, setUps])).toEqual([[20, [0]], [800, [0, 1]]]);
});

it('takes supports put by hand, on the side where they lie beyond the bed', () => {
  const { holding } = outputsOf(holdDown, inputs, { carry: 'by hand', supportsAcross: [{ x: 2000, y: 250 }] });
  expect(holding.supports).toEqual([{ setUp: 0, axis: 'x', at: 2000, length: 500 }, { setUp: 1, axis: 'x', at: 2000, length: 500 }]);
});

it('leaves supports along the other axis as planned while only those of one are put by hand', () => {
  const large = { ...stock, height: 1300 };
  const both = { ...inputs, stock: large, tiling: tilingAt(large, [800, 1600], [650], 20) };
  const alongIn = (params: object) => outputsOf(holdDown, both, params).holding.supports.filter(({ axis }) => axis === 'y');
  expect(alongIn({}).length).toBeGreaterThan(0);
  expect(alongIn({ carry: 'by hand', supportsAcross: [{ x: 2000, y: 650 }] })).toEqual(alongIn({}));
});

it('holds the board by tape or vacuum where there is no waste, and says when screws cannot', () => {
  expect(outputsOf(holdDown, inputs, { by: 'tape' }).holding).toMatchObject({ holdDowns: [], areas: [{ kind: 'tape', region: inputs.board }] });
  const outcome = holdDown.compute({ ...inputs, board: rectangle(0, 0, 2400, 500) }, Object.fromEntries(Object.entries(holdDown.params).map(([name, param]) => [name, param.default])) as never, { checkpoint: () => undefined });
  expect(outcome.ok && outcome.cautions?.map(({ expected }) => expected)).toEqual(['set-up 1', 'set-up 2', 'set-up 3'].map((name) => `at least two hold-downs in ${name}`));
});
