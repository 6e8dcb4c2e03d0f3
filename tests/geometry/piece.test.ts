import { expect, it } from 'vitest';
import { distance, pathEnd, pathLength, pathPiece, type Path, samplePath } from '../../src/geometry/index.ts';
import { circle, line } from '../support/shapes.ts';

const MIXED: Path = {
  start: { x: 0, y: 0 }, closed: false,
  segments: [
    { kind: 'line', end: { x: 10, y: 0 } }, { kind: 'arc', end: { x: 20, y: 10 }, centre: { x: 10, y: 10 }, clockwise: false },
    { kind: 'cubic', control1: { x: 20, y: 20 }, control2: { x: 40, y: 10 }, end: { x: 40, y: 30 } },
  ],
};

const SAMPLES = samplePath(MIXED, 0.001);

it.each([[0, 5], [3, 12], [10, 25.707963267948966], [12, 40], [26, 44]])('takes the piece from %d to %d mm, as long as that, off the path it came from', (from, to) => {
  const piece = pathPiece(MIXED, from, to);
  expect(pathLength(piece)).toBeCloseTo(to - from, 7);
  for (const [point, along] of [[piece.start, from], [pathEnd(piece), to]] as const) {
    const nearest = SAMPLES.reduce((a, b) => (Math.abs(b.distance - along) < Math.abs(a.distance - along) ? b : a));
    expect(distance(nearest.point, point)).toBeLessThan(0.001);
  }
});

it('gives the whole path back between its ends, or beyond them, untouched', () => {
  expect(pathPiece(MIXED, -1, 1e6)).toEqual(MIXED);
  expect(pathPiece(line([0, 0], [4, 0]), 0, 4)).toEqual(line([0, 0], [4, 0]));
});

it('opens a closed path where it starts', () => {
  const piece = pathPiece(circle(0, 0, 10), 5 * Math.PI, 15 * Math.PI);
  expect(piece.closed).toBe(false);
  expect(piece.start.y).toBeCloseTo(10, 9);
  expect(pathEnd(piece).y).toBeCloseTo(-10, 9);
});

it('gives a single place for a piece of no length', () => {
  expect(pathLength(pathPiece(MIXED, 5, 5))).toBe(0);
});
