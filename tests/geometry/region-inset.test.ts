import { describe, expect, it } from 'vitest';
import {
  insetRings, offsetPath, offsetPaths, offsetRegion, polylinePath, regionArea, regionPerimeter, subtractRegion,
} from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { circle } from '../support/shapes.ts';
import { around, rectangle, scribble, solid } from './region-shapes.ts';

const options = { join: 'round', tolerance: 0.01 } as const;

describe('insetRings', () => {
  it('of a rectangle are rectangles until nothing is left', () => {
    const rings = insetRings(solid(rectangle(0, 0, 100, 50)), 3, 4, options);
    expect(rings.map(regionArea)).toEqual([3, 7, 11, 15, 19, 23].map((d) => (100 - 2 * d) * (50 - 2 * d)));
  });

  it('start at the boundary itself when the first distance is 0', () => {
    const plate = solid(rectangle(0, 0, 10, 10));
    expect(insetRings(plate, 0, 4, options).map(regionArea)).toEqual([100, 4]);
    expect(insetRings(plate, 5, 1, options)).toEqual([]);
    expect(insetRings({ loops: [] }, 1, 1, options)).toEqual([]);
  });

  it('of a disc have the areas of discs', () => {
    const disc = solid(around(2000, (t) => [30 * Math.cos(t), 30 * Math.sin(t)]));
    const rings = insetRings(disc, 2.5, 2.5, options);
    expect(rings.length).toBe(12 - 1);
    rings.forEach((ring, i) => {
      const radius = 30 - 2.5 * (i + 1);
      expect(Math.abs(Math.sqrt(regionArea(ring) / Math.PI) - radius)).toBeLessThan(0.01 * (i + 1));
    });
  });

  it('keep a groove apart where it parts, each ring together in one region', () => {
    const groove = offsetPaths([circle(0, 0, 40), circle(150, 0, 40)], 5, { cap: 'round', ...options });
    const rings = insetRings(groove, 3, 1.5, options);
    expect(rings.map(({ loops }) => loops.length)).toEqual([4, 4]);
    expect(Math.abs(regionArea(rings[0]!) / (2 * 2 * Math.PI * 40 * 4) - 1)).toBeLessThan(5e-3);
  });

  it('stray from the exact inset of the same depth by a few tolerances at most, far within the stated bound', () => {
    const random = seeded(31);
    for (let k = 0; k < 6; k += 1) {
      const blob = offsetPath(polylinePath(scribble(random, 9, 90), false), 8, { cap: 'round', ...options });
      insetRings(blob, 1, 1, options).forEach((ring, i) => {
        const exact = offsetRegion(blob, -(i + 1), { join: 'round', tolerance: 0.001 });
        const apart = regionArea(subtractRegion(ring, exact)) + regionArea(subtractRegion(exact, ring));
        expect(apart).toBeLessThan(0.02 * regionPerimeter(exact) + 1e-3);
      });
    }
  });

  it('refuse steps that would not end and distances that are no numbers', () => {
    const plate = solid(rectangle(0, 0, 10, 10));
    for (const [first, step] of [[1, 0], [1, -1], [1, 0.001], [1, Number.NaN], [-1, 1], [Number.NaN, 1]] as const) {
      expect(() => insetRings(plate, first, step, options)).toThrow(RangeError);
    }
  });
});
