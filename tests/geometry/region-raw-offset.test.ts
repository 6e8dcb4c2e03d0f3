import { expect, it } from 'vitest';
import { makeRegionIndex, regionFromLoops } from '../../src/geometry/index.ts';
import { rawSide } from '../../src/geometry/raw-offset.ts';
import { seeded } from '../support/random.ts';
import { around, turned } from './region-shapes.ts';

const raw = { distance: 5, join: 'round', miterLimit: 4, tolerance: 0.001 } as const;

it.each([0.0001, 0.001, 0.01, 0.1])('the strips and wedges along a circle with %s mm of noise leave no crack', (noise) => {
  const random = seeded(17);
  for (const degrees of [0, 31]) {
    const circle = around(1200, (t) => [(20 + noise * random()) * Math.cos(t), (20 + noise * random()) * Math.sin(t)]);
    const inside = turned(circle, degrees).reverse();
    const shrunk = regionFromLoops([rawSide(inside, raw).slice().reverse()], 'positive');
    const index = makeRegionIndex({ loops: [inside] });
    const depths = shrunk.loops.flat().map(index.distanceToBoundary);
    expect(shrunk.loops.length).toBe(1);
    expect(Math.min(...depths)).toBeGreaterThan(5 - 0.002);
    expect(Math.max(...depths)).toBeLessThan(5 + 0.002);
  }
});
