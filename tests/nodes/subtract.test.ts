import { expect, it } from 'vitest';
import subtract from '../../nodes/subtract.ts';
import { regionArea } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { rectangle } from '../support/shapes.ts';

it('leaves a hole, wound the other way, where something inside was taken', () => {
  const { region } = outputsOf(subtract, { region: rectangle(0, 0, 30, 30), without: [rectangle(10, 10, 5, 5)] });
  expect(regionArea(region)).toBeCloseTo(875, 6);
  expect(region.loops).toHaveLength(2);
});

it('counts overlapping regions to take away once', () => {
  const { region } = outputsOf(subtract, { region: rectangle(0, 0, 30, 30), without: [rectangle(20, 0, 20, 30), rectangle(25, 0, 20, 30)] });
  expect(regionArea(region)).toBeCloseTo(600, 6);
});

it('leaves all when there is nothing to take', () => {
  expect(regionArea(outputsOf(subtract, { region: rectangle(0, 0, 30, 30), without: [] }).region)).toBeCloseTo(900, 6);
});
