import { expect, it } from 'vitest';
import offset from '../../nodes/offset-region.ts';
import { regionArea, regionPerimeter } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { rectangle } from '../support/shapes.ts';

const region = rectangle(0, 0, 100, 50);

// J. Steiner, Ueber parallele Flaechen, Monatsber. Preuss. Akad. Berlin 1840: A' = A + P d + pi d^2, P' = P + 2 pi d.
it('grows a convex region as Steiner\'s formula says', () => {
  const { region: grown } = outputsOf(offset, { region }, { distance: 5 });
  expect(regionArea(grown) / 6578.54).toBeCloseTo(1, 4);
  expect(regionPerimeter(grown) / 331.416).toBeCloseTo(1, 4);
});

it('keeps sharp corners inward', () => {
  const { region: shrunk } = outputsOf(offset, { region }, { distance: -5 });
  expect([regionArea(shrunk), regionPerimeter(shrunk)]).toEqual([expect.closeTo(3600, 3), expect.closeTo(260, 3)]);
});

it('keeps sharp corners outward with miter joins', () => {
  expect(regionArea(outputsOf(offset, { region }, { distance: 5, join: 'miter' }).region)).toBeCloseTo(110 * 60, 3);
});

it('leaves nothing when the region is narrower than twice the distance', () => {
  expect(outputsOf(offset, { region }, { distance: -26 }).region.loops).toEqual([]);
});
