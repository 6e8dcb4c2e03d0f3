import { describe, expect, it } from 'vitest';
import type { Outline, Stroke } from '../../../src/artwork/index.ts';
import { applyToPath, applyToPoint, distance, pathEnd, pathLength, type Point, polylinePath, rotation, scaling } from '../../../src/geometry/index.ts';
import { dotsToBars } from '../../../src/lettering/index.ts';
import { stemDirection } from '../../../src/lettering/edit/slant.ts';
import { circle, line } from '../../support/shapes.ts';
import { arc, moved, reversedAll, shuffled, SIMILARITIES } from './common.ts';

const OPTIONS = { shortest: 12, largest: 30, length: 16.7, direction: 'dot' as 'dot' | 'stems' | 'level' | 'angle', angle: 30, reach: 0.2 };
const barred = (strokes: readonly Stroke[], options: Partial<typeof OPTIONS> = {}, outlines: readonly Outline[] = []) => dotsToBars(strokes, outlines, { ...OPTIONS, ...options });
const middle = ({ path }: Stroke): Point => ({ x: (path.start.x + pathEnd(path).x) / 2, y: (path.start.y + pathEnd(path).y) / 2 });
const headingOf = ({ path }: Stroke) => ((Math.atan2(pathEnd(path).y - path.start.y, pathEnd(path).x - path.start.x) * 180) / Math.PI + 360) % 180;

/** Two stems leaning by 20 degrees, a bowl, a dot that is a short stroke along 30 degrees, a ring dot, a point. */
const lean = Math.tan((20 * Math.PI) / 180);
const STEMS: Stroke[] = [{ path: line([0, 0], [100 * lean, 100]) }, { path: line([50, 0], [50 + 100 * lean, 100]) }, { path: arc({ x: 120, y: 30 }, 30, 0, 300) }];
const DOT: Stroke = { path: line([200, 100], [204, 100 + 4 * Math.tan(Math.PI / 6)]) };
const RING: Stroke = { path: circle(300, 100, 4) };
const POINT: Stroke = { path: { start: { x: 400, y: 100 }, segments: [], closed: false } };

it('makes each dot a bar of the stated length about its own middle, and leaves all else', () => {
  const { strokes, bars } = barred([...STEMS, DOT, RING, POINT]);
  expect(strokes.slice(0, 3)).toEqual(STEMS);
  expect(bars).toHaveLength(3);
  for (const [bar, centre] of [[strokes[3]!, middle(DOT)], [strokes[4]!, { x: 300, y: 100 }], [strokes[5]!, { x: 400, y: 100 }]] as const) {
    expect(pathLength(bar.path)).toBeCloseTo(16.7, 9);
    expect(distance(middle(bar), centre)).toBeLessThan(1e-6);
  }
  expect(strokes.slice(3).map(headingOf).map((degrees) => Math.round(degrees * 10) / 10)).toEqual([30, 70, 70]);
});

it.each([['stems', 70], ['level', 0], ['angle', 30]] as const)('lays bars along: %s', (direction, degrees) => {
  const { strokes } = barred([...STEMS, DOT, RING, POINT], { direction });
  for (const bar of strokes.slice(3)) expect(headingOf(bar)).toBeCloseTo(degrees, 1);
});

it('keeps a dot\'s own length where it is longer than the module', () => {
  expect(pathLength(barred([{ path: line([0, 0], [11, 0]) }], { length: 5 }).strokes[0]!.path)).toBeCloseTo(11, 9);
});

it('takes no short stroke that belongs to another: a serif, a tick on a stem, two that cross', () => {
  const list: Stroke[] = [{ path: line([0, 0], [0, 100]) }, { path: line([0, 100], [6, 100]) }, { path: line([-4, 50], [4, 50]) }, { path: line([50, 0], [55, 5]) }, { path: line([50, 5], [55, 0]) }];
  expect(barred(list)).toMatchObject({ strokes: list, bars: [] });
});

