import { expect, it } from 'vitest';
import outlinePasses from '../../nodes/outline-passes.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { cutter, machine, rectangle, stock } from '../support/shapes.ts';

const inputs = { board: rectangle(100, 50, 400, 200), cutter, machine, stock, tiling: undefined };

it('keeps the cutter\'s radius outside the board, all the way down', () => {
  const { passes } = outputsOf(outlinePasses, inputs);
  const cuts = passes.flatMap(({ moves }) => moves.map(({ to }) => to)).filter(({ z }) => z < 0);
  const outside = cuts.map(({ x, y }) => Math.max(100 - x, x - 500, 50 - y, y - 250));
  expect(Math.min(...outside)).toBeGreaterThan(3 - 0.01);
  expect(Math.min(...cuts.map(({ z }) => z))).toBeCloseTo(-12.5, 9);
});

it('leaves tabs no farther apart than the pitch, at their height', () => {
  const { tabs } = outputsOf(outlinePasses, inputs, { tabPitch: 250, tabWidth: 8, tabHeight: 2.5 });
  expect(tabs.length).toBe(Math.ceil((2 * (400 + 200) + 2 * Math.PI * 3) / 250));
  expect(new Set(tabs.map(({ width, height }) => `${width} ${height}`))).toEqual(new Set(['8 2.5']));
});

it('leaves no tab when their height is 0', () => {
  expect(outputsOf(outlinePasses, inputs, { tabHeight: 0 }).tabs).toEqual([]);
});

it('refuses tabs as high as the sheet', () => {
  expect(problemsOf(outlinePasses, inputs, { tabHeight: 12 })).toHaveLength(1);
});
