import { expect, it } from 'vitest';
import emitProgram from '../../nodes/emit-program.ts';
import groovePasses from '../../nodes/groove-passes.ts';
import outlinePasses from '../../nodes/outline-passes.ts';
import proveSeams from '../../nodes/prove-seams.ts';
import registrationNode from '../../nodes/registration.ts';
import setWidth from '../../nodes/set-width.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter, line, machine, rectangle } from '../support/shapes.ts';
import { tilingAt } from '../machining/set-ups-fixture.ts';
import { EXAMPLE_STOCK as stock } from '../../src/values/examples.ts';

const { channel } = outputsOf(setWidth, { strokes: [{ path: line([90, 100], [310, 110]) }] }, { width: 10, depth: 6 });
const board = rectangle(60, 60, 280, 80);
const tiling = tilingAt(stock, [200], [], 12);
const tools = { cutter, machine, stock, tiling };
const passes = [...outputsOf(groovePasses, { channel, ...tools }).passes, ...outputsOf(outlinePasses, { board, ...tools }).passes];
const { registration } = outputsOf(registrationNode, { ...tools, board, channel, holes: [] }, { pinDiameter: 6 });
const { setups } = outputsOf(emitProgram, { passes, machine, tiling, registration });
const inputs = { setups, tiling, registration, machine, channel, board, holes: [], stock };
const coarse = { cell: 0.5, seamCell: 0.1 };

it('passes what all set-ups cut together, with its step at the seam', () => {
  const { checks, quantities } = outputsOf(proveSeams, inputs, coarse);
  expect(checks.map(({ check, status }) => [check, status])).toEqual([['as-unlimited', 'pass'], ['seam-step-simulated', 'pass']]);
  expect(quantities.simulatedStep!.value).toBeGreaterThan(0);
});

it('fails where a set-up is missing or lies off', () => {
  expect(outputsOf(proveSeams, { ...inputs, setups: setups.slice(1) }, coarse).checks[0]).toMatchObject({ check: 'as-unlimited', status: 'fail' });
});

it('compares what was planned, whatever a correction did to the programs', () => {
  const corrected = outputsOf(emitProgram, { passes, machine, tiling, registration: { ...registration, corrections: [{ setUp: 1, degrees: 0.2, shift: [0.5, -0.3] }] } }).setups;
  expect(outputsOf(proveSeams, { ...inputs, setups: corrected }, coarse).checks[0]).toMatchObject({ status: 'pass' });
});

it('has nothing to say where nothing was divided', () => {
  expect(outputsOf(proveSeams, { ...inputs, tiling: tilingAt(stock, [], []) }, coarse)).toEqual({ checks: [], quantities: {} });
});
