import { expect, it } from 'vitest';
import place from '../../nodes/place.ts';
import { arrangementBox } from '../../src/artwork/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { line, stock } from '../support/shapes.ts';

const strokes = [{ path: line([-7, 3], [93, 3], [93, 43]) }];
const inputs = { strokes, outlines: undefined, stock };

it('puts the middle of the lettering on the middle of the sheet', () => {
  expect(arrangementBox(outputsOf(place, inputs))).toEqual({ minX: 250, maxX: 350, minY: 130, maxY: 170 });
});

it('puts its lower left corner on the sheet\'s, then shifts', () => {
  expect(arrangementBox(outputsOf(place, inputs, { anchor: 'lower left corner', right: 12, up: -3 }))).toEqual({ minX: 12, maxX: 112, minY: -3, maxY: 37 });
});

it('turns before it places', () => {
  const box = arrangementBox(outputsOf(place, inputs, { turn: 90 }))!;
  expect([box.minX, box.maxX, box.minY, box.maxY]).toEqual([280, 320, 100, 200].map((v) => expect.closeTo(v, 9) as number));
});

it('turns counter-clockwise', () => {
  const { strokes: [stroke] } = outputsOf(place, inputs, { turn: 90 });
  expect(stroke!.path.segments[0]!.end.y).toBeGreaterThan(stroke!.path.start.y);
});
