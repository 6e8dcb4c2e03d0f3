import { expect, it } from 'vitest';
import union from '../../nodes/union.ts';
import { regionArea } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { rectangle } from '../support/shapes.ts';

it('covers what any region covers, once', () => {
  const regions = [rectangle(0, 0, 30, 30), rectangle(20, 10, 30, 10), rectangle(100, 0, 5, 5)];
  const { region } = outputsOf(union, { regions });
  expect(regionArea(region)).toBeCloseTo(900 + 200 + 25, 6);
  expect(region.loops).toHaveLength(2);
});

it('is empty for no region at all', () => expect(outputsOf(union, { regions: [] }).region.loops).toEqual([]));
