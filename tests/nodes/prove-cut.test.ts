import { expect, it } from 'vitest';
import emitProgram from '../../nodes/emit-program.ts';
import groovePasses from '../../nodes/groove-passes.ts';
import holePasses from '../../nodes/hole-passes.ts';
import outlinePasses from '../../nodes/outline-passes.ts';
import proveCut from '../../nodes/prove-cut.ts';
import setWidth from '../../nodes/set-width.ts';
import type { SetUp } from '../../src/machining/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, cutter, line, machine, rectangle, stock } from '../support/shapes.ts';

const { channel } = outputsOf(setWidth, { strokes: [{ path: line([100, 100], [220, 100]) }, { path: circle(160, 160, 25) }] }, { width: 10, depth: 6 });
const board = rectangle(60, 60, 220, 160);
const holes = [[{ centre: { x: 80, y: 80 }, diameter: 6, purpose: 'mounting' as const }, { centre: { x: 100, y: 100 }, diameter: 8, purpose: 'cable' as const }]];
const tools = { cutter, machine, stock, tiling: undefined };
const outline = outputsOf(outlinePasses, { board, ...tools });
const passes = [...outputsOf(groovePasses, { channel, ...tools }).passes, ...outputsOf(holePasses, { holes, ...tools }).passes, ...outline.passes];
const { setups } = outputsOf(emitProgram, { passes, machine, tiling: undefined, registration: undefined });
const inputs = { setups, channel, board, holes, tabs: outline.tabs, stock };
const coarse = { cell: 0.3 };
const edited = (edit: (text: string) => string): SetUp[] => setups.map((setup) => ({ ...setup, programs: setup.programs.map((program) => ({ ...program, text: edit(program.text) })) }));
const statusOf = (given: typeof inputs) => Object.fromEntries(outputsOf(proveCut, given, coarse).checks.map(({ check, status }) => [check, status]));

it('finds that planned programs cut what was drawn, to a few micrometres', () => {
  const { checks, quantities } = outputsOf(proveCut, inputs, coarse);
  expect(checks.filter(({ status }) => status === 'fail')).toEqual([]);
  expect(checks[0]).toMatchObject({ check: 'cut-matches-drawing', status: 'pass', unit: 'mm' });
  expect(quantities.wrongCut!.value).toBeLessThan(0.012);
  expect(quantities.remainder!.value).toBeLessThan(0.012);
});

it('fails when a hole, a tab or a groove was drawn that the programs do not make', () => {
  expect(statusOf({ ...inputs, holes: [[...holes[0]!, { centre: { x: 260, y: 200 }, diameter: 6, purpose: 'mounting' }]] })).toMatchObject({ remainder: 'fail', 'cut-matches-drawing': 'fail' });
  expect(statusOf({ ...inputs, tabs: outline.tabs.slice(1) })).toMatchObject({ 'outline-uncut': 'fail' });
  expect(statusOf({ ...inputs, channel: { ...channel, depth: 6.1 } })).toMatchObject({ 'groove-depth': 'fail' });
});

it('reads the words, not the plan: a changed word in the program fails', () => {
  const shallow = edited((text) => text.replaceAll('Z-6.0', 'Z-5.8'));
  expect(statusOf({ ...inputs, setups: shallow })).toMatchObject({ 'groove-depth': 'fail' });
  const deep = edited((text) => text.replaceAll('Z-12.5', 'Z-13.5'));
  expect(statusOf({ ...inputs, setups: deep })).toMatchObject({ 'spoilboard-cut': 'fail' });
});

it('holds the groove against the cutter that cuts the groove, and the outline against its own', () => {
  const thin = { ...cutter, name: '3 mm cutter', diameter: 3 };
  const mixed = [
    ...outputsOf(groovePasses, { channel, ...tools }).passes, ...outputsOf(holePasses, { holes, ...tools, cutter: thin }).passes,
    ...outputsOf(outlinePasses, { board, ...tools, cutter: thin }).passes,
  ];
  const parted = { ...inputs, tabs: outputsOf(outlinePasses, { board, ...tools, cutter: thin }).tabs, setups: outputsOf(emitProgram, { passes: mixed, machine, tiling: undefined, registration: undefined }).setups };
  expect(outputsOf(proveCut, parted, coarse).checks.filter(({ status }) => status !== 'pass')).toEqual([]);
});

it('refuses a program the standard does not allow, naming file and line', () => {
  const [problem] = problemsOf(proveCut, { ...inputs, setups: edited((text) => text.replace('G90', 'G90 G91')) }, coarse);
  expect(problem!.place).toMatch(/^programs\/set-up-1-cutter-1\.ngc line \d+$/);
});

it('says that nothing was cut when there is no program', () => {
  expect(statusOf({ ...inputs, setups: [] })).toMatchObject({ 'cut-matches-drawing': 'fail', remainder: 'fail', 'outline-uncut': 'fail' });
});

it('says how far it is, to the end, and stops when it is told to', () => {
  const told: number[] = [];
  const params = { cell: 0.05, allowed: 0.03, depthAllowed: 0.02, leadRoom: 10 };
  proveCut.compute(inputs, params, { checkpoint: (done) => told.push(done) });
  expect(told.length).toBeGreaterThan(3);
  expect(told.every((done, i) => done >= (told[i - 1] ?? 0) && done <= 1)).toBe(true);
  const stop = () => { throw new Error('stopped'); };
  expect(() => proveCut.compute(inputs, params, { checkpoint: stop })).toThrow('stopped');
});
