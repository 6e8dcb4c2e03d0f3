import { expect, it } from 'vitest';
import fitWidth from '../../nodes/fit-width.ts';
import { arrangementBox } from '../../src/artwork/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

const strokes = [{ path: line([10, 5], [30, 25]), width: 4 }, { path: circle(50, 5, 10) }];

it('brings the box of all centre lines to the finished width and keeps its proportion', () => {
  const fitted = outputsOf(fitWidth, { strokes, outlines: undefined }, { finishedWidth: 500 });
  const before = arrangementBox({ strokes, outlines: [] })!;
  const after = arrangementBox(fitted)!;
  expect(after.maxX - after.minX).toBeCloseTo(500, 9);
  expect((after.maxY - after.minY) / 500).toBeCloseTo((before.maxY - before.minY) / (before.maxX - before.minX), 12);
});

it('scales the pen with the drawing', () => {
  expect(outputsOf(fitWidth, { strokes, outlines: undefined }, { finishedWidth: 500 }).strokes[0]!.width).toBeCloseTo(40, 9);
});

it('leaves everything as drawn at 0', () => {
  expect(outputsOf(fitWidth, { strokes, outlines: undefined }, { finishedWidth: 0 }).strokes).toEqual(strokes);
});

it('scales outlines by the same factor as strokes', () => {
  const outlines = [{ paths: [line([0, 0], [60, 0], [60, 10], [0, 0])], fillRule: 'nonzero' as const }];
  const fitted = outputsOf(fitWidth, { strokes, outlines }, { finishedWidth: 120 });
  expect(fitted.outlines[0]!.paths[0]!.segments[1]!.end).toEqual({ x: 120, y: 20 });
  expect(fitted.strokes[0]!.path.start).toEqual({ x: 20, y: 10 });
});

it('refuses lettering without width, and nothing at all', () => {
  expect(problemsOf(fitWidth, { strokes: [{ path: line([5, 0], [5, 90]) }], outlines: undefined }, { finishedWidth: 100 })[0]).toMatchObject({ place: 'finishedWidth' });
  expect(problemsOf(fitWidth, { strokes: undefined, outlines: undefined })[0]).toMatchObject({ found: 'neither' });
});
