import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../../src/artwork/index.ts';
import { distance, pathEnd, pathLength, type Point, polylinePath, samplePath, scaling } from '../../../src/geometry/index.ts';
import { smoothStrokes } from '../../../src/lettering/index.ts';
import { seeded } from '../../support/random.ts';
import { circle, line } from '../../support/shapes.ts';
import { apart, arc, greatestBreak, moved, oneWay, paths, reversedAll, shuffled, SIMILARITIES } from './common.ts';

const OPTIONS = { length: 8, most: 0.5, corner: 40, tolerance: 0.02, reach: 0.2 };
const smooth = (strokes: readonly Stroke[], options: Partial<typeof OPTIONS> = {}) => smoothStrokes(strokes, { ...OPTIONS, ...options });
const strokeOf = (points: readonly Point[], closed = false): Stroke => ({ path: polylinePath(points, closed) });

/** A line with a wave of a height across it, mm. */
const wavy = (wave: number, height: number, length = 120): Stroke =>
  strokeOf(Array.from({ length: 961 }, (_, i) => ({ x: (length * i) / 960, y: height * Math.sin((2 * Math.PI * length * i) / 960 / wave) })));

const heightOf = ({ path }: Stroke) => samplePath(path, 0.2).filter(({ point }) => point.x > 40 && point.x < 80).reduce((most, { point }) => Math.max(most, Math.abs(point.y)), 0);

const trembling = (seed: number, size: number): Stroke => {
  const random = seeded(seed);
  return strokeOf(Array.from({ length: 400 }, (_, i) => ({ x: 0.3 * i + size * (random() - 0.5), y: 20 * Math.sin(0.3 * i / 20) + size * (random() - 0.5) })));
};

it.each([[8, 0.5], [4, 0.03], [16, 1]])('of a wave of %d mm leaves the share %d, with a smoothing length of 8 mm', (wave, share) => {
  const { strokes: [one] } = smooth([wavy(wave, 0.2)], { tolerance: 0.002 });
  expect(Math.abs(heightOf(one!) / 0.2 - share)).toBeLessThan(0.03);
});

it('leaves straight lines, arcs and circles just as they are, small ones too', () => {
  const plain = [line([0, 0], [200, 30]), circle(0, 0, 3), circle(0, 0, 60), arc({ x: 0, y: 0 }, 10, 0, 200)].map((path): Stroke => ({ path }));
  const { strokes, changed, departure } = smooth(plain);
  expect(strokes).toEqual(plain);
  expect([changed, departure]).toEqual([0, undefined]);
});

it('gives a circle of many corners back its round, its radius within the tolerance', () => {
  const random = seeded(5);
  const rough = strokeOf(Array.from({ length: 360 }, (_, i) => {
    const r = 15 + 0.1 * (random() - 0.5);
    return { x: r * Math.cos((i * Math.PI) / 180), y: r * Math.sin((i * Math.PI) / 180) };
  }), true);
  const { strokes: [round] } = smooth([rough]);
  const radii = samplePath(round!.path, 0.5).map(({ point }) => Math.hypot(point.x, point.y));
  expect(Math.abs(radii.reduce((a, b) => a + b) / radii.length - 15)).toBeLessThan(0.02);
  expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(0.06);
  expect(round!.path.closed).toBe(true);
  expect(greatestBreak(round!.path)).toBeLessThan(0.01);
});

it.each([0.03, 0.3])('never departs by more than %d mm, either way', (most) => {
  for (const stroke of [wavy(6, 0.8), trembling(7, 0.3), wavy(3, 0.25), strokeOf([{ x: 0, y: 0 }, { x: 5, y: 3 }, { x: 9, y: 0 }, { x: 14, y: 3 }, { x: 20, y: 0 }])]) {
    const { strokes: [one], departure } = smooth([stroke], { most });
    const measured = apart([one!.path], [stroke.path]);
    expect(measured).toBeLessThanOrEqual(most);
    if (departure) expect(Math.abs(departure.distance - measured)).toBeLessThan(Math.max(0.25 * most, 0.004));
  }
});

it('does what it may where it may not do all', () => {
  const { strokes: [one], departure } = smooth([wavy(3, 0.25)], { most: 0.1 });
  expect(departure!.distance).toBeGreaterThan(0.05);
  expect(heightOf(one!)).toBeLessThan(0.21);
});

it('runs on smoothly and closer to what was meant than what trembled', () => {
  const shaky = trembling(3, 0.3);
  const meant = polylinePath(Array.from({ length: 1200 }, (_, i) => ({ x: 0.1 * i, y: 20 * Math.sin(0.1 * i / 20) })), false);
  const { strokes: [one] } = smooth([shaky]);
  expect(greatestBreak(one!.path)).toBeLessThan(0.01);
  // The very ends stay where they trembled to.
  const inner = (path: Stroke['path']) => polylinePath(samplePath(path, 0.1).map(({ point }) => point).filter(({ x }) => x > 6 && x < 114), false);
  expect(oneWay([inner(one!.path)], [meant])).toBeLessThan(0.4 * oneWay([inner(shaky.path)], [meant]));
  expect(one!.path.segments.length).toBeLessThan(40);
});

it('keeps ends, corners, and places where others end', () => {
  const wave = wavy(8, 0.4);
  const at = samplePath(wave.path, 0.05)[1010]!.point;
  const lands: Stroke = { path: line([at.x, at.y], [at.x, 40]) };
  const corner: Stroke = { path: line([0, 60], [50, 60], [50, 110], [90, 70]) };
  const { strokes: [one, two, three] } = smooth([wave, lands, corner]);
  expect([one!.path.start, pathEnd(one!.path)]).toEqual([wave.path.start, pathEnd(wave.path)]);
  expect(oneWay([{ start: at, segments: [], closed: false }], [one!.path])).toBeLessThan(0.025);
  expect(heightOf(one!)).toBeGreaterThan(0.1);
  expect([two, three]).toEqual([lands, corner]);
});

