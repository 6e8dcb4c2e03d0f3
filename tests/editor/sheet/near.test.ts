import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, nearestOn } from '../../../src/editor/sheet/near.ts';
import { shapeOf } from '../../../src/editor/sheet/shapes.ts';
import { snapTo } from '../../../src/editor/sheet/snap.ts';
import { measure, measureWords, setEnd } from '../../../src/editor/sheet/tape.ts';
import { HOLES, STROKES } from './samples.ts';

describe('pointing at a path', () => {
  const circle = shapeOf({ d: 'M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z' });

  it('finds the nearest place on it', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), fc.double({ min: 20, max: 80, noNaN: true }), (angle, far) => {
      const near = nearestOn(circle, { x: far * Math.cos(angle), y: far * Math.sin(angle) }, 100)!;
      expect(near.distance).toBeCloseTo(Math.abs(far - 50), 3);
      expect(Math.hypot(near.at.x, near.at.y)).toBeCloseTo(50, 3);
    }));
  });

  it('finds nothing beyond its reach', () => {
    expect(nearestOn(circle, { x: 60.1, y: 0 }, 10)).toBeUndefined();
    expect(nearestOn(circle, { x: 59.9, y: 0 }, 10)).toBeDefined();
    expect(nearestOn(shapeOf({ d: '' }), { x: 0, y: 0 }, 10)).toBeUndefined();
  });

  it('tells inside from outside, and the inside of a hole as outside', () => {
    const ring = shapeOf({ d: 'M0 0L100 0L100 100L0 100ZM20 20L20 80L80 80L80 20Z' });
    expect(contains(ring, { x: 10, y: 10 })).toBe(true);
    expect(contains(ring, { x: 50, y: 50 })).toBe(false);
    expect(contains(ring, { x: 120, y: 50 })).toBe(false);
    expect(contains(circle, { x: 34, y: 34 })).toBe(true);
    expect(contains(circle, { x: 36, y: 36 })).toBe(false);
  });
});

describe('the tape', () => {
  const layers = [STROKES, HOLES];

  it('holds on to centres and starts before points, and to points before lines', () => {
    expect(snapTo(layers, { x: 52, y: 49 }, 5)).toEqual({ at: { x: 50, y: 50 }, says: 'centre of mounting hole 1, 6 mm' });
    expect(snapTo(layers, { x: 102, y: 101 }, 5)).toEqual({ at: { x: 100, y: 100 }, says: 'start of stroke 1, 300 mm' });
    expect(snapTo(layers, { x: 398, y: 101 }, 5)).toEqual({ at: { x: 400, y: 100 }, says: 'point of stroke 1, 300 mm' });
    expect(snapTo(layers, { x: 250, y: 102 }, 5)).toMatchObject({ at: { x: 250, y: 100 }, says: 'on stroke 1, 300 mm' });
    expect(snapTo(layers, { x: 250, y: 150 }, 5)).toBeUndefined();
  });

  it('has two ends and begins anew with the third place', () => {
    const one = setEnd({}, { x: 1, y: 1 });
    const two = setEnd(one, { x: 4, y: 5 });
    expect(two).toEqual({ from: { x: 1, y: 1 }, to: { x: 4, y: 5 } });
    expect(setEnd(two, { x: 9, y: 9 })).toEqual({ from: { x: 9, y: 9 } });
  });

  it('says distance, both ways and angle', () => {
    expect(measure({ x: 1, y: 1 }, { x: 4, y: 5 })).toMatchObject({ distance: 5, dx: 3, dy: 4 });
    expect(measureWords(measure({ x: 1, y: 1 }, { x: 4, y: 5 }), 2)).toEqual(['5.00 mm at 53.1°', 'across 3.00 mm, up 4.00 mm']);
    expect(measureWords(measure({ x: 0, y: 0 }, { x: -1e-9, y: 0 }), 2)).toEqual(['0.00 mm at 180.0°', 'across 0.00 mm, up 0.00 mm']);
    expect(measure({ x: 0, y: 0 }, { x: 0, y: -2 }).angle).toBe(-90);
  });
});
