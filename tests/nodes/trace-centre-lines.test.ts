import { expect, it } from 'vitest';
import traceCentreLines from '../../nodes/trace-centre-lines.ts';
import type { Outline } from '../../src/artwork/index.ts';
import { pathEnd, pathLength, polylinePath } from '../../src/geometry/index.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';

const outline = (...loops: (readonly [number, number])[][]): Outline =>
  ({ paths: loops.map((loop) => polylinePath(loop.map(([x, y]) => ({ x, y })), true)), fillRule: 'evenodd' });
const box = (x: number, y: number, width: number, height: number): (readonly [number, number])[] => [[x, y], [x + width, y], [x + width, y + height], [x, y + height]];

const ring = (radius: number) => Array.from({ length: 180 }, (_, i) => [100 + radius * Math.cos(i * Math.PI / 90), radius * Math.sin(i * Math.PI / 90)] as const);
const star = Array.from({ length: 10 }, (_, i) => [200 + (i % 2 ? 15 : 40) * Math.cos(i * Math.PI / 5), (i % 2 ? 15 : 40) * Math.sin(i * Math.PI / 5)] as const);

it('finds the mid line of a bar: a rectangle\'s medial axis (Blum 1967), with the round end of a pen half a width from the edge', () => {
  const { strokes, rest, quantities } = outputsOf(traceCentreLines, { outlines: [outline(box(0, 0, 100, 10))] });
  expect(strokes).toHaveLength(1);
  expect(rest).toEqual([]);
  expect(quantities.tracedStrokes!.value).toBe(1);
  const [{ path }] = strokes as [typeof strokes[0]];
  for (const { x, y } of [path.start, pathEnd(path)]) {
    expect(Math.abs(y - 5)).toBeLessThan(0.05);
    expect(Math.min(Math.abs(x - 5), Math.abs(x - 95))).toBeLessThan(0.15);
  }
});

it('finds one closed stroke in a ring, as long as the circle midway', () => {
  const { strokes } = outputsOf(traceCentreLines, { outlines: [outline([...ring(30)], [...ring(20)])] });
  expect(strokes.map(({ path }) => path.closed)).toEqual([true]);
  expect(Math.abs(pathLength(strokes[0]!.path) / (50 * Math.PI) - 1)).toBeLessThan(0.005);
});

it('leaves a shape that is no stroke as it was, and says so', () => {
  const outcome = outcomeOf(traceCentreLines, { outlines: [outline(box(0, 0, 100, 10)), outline(star)] });
  if (!outcome.ok) throw new Error('expected a result');
  expect(outcome.outputs.strokes).toHaveLength(1);
  expect(outcome.outputs.rest).toHaveLength(1);
  expect(outcome.cautions?.[0]).toMatchObject({ expected: 'strokes' });
});

it('says what to do when there is nothing to trace', () => {
  expect(problemsOf(traceCentreLines, { outlines: [] })[0]).toMatchObject({ found: '0 outlines without area' });
  expect(problemsOf(traceCentreLines, { outlines: [outline(star)] })[0]!.found).toContain('no strokes');
});

it('tells the smallest margin, which a single bar is far above', () => {
  const { checks } = outputsOf(traceCentreLines, { outlines: [outline(box(0, 0, 100, 10))] }, { leastConfidence: 0.2 });
  expect(checks).toMatchObject([{ check: 'tracing-confidence', status: 'pass', limit: 0.2 }, { check: 'lettering-without-stroke', status: 'pass', value: 0 }]);
  // Three like arms, 120 degrees apart: any two of them could be one stroke.
  const arm = (turn: number) => box(0, -5, 60, 10).map(([x, y]) => [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)] as const);
  const three = [0, 1, 2].map((k) => arm((k * 2 * Math.PI) / 3));
  const unsure = outputsOf(traceCentreLines, { outlines: [{ ...outline(...three), fillRule: 'nonzero' }] }, { leastConfidence: 0.2 }).checks[0]!;
  expect(unsure.status).toBe('caution');
  expect(Math.hypot(...unsure.at!)).toBeLessThan(10);
});
