import { describe, expect, it } from 'vitest';
import { flattenPath, loopArea, pathBounds, pathLength } from '../../src/geometry/index.ts';
import { holeEnds, holePath } from '../../src/machining/index.ts';

const centre = { x: 30, y: -20 };

describe('the wall of a hole', () => {
  it('is a circle, counter-clockwise', () => {
    const path = holePath({ centre, diameter: 8 });
    expect(pathLength(path)).toBeCloseTo(8 * Math.PI, 9);
    expect(loopArea(flattenPath(path, 1e-4))).toBeCloseTo(16 * Math.PI, 1);
  });

  // A slot with round ends is a stadium: area d l + pi d^2 / 4, perimeter 2 l + pi d.
  it.each([0, 30, 90, 200, -45])('is a stadium for a slot that lies at %i degrees', (angle) => {
    const hole = { centre, diameter: 6, slot: { length: 4, angle } };
    const path = holePath(hole);
    expect(pathLength(path)).toBeCloseTo(2 * 4 + 6 * Math.PI, 9);
    expect(loopArea(flattenPath(path, 1e-4))).toBeCloseTo(6 * 4 + 9 * Math.PI, 1);
    const [a, b] = holeEnds(hole);
    expect([(a.x + b.x) / 2, (a.y + b.y) / 2, Math.hypot(b.x - a.x, b.y - a.y)]).toEqual([expect.closeTo(30, 9), expect.closeTo(-20, 9), expect.closeTo(4, 9)]);
    const { minX, maxX } = pathBounds(path);
    expect(maxX - minX).toBeCloseTo(6 + 4 * Math.abs(Math.cos((angle * Math.PI) / 180)), 6);
  });
});
