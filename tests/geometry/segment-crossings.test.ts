import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type IndexedSegment, type Point, segmentCrossings } from '../../src/geometry/index.ts';

const segment = (x0: number, y0: number, x1: number, y1: number): IndexedSegment => ({ from: { x: x0, y: y0 }, to: { x: x1, y: y1 } });
const all = () => true;

it('finds where two segments cross, and where one ends on the other, once each', () => {
  expect(segmentCrossings([segment(0, 0, 10, 10), segment(0, 10, 10, 0)], all)).toEqual([{ a: 0, b: 1, at: { x: 5, y: 5 }, alongA: 0.5, alongB: 0.5 }]);
  expect(segmentCrossings([segment(0, 0, 10, 0), segment(4, 0, 4, 7)], all)).toMatchObject([{ at: { x: 4, y: 0 }, alongA: 0.4, alongB: 0 }]);
});

it('finds none between segments apart, along one another, or of pairs not let through', () => {
  expect(segmentCrossings([], all)).toEqual([]);
  expect(segmentCrossings([segment(0, 0, 10, 0), segment(0, 1, 10, 1), segment(2, 0, 8, 0)], all)).toEqual([]);
  expect(segmentCrossings([segment(0, 0, 10, 10), segment(0, 10, 10, 0)], () => false)).toEqual([]);
});

/** Whether two points lie on different sides of a line, by signed areas alone. */
const parts = (a: Point, b: Point, { from, to }: IndexedSegment) => {
  const side = (p: Point) => (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
  return side(a) * side(b);
};

it('finds the same pairs as looking at every one of them', () => {
  const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
  const list = fc.array(fc.tuple(coordinate, coordinate, coordinate, coordinate).map(([a, b, c, d]) => segment(a, b, c, d)), { maxLength: 40 });
  fc.assert(fc.property(list, (segments) => {
    const found = new Set(segmentCrossings(segments, all).map(({ a, b }) => `${a} ${b}`));
    segments.forEach((one, a) => segments.slice(a + 1).forEach((other, k) => {
      const [across, back] = [parts(one.from, one.to, other), parts(other.from, other.to, one)];
      // Pairs that barely touch may go either way.
      if (Math.min(Math.abs(across), Math.abs(back)) < 1e-6) return;
      expect(found.has(`${a} ${a + 1 + k}`)).toBe(across < 0 && back < 0);
    }));
  }), { numRuns: 100, seed: 4 });
});
