import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../../src/artwork/index.ts';
import { distance, pathEnd, pathLength, polylinePath, scaling } from '../../../src/geometry/index.ts';
import { joinStrokes } from '../../../src/lettering/index.ts';
import { seeded } from '../../support/random.ts';
import { line } from '../../support/shapes.ts';
import { apart, arc, greatestBreak, moved, paths, reversedAll, shuffled, SIMILARITIES } from './common.ts';

/** Distances are measured to chords this far from the curves at most, mm. */
const MEASURED = 2e-5;

const LIMITS = { gap: 2, angle: 30, blend: 5, margin: 3 };
const joined = (strokes: readonly Stroke[], limits: Partial<typeof LIMITS> = {}) => joinStrokes(strokes, { ...LIMITS, ...limits });
const strokes = (...list: Stroke['path'][]): Stroke[] => list.map((path) => ({ path }));

/** A crossing of 40 degrees in four arms, a circle in two halves, a bend of 20 degrees, a stroke alone, a dot. */
const MIXED: Stroke[] = [
  ...strokes(line([0, 0], [40, 0]), line([40.4, 0.1], [80, 0]), line([40.2, 0.3], [70, 25.3]), line([40, 0], [10, -25.2])),
  ...strokes(arc({ x: 150, y: 0 }, 30, 1.5, 178.5), arc({ x: 150, y: 0 }, 30, 181.5, 358.5)),
  ...strokes(line([0, 100], [50, 100]), line([51, 100.2], [98, 117]), line([200, 200], [230, 200])),
  { path: { start: { x: 5, y: 5 }, segments: [], closed: false } },
];

it('makes one line of two that touch, and keeps it a line', () => {
  const { strokes: [one, ...others], joins } = joined(strokes(line([0, 0], [40, 0]), line([41, 0], [80, 0])));
  expect(others).toEqual([]);
  expect(one!.path).toEqual(line([0, 0], [80, 0]));
  expect(joins).toMatchObject([{ gap: 1, confidence: 1 }]);
});

it('pairs the arms of a crossing by the smallest turn, bends what bends, closes what is round', () => {
  const { strokes: found, undecided } = joined(MIXED);
  expect(found).toHaveLength(6);
  expect(undecided).toEqual([]);
  expect(distance(found[0]!.path.start, pathEnd(found[0]!.path))).toBeCloseTo(80, 6);
  expect(found.map(({ path }) => path.closed)).toEqual([false, false, true, false, false, false]);
  for (const { path } of found) expect(greatestBreak(path)).toBeLessThan(1e-4);
});

it('closes an almost whole circle on the circle itself', () => {
  const { strokes: [ring] } = joined(strokes(arc({ x: 0, y: 0 }, 30, 2, 358)), { gap: 3 });
  expect(ring!.path.closed).toBe(true);
  expect(pathEnd(ring!.path)).toEqual(ring!.path.start);
  expect(apart([ring!.path], [arc({ x: 0, y: 0 }, 30, 0, 359.999)])).toBeLessThan(1e-3);
});

it('takes the bend of both strokes into account: a small ring in pieces is closed although a straight bridge would turn', () => {
  const pieces = strokes(arc({ x: 0, y: 0 }, 8, 5, 115), arc({ x: 0, y: 0 }, 8, 125, 235), arc({ x: 0, y: 0 }, 8, 245, 355));
  const { strokes: [ring, ...others] } = joined(pieces, { angle: 10, blend: 3 });
  expect(others).toEqual([]);
  expect(ring!.path.closed).toBe(true);
  expect(apart([ring!.path], [arc({ x: 0, y: 0 }, 8, 0, 359.999)])).toBeLessThan(0.01);
});

it('leaves what turns too sharply or lies too far apart', () => {
  expect(joined(strokes(line([0, 0], [40, 0]), line([40, 0], [40, 40]))).joins).toEqual([]);
  expect(joined(strokes(line([0, 0], [40, 0]), line([42.5, 0], [80, 0]))).joins).toEqual([]);
  expect(joined(strokes(line([0, 0], [1.5, 0]))).strokes[0]!.path.closed).toBe(false);
});

