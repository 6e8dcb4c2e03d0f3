import { expect, it } from 'vitest';
import { circleCrossings, rowCrossings } from '../../src/machining/proof/region-rows.ts';

const points = (...xy: readonly (readonly [number, number])[]) => xy.map(([x, y]) => ({ x, y }));

it('A row through vertices and along level edges crosses a region in pairs', () => {
  const diamond = rowCrossings({ loops: [points([0, 0], [2, 2], [0, 4], [-2, 2])] });
  expect([-1, 0, 1, 2, 3, 4, 5].map((y) => diamond(y).map(Number))).toEqual([[], [0, 0], [-1, 1], [-2, 2], [-1, 1], [], []]);
  const step = rowCrossings({ loops: [points([0, 0], [4, 0], [4, 1], [2, 1], [2, 2], [0, 2])] });
  expect([0, 0.5, 1, 1.5, 2].map((y) => step(y))).toEqual([[0, 4], [0, 4], [0, 2], [0, 2], []]);
});

it('A row through a region with a hole crosses both', () => {
  const frame = rowCrossings({ loops: [points([0, 0], [9, 0], [9, 9], [0, 9]), points([3, 3], [3, 6], [6, 6], [6, 3])] });
  expect([1, 4, 8].map((y) => frame(y))).toEqual([[0, 9], [0, 3, 6, 9], [0, 9]]);
});

it('Circles that overlap are crossed as their union', () => {
  const circle = (x: number, diameter: number) => ({ centre: { x, y: 0 }, diameter });
  expect(circleCrossings([circle(10, 2), circle(0, 4), circle(1, 4), circle(0, 2), circle(0, 4)], 0)).toEqual([-2, 3, 9, 11]);
  expect(circleCrossings([circle(0, 4)], 2.5)).toEqual([]);
});
