import { describe, expect, it } from 'vitest';
import { boxHolds, intersectBoxes, nearestOnSegment, shiftBox } from '../../src/geometry/index.ts';

const box = { minX: 0, minY: 0, maxX: 4, maxY: 2 };

describe('boxes', () => {
  it('share what lies in both, an edge too, and nothing apart', () => {
    expect(intersectBoxes(box, shiftBox(box, 3, 1))).toEqual({ minX: 3, minY: 1, maxX: 4, maxY: 2 });
    expect(intersectBoxes(box, shiftBox(box, 4, 0))).toEqual({ minX: 4, minY: 0, maxX: 4, maxY: 2 });
    expect(intersectBoxes(box, shiftBox(box, 4.1, 0))).toBeUndefined();
  });

  it('hold their edge, and what is no farther out than allowed', () => {
    expect([{ x: 4, y: 2 }, { x: 4.01, y: 2 }, { x: 2, y: -0.01 }].map((point) => [boxHolds(box, point), boxHolds(box, point, 0.02)])).toEqual([[true, true], [false, true], [false, true]]);
  });
});

it.each([[[2, 3], [2, 0]], [[-5, 1], [0, 0]], [[9, -1], [4, 0]]] as const)('the place of a segment nearest to %j is %j', ([x, y], [nearX, nearY]) => {
  expect(nearestOnSegment({ x: 0, y: 0 }, { x: 4, y: 0 }, { x, y })).toEqual({ x: nearX, y: nearY });
  expect(nearestOnSegment({ x: 1, y: 1 }, { x: 1, y: 1 }, { x, y })).toEqual({ x: 1, y: 1 });
});
