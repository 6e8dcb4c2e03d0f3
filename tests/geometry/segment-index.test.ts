import { describe, expect, it } from 'vitest';
import { squaredDistanceToEdge } from '../../src/geometry/containment.ts';
import { type IndexedSegment, makeSegmentIndex } from '../../src/geometry/segment-index.ts';
import { seeded } from '../support/random.ts';

const point = (random: () => number, size: number) => ({ x: (random() - 0.5) * size, y: (random() - 0.5) * size });

function plainNearest(segments: readonly IndexedSegment[], at: { x: number; y: number }): number {
  return Math.sqrt(Math.min(...segments.map(({ from, to }) => squaredDistanceToEdge(at, from, to))));
}

describe('a segment index', () => {
  it.each([1, 20, 300])('finds the same distance as a plain search, segments up to %d mm long', (size) => {
    const random = seeded(7);
    const segments = Array.from({ length: 300 }, () => {
      const from = point(random, 400);
      const step = point(random, size);
      return { from, to: { x: from.x + step.x, y: from.y + step.y } };
    });
    const index = makeSegmentIndex(segments);
    for (let i = 0; i < 300; i++) {
      const at = point(random, 900);
      expect(index.nearest(at, 2000)?.distance).toBeCloseTo(plainNearest(segments, at), 9);
    }
  });

  it('gives nothing beyond the distance asked for, and what lies exactly at it', () => {
    const index = makeSegmentIndex([{ from: { x: 0, y: 0 }, to: { x: 10, y: 0 } }]);
    expect(index.nearest({ x: 5, y: 3.01 }, 3)).toBeUndefined();
    expect(index.nearest({ x: 5, y: 3 }, 3)).toMatchObject({ segment: 0, distance: 3, point: { x: 5, y: 0 } });
  });

  it('passes over segments that are not accepted', () => {
    const flat = (y: number) => ({ from: { x: 0, y }, to: { x: 10, y } });
    const index = makeSegmentIndex([flat(0), flat(2)]);
    expect(index.nearest({ x: 5, y: 0.5 }, 50, (i) => i !== 0)).toMatchObject({ segment: 1, distance: 1.5 });
  });

  it('takes segments of no length and an empty list', () => {
    const dot = { from: { x: 1, y: 1 }, to: { x: 1, y: 1 } };
    expect(makeSegmentIndex([dot]).nearest({ x: 1, y: 2 }, 5)?.distance).toBe(1);
    expect(makeSegmentIndex([]).nearest({ x: 0, y: 0 }, 5)).toBeUndefined();
  });

  it('holds a segment a kilometre long', () => {
    const index = makeSegmentIndex([{ from: { x: 0, y: 0 }, to: { x: 1e6, y: 1e6 } }]);
    expect(index.nearest({ x: 5e5, y: 5e5 + 1 }, 10)?.distance).toBeCloseTo(Math.SQRT1_2, 6);
  });
});
