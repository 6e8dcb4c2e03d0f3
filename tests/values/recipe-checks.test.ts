import { expect, it } from 'vitest';
import type { Catalogue } from '../../src/runtime/index.ts';
import { recipeChecks } from '../../src/values/index.ts';
import { catalogue, graph } from '../runtime/arithmetic.ts';

const checksOf = (value: number, proved?: readonly [number, number]) => recipeChecks(
  graph({ a: ['constant', { value }] }, [], { inputs: [{ name: 'amount', label: 'Amount', help: '', sets: 'a.value', ...(proved && { proved }) }] }),
  catalogue as unknown as Catalogue,
);

it('a value beyond what a recipe was proved for is a caution at its node, with the limit it left', () => {
  expect(checksOf(9, [2, 8])).toMatchObject([{ node: 'a', check: { check: 'proved-range', status: 'caution', value: 9, limit: 8, unit: 'mm' } }]);
  expect(checksOf(1, [2, 8])[0]!.check).toMatchObject({ status: 'caution', limit: 2, says: expect.stringContaining('from 2 to 8 mm') as string });
});

it('values within it pass, and a recipe that says nothing is not judged', () => {
  expect(checksOf(8, [2, 8])).toMatchObject([{ check: { status: 'pass', value: 0 } }]);
  expect(checksOf(1)).toEqual([]);
});
