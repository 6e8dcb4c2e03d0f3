import { expect, it } from 'vitest';
import emitProgram from '../../nodes/emit-program.ts';
import type { Pass } from '../../src/machining/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { cutter, machine } from '../support/shapes.ts';

const thin = { ...cutter, name: '3 mm cutter', diameter: 3 };
const pass = (kind: Pass['kind'], x: number, own = cutter): Pass => ({
  kind, name: `${kind} 1`, cutter: own, start: { x, y: 10, z: 2 }, moves: [{ kind: 'line', to: { x, y: 10, z: -3 }, feed: 300 }, { kind: 'line', to: { x: x + 40, y: 10, z: -3 }, feed: 900 }],
});
const one = { machine, tiling: undefined, registration: undefined };
const programsOf = (...passes: Pass[]) => outputsOf(emitProgram, { passes, ...one }, { name: 'market hall' }).setups[0]!.programs;

it('writes one program for each cutter, in the order to run them', () => {
  const programs = programsOf(pass('groove', 0), pass('hole', 100, thin), pass('outline', 200));
  expect(programs.map(({ file, cutter: own }) => [file, own.diameter])).toEqual([
    ['programs/set-up-1-cutter-1.ngc', 6], ['programs/set-up-1-cutter-2.ngc', 3], ['programs/set-up-1-cutter-3.ngc', 6],
  ]);
});

it('tells the operator to set Z again after a change of cutter, and only then', () => {
  const [first, second] = programsOf(pass('groove', 0), pass('hole', 100, thin));
  expect(first!.text).not.toContain('set Z again');
  expect(second!.text).toContain('(Change the cutter and set Z again first)');
});

it('keeps program coordinates equal to sheet coordinates', () => {
  const [program] = programsOf(pass('groove', 25));
  expect(program!.reach).toMatchObject({ min: { x: 25, y: 10, z: -3 }, max: { x: 65, y: 10, z: 10 } });
  expect(outputsOf(emitProgram, { passes: [pass('groove', 25)], ...one }).setups[0]!.shift).toEqual([0, 0]);
});

it('names the work in the first comment', () => expect(programsOf(pass('groove', 0))[0]!.text.split('\n')[0]).toBe('(market hall)'));

it('refuses to write a program that does nothing', () => {
  expect(problemsOf(emitProgram, { passes: [], ...one })[0]).toMatchObject({ place: 'passes', found: 'none' });
});

it('refuses more moves than can be read back and proved', () => {
  const moves = Array.from({ length: 1_000_001 }, (_, i) => ({ kind: 'line' as const, to: { x: i % 2, y: 0, z: -1 }, feed: 900 }));
  expect(problemsOf(emitProgram, { passes: [{ ...pass('groove', 0), moves }], ...one })[0]).toMatchObject({ place: 'passes', found: '1000001' });
});
