import { expect, it } from 'vitest';
import { beyondCapsule, type Capsule, capsuleSpan } from '../../src/machining/proof/capsule.ts';
import { capsuleCrossings, rowCrossings } from '../../src/machining/proof/region-rows.ts';

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
  const circle = (x: number, diameter: number): Capsule => ({ ends: [{ x, y: 0 }, { x, y: 0 }], radius: diameter / 2 });
  expect(capsuleCrossings([circle(10, 2), circle(0, 4), circle(1, 4), circle(0, 2), circle(0, 4)], 0)).toEqual([-2, 3, 9, 11]);
  expect(capsuleCrossings([circle(0, 4)], 2.5)).toEqual([]);
});

it.each([0, 17, 90, 135, 180])('A slot at %i degrees is crossed where its edge is, and nowhere else', (degrees) => {
  const [ux, uy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const slot: Capsule = { ends: [{ x: 3 - 4 * ux, y: 1 - 4 * uy }, { x: 3 + 4 * ux, y: 1 + 4 * uy }], radius: 2 };
  let crossed = 0;
  for (let y = -6; y <= 8; y += 0.05) {
    const span = capsuleSpan(slot, y);
    if (!span) {
      for (let x = -6; x <= 12; x += 0.5) expect(beyondCapsule(slot, { x, y })).toBeGreaterThan(-1e-9);
      continue;
    }
    crossed++;
    for (const x of span) expect(Math.abs(beyondCapsule(slot, { x, y }))).toBeLessThan(1e-9);
    expect(beyondCapsule(slot, { x: (span[0] + span[1]) / 2, y })).toBeLessThan(0);
  }
  // As high as the slot: 8 mm between its ends' middles, 4 mm wide.
  expect(crossed * 0.05).toBeCloseTo(4 + 8 * Math.abs(uy), 0);
});