it('joins neither of two partners that are alike, whatever the order, and says where', () => {
  const fork = strokes(line([0, 0], [40, 0]), line([40, 0], [80, 10]), line([40, 0], [80, -10]));
  for (const list of [fork, shuffled(fork), reversedAll(fork)]) {
    const { joins, undecided } = joined(list, { margin: 0 });
    expect(joins).toEqual([]);
    expect(undecided).toEqual([{ x: 40, y: 0 }]);
  }
});

it('lets a better pair go first, which leaves the second clear', () => {
  // The third stroke alone would be joined to the first; but that one has a better partner.
  const list = strokes(line([0, 0], [40, 0]), line([40, 0], [80, 1]), line([40, 0], [80, 14]));
  expect(joined(list).strokes).toHaveLength(2);
  expect(joined([list[0]!, list[2]!]).strokes).toHaveLength(1);
});

describe('does not depend on', () => {
  const before = paths(joined(MIXED).strokes);
  it.each(SIMILARITIES)('where strokes lie: %s', (_, m) => {
    expect(apart(paths(joined(moved(MIXED, m)).strokes), paths(moved(before.map((path) => ({ path })), m)))).toBeLessThan(MEASURED);
  });
  it('their size, when limits grow with them', () => {
    const m = scaling(7);
    const after = joined(moved(MIXED, m), { gap: 14, blend: 35 }).strokes;
    expect(apart(paths(after), paths(moved(before.map((path) => ({ path })), m)))).toBeLessThan(7 * MEASURED);
  });
  it.each([['direction', reversedAll], ['order and direction', shuffled]] as const)('their %s', (_, change) => {
    const after = joined(change(MIXED)).strokes;
    expect(after).toHaveLength(before.length);
    expect(apart(paths(after), before)).toBeLessThan(MEASURED);
  });
});

it('carries widths, the least confidence, doubts and sources along', () => {
  const doubt = { at: { x: 10, y: 0 }, says: 'unsure' };
  const a: Stroke = { path: line([0, 0], [40, 0]), widths: [{ along: 0, width: 4 }, { along: 40, width: 8 }], confidence: 0.9, doubts: [doubt], source: 'a' };
  const b: Stroke = { path: line([80, 0], [41, 0]), widths: [{ along: 0, width: 2 }, { along: 39, width: 8 }], confidence: 0.4, source: 'b' };
  const { strokes: [one] } = joined([a, b]);
  expect(one).toMatchObject({ confidence: 0.4, doubts: [doubt], source: 'a and b' });
  const { widths } = one!;
  expect(widths![0]).toEqual({ along: 0, width: 4 });
  expect(widths!.at(-1)!.along).toBeCloseTo(pathLength(one!.path), 9);
  expect(widths!.at(-1)!.width).toBe(2);
  expect(widths!.every(({ along }, i) => i === 0 || along >= widths![i - 1]!.along)).toBe(true);
  expect(joined([a, { path: b.path }]).strokes[0]).not.toHaveProperty('widths');
});

it('has no trouble with nothing, dots, or thousands of pieces', () => {
  expect(joined([])).toEqual({ strokes: [], joins: [], undecided: [] });
  const dot: Stroke = { path: { start: { x: 1, y: 1 }, segments: [], closed: false } };
  expect(joined([dot, dot]).strokes).toEqual([dot, dot]);
  const random = seeded(3);
  const rows = Array.from({ length: 60 }, (_, row) => Array.from({ length: 100 }, (_, k) => line([k * 20, row * 30], [k * 20 + 19 + random() * 0.5, row * 30])));
  const { strokes: found } = joined(strokes(...rows.flat()));
  expect(found).toHaveLength(60);
  expect(found.every(({ path }) => path.segments.length === 1)).toBe(true);
});

it('is not led astray by small noise on the drawn line', () => {
  const random = seeded(11);
  const noisy = (from: number, to: number) => polylinePath(Array.from({ length: 81 }, (_, i) => ({ x: from + ((to - from) * i) / 80, y: 0.02 * (random() - 0.5) })), false);
  expect(joined(strokes(noisy(0, 40), noisy(41, 80), line([40.5, 1], [60, 30]))).strokes).toHaveLength(2);
});
