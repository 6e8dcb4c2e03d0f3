import { expect, it } from 'vitest';
import intersect from '../../nodes/intersect.ts';
import { regionArea } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { rectangle } from '../support/shapes.ts';

it('keeps what both cover', () => {
  expect(regionArea(outputsOf(intersect, { region: rectangle(0, 0, 30, 30), within: rectangle(20, 10, 30, 10) }).region)).toBeCloseTo(100, 6);
});

it('is empty where regions do not meet', () => {
  expect(outputsOf(intersect, { region: rectangle(0, 0, 30, 30), within: rectangle(50, 0, 30, 30) }).region.loops).toEqual([]);
});
