import { expect, it } from 'vitest';
import checkHolding from '../../nodes/check-holding.ts';
import emitProgram from '../../nodes/emit-program.ts';
import outlinePasses from '../../nodes/outline-passes.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter, machine, rectangle, stock } from '../support/shapes.ts';

const board = rectangle(100, 50, 400, 200);
const { passes, tabs } = outputsOf(outlinePasses, { board, cutter, machine, stock, tiling: undefined });
const { setups } = outputsOf(emitProgram, { passes, machine, tiling: undefined, registration: undefined });
const holding = (x: number, y: number) => ({ holdDowns: [{ kind: 'screw' as const, at: { x, y }, keepOut: 20, height: 6 }], areas: [], supports: [] });
const inputs = { setups, tiling: undefined, holding: holding(50, 150), board, tabs };

it('passes a screw that nothing comes near, and tells the gap', () => {
  const [check] = outputsOf(checkHolding, inputs).checks;
  // From the board's edge at x 100: half the keep-out disc and one cutter diameter.
  expect(check).toMatchObject({ check: 'hold-down-gap', status: 'pass', value: expect.closeTo(50 - 10 - 6, 0) as number });
});

it('fails with the place where the cutter would hit one', () => {
  expect(outputsOf(checkHolding, { ...inputs, holding: holding(90, 150) }).checks[0]).toMatchObject({ status: 'fail', at: [expect.closeTo(96.8, 0) as number, expect.closeTo(150, 0) as number] });
});

it('fails when the gap is less than wished for', () => {
  expect(outputsOf(checkHolding, inputs, { leastGap: 40 }).checks[0]).toMatchObject({ status: 'fail' });
});

it('tells a board that no tab keeps', () => {
  expect(outputsOf(checkHolding, inputs).quantities).toEqual({ loosePieces: { value: 0, unit: 'count' } });
  const outcome = checkHolding.compute({ ...inputs, tabs: [] }, { leastGap: 0 }, { checkpoint: () => undefined });
  expect(outcome.ok && outcome.cautions?.[0]).toMatchObject({ found: expect.stringContaining('comes loose') as string });
});

it('has nothing to check where nothing is in the way', () => {
  expect(outputsOf(checkHolding, { ...inputs, holding: { holdDowns: [], areas: [], supports: [] } }).checks).toEqual([]);
});
