import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../../src/artwork/index.ts';
import { distance, pathEnd, pathLength, scaling } from '../../../src/geometry/index.ts';
import { trimEnds } from '../../../src/lettering/index.ts';
import { circle, line } from '../../support/shapes.ts';
import { apart, arc, greatestBreak, moved, paths, reversedAll, shuffled, SIMILARITIES } from './common.ts';

type Options = Parameters<typeof trimEnds>[1];
const OPTIONS: Options = { length: 5, ends: 'free', course: 'straight', vanishing: 'keep', reach: 0.2 };
const trim = (strokes: readonly Stroke[], options: Partial<Options> = {}) => trimEnds(strokes, { ...OPTIONS, ...options });

/** A stem, a bar that ends on it, an arc, two strokes that meet in a corner, a ring, a point. */
const MIXED: Stroke[] = [line([0, 0], [0, 100]), line([0, 50], [60, 50]), arc({ x: 150, y: 0 }, 30, 0, 120), line([200, 0], [240, 0]), line([240, 0], [240, 40]), circle(300, 0, 20),
  { start: { x: 400, y: 0 }, segments: [], closed: false } as const].map((path) => ({ path }));

it('changes free ends alone, by the length that is stated', () => {
  for (const length of [5, -5]) {
    const { strokes, ends } = trim(MIXED, { length });
    expect(ends).toBe(7);
    expect(strokes.map(({ path }, i) => Math.round((pathLength(path) - pathLength(MIXED[i]!.path)) * 1e6) / 1e6)).toEqual([2 * length, length, 2 * length, length, length, 0, 0]);
    expect(strokes[1]!.path.start).toEqual({ x: 0, y: 50 });
    expect(strokes.slice(5)).toEqual(MIXED.slice(5));
    for (const { path } of [strokes[0]!, strokes[2]!]) expect(greatestBreak(path)).toBeLessThan(1e-6);
  }
});

it('changes all ends where that is asked for', () => {
  const { strokes, ends } = trim(MIXED, { ends: 'all' });
  expect(ends).toBe(10);
  expect(strokes[1]!.path).toEqual(line([-5, 50], [65, 50]));
});

it('takes an arc on along its own circle when it goes on with the bend, and along its tangent when straight', () => {
  const [bent] = trim([MIXED[2]!], { course: 'bend', length: 10 }).strokes;
  const turn = ((10 / 30) * 180) / Math.PI;
  expect(apart([bent!.path], [arc({ x: 150, y: 0 }, 30, -turn, 120 + turn)])).toBeLessThan(3e-5);
  const [straight] = trim([MIXED[2]!], { length: 10 }).strokes;
  expect(straight!.path.start.x).toBeCloseTo(180, 9);
  expect(straight!.path.start.y).toBeCloseTo(-10, 9);
});

it('never curls up: a tight bend goes on by a quarter turn at most', () => {
  const hook: Stroke = { path: arc({ x: 0, y: 0 }, 2, 0, 180) };
  const { strokes: [one] } = trim([hook], { course: 'bend', length: 40 });
  expect(distance(pathEnd(one!.path), { x: -2, y: 0 })).toBeCloseTo((40 * Math.SQRT2) / (Math.PI / 2), 6);
  expect(greatestBreak(one!.path)).toBeLessThan(1e-6);
});

it.each(['keep', 'drop'] as const)('names strokes of which nothing would be left, and does as told: %s', (vanishing) => {
  const list: Stroke[] = [{ path: line([0, 0], [8, 0]) }, { path: line([0, 20], [80, 20]) }];
  const { strokes, vanished, ends } = trim(list, { length: -4, vanishing });
  expect(vanished).toEqual([{ stroke: 0, at: { x: 0, y: 0 } }]);
  const wanted = [...(vanishing === 'keep' ? [list[0]!.path] : []), line([4, 20], [76, 20])];
  expect(strokes).toHaveLength(wanted.length);
  expect(apart(paths(strokes), wanted)).toBeLessThan(1e-9);
  expect(ends).toBe(2);
});

it('undoes what it did: longer, then shorter by as much', () => {
  const there = trim(MIXED, { length: 7, ends: 'all', course: 'bend' }).strokes;
  expect(apart(paths(trim(there, { length: -7, ends: 'all' }).strokes), paths(MIXED))).toBeLessThan(3e-5);
});

it('carries widths, drops doubts about what is gone, keeps all else', () => {
  const [near, far] = [{ at: { x: 2, y: 3 }, says: 'near its start' }, { at: { x: 50, y: -2 }, says: 'midway' }];
  const stroke: Stroke = { path: line([0, 0], [100, 0]), widths: [{ along: 0, width: 4 }, { along: 100, width: 14 }], doubts: [near, far], confidence: 0.5, source: 'a', width: 9 };
  const [shorter] = trim([stroke], { length: -10 }).strokes;
  expect(shorter).toEqual({ ...stroke, path: shorter!.path, widths: [{ along: 0, width: 5 }, { along: 80, width: 13 }], doubts: [far] });
  expect(trim([stroke], { length: 10 }).strokes[0]).toEqual({
    ...stroke, path: line([-10, 0], [110, 0]), widths: [{ along: 0, width: 4 }, { along: 10, width: 4 }, { along: 110, width: 14 }, { along: 120, width: 14 }],
  });
});

describe.each([8, -8])('by %d mm does not depend on', (length) => {
  const before = paths(trim(MIXED, { length, course: 'bend' }).strokes);
  it.each(SIMILARITIES)('where strokes lie: %s', (_, m) => {
    expect(apart(paths(trim(moved(MIXED, m), { length, course: 'bend' }).strokes), paths(moved(before.map((path) => ({ path })), m)))).toBeLessThan(3e-5);
  });
  it.each([['direction', reversedAll], ['order and direction', shuffled]] as const)('their %s', (_, change) => {
    expect(apart(paths(trim(change(MIXED), { length, course: 'bend' }).strokes), before)).toBeLessThan(3e-5);
  });
  it('their size, when lengths grow with them', () => {
    const after = trim(moved(MIXED, scaling(4)), { length: 4 * length, course: 'bend', reach: 0.8 }).strokes;
    expect(apart(paths(after), paths(moved(before.map((path) => ({ path })), scaling(4))))).toBeLessThan(1e-4);
  });
});

it('has no trouble with nothing, or thousands of strokes', () => {
  expect(trim([])).toEqual({ strokes: [], ends: 0, vanished: [] });
  const many = Array.from({ length: 3000 }, (_, i): Stroke => ({ path: line([(i % 60) * 50, Math.floor(i / 60) * 50], [(i % 60) * 50 + 30, Math.floor(i / 60) * 50 + 10]) }));
  expect(trim(many).ends).toBe(6000);
});