describe('shapes', () => {
  const disc = (x: number, radius: number): Outline => ({ paths: [circle(x, 0, radius)], fillRule: 'nonzero', source: `disc ${x}` });
  const oval: Outline = { paths: [applyToPath(scaling(1.6, 1), circle(0, 0, 8)), applyToPath([1, 0, 0, 1, 500, 0], polylinePath([{ x: 0, y: 0 }, { x: 60, y: 0 }, { x: 60, y: 10 }, { x: 0, y: 10 }], true))], fillRule: 'nonzero' };
  const ring: Outline = { paths: [circle(700, 0, 10), circle(700, 0, 6)], fillRule: 'evenodd' };
  const star: Outline = { paths: [polylinePath(Array.from({ length: 10 }, (_, i) => ({ x: 800 + (i % 2 ? 5 : 12) * Math.cos((i * Math.PI) / 5), y: (i % 2 ? 5 : 12) * Math.sin((i * Math.PI) / 5) })), true)], fillRule: 'nonzero' };
  it('makes bars of small round ones after the strokes, and leaves large ones, rings, stars and bars', () => {
    const { strokes, rest, bars } = barred(STEMS, {}, [disc(900, 10), disc(1000, 20), oval, ring, star]);
    expect(bars).toHaveLength(2);
    expect(strokes[3]).toMatchObject({ source: 'disc 900' });
    expect(distance(middle(strokes[3]!), { x: 900, y: 0 })).toBeLessThan(0.01);
    expect(headingOf(strokes[3]!)).toBeCloseTo(70, 1);
    expect(strokes[3]!.widths![0]!.width).toBeCloseTo(20, 1);
    expect(headingOf(strokes[4]!) % 180).toBeCloseTo(0, 3);
    expect(rest).toHaveLength(4);
    expect([rest[0], rest[2], rest[3]]).toEqual([disc(1000, 20), ring, star]);
    expect(rest[1]!.paths).toHaveLength(1);
  });
  it('takes a square dot, whichever way it is turned', () => {
    for (const degrees of [0, 13, 45]) {
      const square: Outline = { paths: [applyToPath(rotation(degrees), polylinePath([{ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 9, y: 9 }, { x: 0, y: 9 }], true))], fillRule: 'nonzero' };
      expect(barred(STEMS, {}, [square]).bars).toHaveLength(1);
    }
  });
});

it('measures how near a bar comes to other centre lines, and where', () => {
  const level = barred([{ path: line([0, 0], [0, 100]) }, { path: line([20, 50], [22, 50]) }], { direction: 'level' }).bars[0]!;
  expect(level.clearance).toBeCloseTo(21 - 16.7 / 2, 6);
  expect(level.at.x).toBeCloseTo(0, 6);
  const crossing = barred([{ path: line([0, 0], [0, 100]) }, { path: line([4, 50], [6, 50]) }], { direction: 'level' }).bars[0]!;
  expect(crossing.clearance).toBe(0);
  expect(crossing.at.y).toBeCloseTo(50, 6);
  const [a, b] = barred([{ path: line([0, 0], [2, 0]) }, { path: line([0, 5], [2, 5]) }], { direction: 'level' }).bars;
  expect([a!.clearance, b!.clearance]).toEqual([5, 5]);
  expect(barred([DOT]).bars[0]!.clearance).toBe(Infinity);
});

it('finds the lean of stems among curves, and upright where there are none', () => {
  expect(stemDirection(STEMS)).toBeCloseTo(70, 1);
  expect(stemDirection(reversedAll(STEMS))).toBeCloseTo(70, 1);
  expect(stemDirection([])).toBe(90);
  expect(stemDirection([{ path: line([0, 0], [100, 5]) }])).toBe(90);
  expect(stemDirection([{ path: circle(0, 0, 50) }])).toBeCloseTo(90, 0);
});

describe('does not depend on', () => {
  const list = [...STEMS, DOT, RING, { path: line([600, 0], [607, 3]) }];
  const before = barred(list).strokes;
  const sameBars = (after: readonly Stroke[], wanted: readonly Stroke[]) => {
    for (const bar of wanted.filter(({ path }) => path.segments.length === 1 && pathLength(path) < 20)) {
      expect(after.some((one) => distance(middle(one), middle(bar)) < 1e-6 && Math.abs(Math.sin(((headingOf(one) - headingOf(bar)) * Math.PI) / 180)) < 1e-4)).toBe(true);
    }
  };
  it.each(SIMILARITIES)('where strokes lie, for dots that have a direction: %s', (_, m) => {
    const own = before.filter((_stroke, i) => i !== 4);
    sameBars(barred(moved(list, m)).strokes, moved(own, m));
  });
  it.each([['direction', reversedAll], ['order and direction', shuffled]] as const)('their %s', (_, change) => sameBars(barred(change(list)).strokes, before));
  it('their size, when lengths grow with them', () => {
    const m = scaling(3);
    sameBars(barred(moved(list, m), { shortest: 36, length: 50.1, reach: 0.6 }).strokes, moved(before, m));
    expect(applyToPoint(m, { x: 1, y: 0 })).toEqual({ x: 3, y: 0 });
  });
});

it('gives a bar the dot\'s width, confidence and source, and widths along its new length', () => {
  const dot: Stroke = { ...DOT, widths: [{ along: 0, width: 7 }, { along: 4, width: 9 }], confidence: 0.7, source: 'i' };
  const { strokes: [bar] } = barred([dot]);
  expect(bar).toMatchObject({ confidence: 0.7, source: 'i', widths: [{ along: 0, width: 8 }, { along: 16.7, width: 8 }] });
});

it('has no trouble with nothing, or a thousand dots', () => {
  expect(barred([])).toEqual({ strokes: [], rest: [], bars: [] });
  const many = Array.from({ length: 1000 }, (_, i): Stroke => ({ path: line([(i % 60) * 50, Math.floor(i / 60) * 50], [(i % 60) * 50 + 3, Math.floor(i / 60) * 50 + 1]) }));
  expect(barred(many).bars).toHaveLength(1000);
});