it('keeps the sharp corners of a trembling line, and rounds the blunt ones', () => {
  const random = seeded(9);
  const noise = () => 0.1 * (random() - 0.5);
  const along = (from: Point, to: Point) => Array.from({ length: 100 }, (_, i) => ({ x: from.x + ((to.x - from.x) * i) / 100 + noise(), y: from.y + ((to.y - from.y) * i) / 100 + noise() }));
  const [a, b, c, d] = [{ x: 0, y: 0 }, { x: 40, y: 0 }, { x: 40, y: 40 }, { x: 60, y: 75 }];
  const { strokes: [one] } = smooth([strokeOf([...along(a, b), b, ...along(b, c).slice(1), ...along(c, d), d])]);
  const breaks = one!.path.segments.slice(1).map((_, i) => greatestBreak({ start: i === 0 ? one!.path.start : one!.path.segments[i - 1]!.end, segments: one!.path.segments.slice(i, i + 2), closed: false }));
  expect(breaks.filter((degrees) => degrees > 5)).toHaveLength(1);
  expect(oneWay([{ start: b, segments: [], closed: false }], [one!.path])).toBeLessThan(0.15);
});

describe('does not depend on', () => {
  const list = [wavy(7, 0.3), trembling(4, 0.2), strokeOf(Array.from({ length: 90 }, (_, i) => ({ x: 300 + (20 + 0.3 * (i % 2)) * Math.cos((i * Math.PI) / 45), y: 20 * Math.sin((i * Math.PI) / 45) })), true)];
  const before = paths(smooth(list).strokes);
  const agree = 0.045;
  it.each(SIMILARITIES)('where strokes lie: %s', (_, m) => {
    expect(apart(paths(smooth(moved(list, m)).strokes), paths(moved(before.map((path) => ({ path })), m)))).toBeLessThan(1e-3);
  });
  it('their size, when lengths grow with them', () => {
    const after = smooth(moved(list, scaling(5)), { length: 40, most: 2.5, tolerance: 0.1, reach: 1 }).strokes;
    expect(apart(paths(after), paths(moved(before.map((path) => ({ path })), scaling(5))))).toBeLessThan(5e-3);
  });
  it.each([['direction', reversedAll], ['order and direction', shuffled]] as const)('their %s', (_, change) => {
    expect(apart(paths(smooth(change(list)).strokes), before)).toBeLessThan(agree);
  });
});

it('carries widths to the new length and keeps all else', () => {
  const wave = wavy(4, 0.3);
  const length = pathLength(wave.path);
  const kept = { confidence: 0.3, source: 'a', doubts: [{ at: { x: 1, y: 1 }, says: 'unsure' }] };
  const { strokes: [one] } = smooth([{ ...wave, ...kept, widths: [{ along: 0, width: 3 }, { along: length / 2, width: 4 }, { along: length, width: 5 }] }]);
  expect(one).toMatchObject(kept);
  expect(one!.widths!.map(({ width }) => width)).toEqual([3, 4, 5]);
  expect(one!.widths!.at(-1)!.along).toBeCloseTo(pathLength(one!.path), 6);
  expect(one!.widths!.at(-1)!.along).toBeLessThan(length - 0.5);
});

it('begins a closed stroke with corners at its first corner, widths and all', () => {
  const random = seeded(2);
  const box = Array.from({ length: 200 }, (_, i) => {
    const [side, share] = [Math.floor(((i + 20) % 200) / 50), (((i + 20) % 200) % 50) / 50];
    const corners = [[0, 0], [40, 0], [40, 40], [0, 40], [0, 0]] as const;
    const [p, q] = [corners[side]!, corners[side + 1]!];
    const jitter = share === 0 ? 0 : 0.1 * (random() - 0.5);
    return { x: p[0] + (q[0] - p[0]) * share + (side % 2 ? jitter : 0), y: p[1] + (q[1] - p[1]) * share + (side % 2 ? 0 : jitter) };
  });
  const stroke = strokeOf(box, true);
  const length = pathLength(stroke.path);
  const { strokes: [one] } = smooth([{ ...stroke, widths: [{ along: 0, width: 2 }, { along: length / 2, width: 4 }, { along: length, width: 2 }] }]);
  expect(one!.path.closed).toBe(true);
  expect(distance(one!.path.start, { x: 40, y: 0 })).toBeLessThan(1e-9);
  expect(pathEnd(one!.path)).toEqual(one!.path.start);
  expect(one!.widths!.at(-1)!.along).toBeCloseTo(pathLength(one!.path), 6);
  expect(Math.max(...one!.widths!.map(({ width }) => width))).toBeCloseTo(4, 1);
});

it('has no trouble with nothing, dots, tiny strokes, or many long ones', () => {
  expect(smooth([])).toEqual({ strokes: [], changed: 0 });
  const odd: Stroke[] = [{ path: { start: { x: 1, y: 1 }, segments: [], closed: false } }, { path: line([0, 0], [1e-4, 0]) }, { path: line([0, 0], [0, 0]) }];
  expect(smooth(odd).strokes).toEqual(odd);
  const many = Array.from({ length: 40 }, (_, k) => moved([trembling(k, 0.2)], [1, 0, 0, 1, 0, 50 * k])[0]!);
  expect(smooth(many).changed).toBe(40);
});
