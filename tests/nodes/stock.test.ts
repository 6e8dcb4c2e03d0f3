import { expect, it } from 'vitest';
import stock from '../../nodes/stock.ts';
import { throughDepth } from '../../src/machining/index.ts';
import { outputsOf } from '../support/run-node.ts';

it('hands on the sheet as measured', () => {
  expect(outputsOf(stock, {}, { width: 2400, thickness: 10.4 }).stock).toMatchObject({ width: 2400, height: 600, thickness: 10.4, density: 1190 });
});

// ISO 7823-1 as quoted by its users: a cast sheet of nominal thickness t may differ by 0.4 + 0.1 t; 10 mm: 8.6 to 11.4.
it('goes through the thickest sheet the tolerance allows', () => {
  expect(throughDepth(outputsOf(stock, {}, { thickness: 10, thicknessTolerance: 1.4, breakthrough: 0.3 }).stock)).toBeCloseTo(11.7, 12);
});
