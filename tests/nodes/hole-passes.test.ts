import { expect, it } from 'vitest';
import holePasses from '../../nodes/hole-passes.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { cutter, machine, stock } from '../support/shapes.ts';

const inputs = (diameter: number) => ({ holes: [[{ centre: { x: 50, y: 50 }, diameter, purpose: 'mounting' as const }], []], cutter, machine, stock, tiling: undefined });

it('goes through the thickest sheet and into the spoilboard, drilled or bored', () => {
  for (const diameter of [6, 8, 30]) {
    const { passes } = outputsOf(holePasses, inputs(diameter));
    expect(Math.min(...passes.flatMap(({ moves }) => moves.map(({ to }) => to.z))), `${diameter} mm`).toBeCloseTo(-12.5, 9);
  }
});

it('drills straight down in pecks no deeper than asked', () => {
  const { passes: [pass] } = outputsOf(holePasses, inputs(6), { peckDepth: 3 });
  expect(pass!.moves.every(({ kind, to }) => kind !== 'arc' && to.x === 50 && to.y === 50)).toBe(true);
  const depths = pass!.moves.filter(({ kind }) => kind === 'line').map(({ to }) => to.z);
  expect(Math.max(...depths.map((z, i) => Math.min(0, depths[i - 1] ?? 0) - z))).toBeLessThanOrEqual(3 + 1e-9);
  expect(pass!.moves.filter(({ kind, to }) => kind === 'rapid' && to.z > 0).length).toBeGreaterThanOrEqual(4);
});

it('refuses a hole smaller than the cutter and names its place', () => {
  expect(problemsOf(holePasses, inputs(4))[0]).toMatchObject({ place: 'hole at x 50, y 50' });
});

it('tells one fault for all holes of one size', () => {
  const hole = (x: number, diameter: number) => ({ centre: { x, y: 50 }, diameter, purpose: 'cable' as const });
  const problems = problemsOf(holePasses, { ...inputs(4), holes: [[hole(10, 4), hole(30, 5), hole(50, 4), hole(70, 8)]] });
  expect(problems.map(({ place }) => place)).toEqual(['hole at x 10, y 50 and 1 more', 'hole at x 30, y 50']);
});
