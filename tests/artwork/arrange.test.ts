import { describe, expect, it } from 'vitest';
import { type Stroke, transformArrangement } from '../../src/artwork/index.ts';
import { type Affine, applyToPoint, multiply, pathLength, rotation, samplePath, scaling, translation } from '../../src/geometry/index.ts';
import { arc } from '../lettering/edit/common.ts';

const path = arc({ x: 10, y: 20 }, 30, 0, 200);
const length = pathLength(path);
const traced: Stroke = {
  path, width: 6, source: 'a', confidence: 0.4, doubts: [{ at: { x: 40, y: 20 }, says: 'unsure' }],
  widths: Array.from({ length: 9 }, (_, i) => ({ along: (length * i) / 8, width: 4 + i })),
};
const moved = (stroke: Stroke, m: Affine) => transformArrangement({ strokes: [stroke], outlines: [] }, m).strokes[0]!;

describe.each([['turned', rotation(33), 1], ['mirrored and shifted', multiply(translation(5, 900), scaling(-1, 1)), 1], ['scaled', scaling(2.5), 2.5]] as const)('a traced stroke %s', (_, m, factor) => {
  const after = moved(traced, m);
  it('keeps what was traced, places and sizes with it', () => {
    expect(after).toMatchObject({ source: 'a', confidence: 0.4, doubts: [{ at: applyToPoint(m, { x: 40, y: 20 }), says: 'unsure' }] });
    expect(after.width).toBeCloseTo(6 * factor, 9);
    expect(after.widths!.at(-1)!.along).toBeCloseTo(pathLength(after.path), 6);
  });
  it('has each width at the place where it was', () => {
    after.widths!.forEach(({ along, width }, i) => {
      expect(width).toBeCloseTo(traced.widths![i]!.width * factor, 9);
      const was = samplePath(path, length / 8)[i]!.point;
      const is = samplePath(after.path, pathLength(after.path) / 8).map(({ point }) => point)[Math.round((along / pathLength(after.path)) * 8)]!;
      const there = applyToPoint(m, was);
      expect(Math.hypot(is.x - there.x, is.y - there.y)).toBeLessThan(1e-6);
    });
  });
});

it('reaches to the ends with its widths where it is scaled unevenly', () => {
  const after = moved(traced, scaling(3, 1));
  expect(after.widths!.at(-1)!.along).toBeCloseTo(pathLength(after.path), 6);
});

it('leaves behind what speaks of other strokes, and adds nothing that was not there', () => {
  const more: Stroke & { ends: unknown } = { path, ends: [] };
  expect(Object.keys(moved(more, rotation(5)))).toEqual(['path']);
});
