import { describe, expect, it } from 'vitest';
import type { Outline, Stroke } from '../../../src/artwork/index.ts';
import { applyToPath, type Affine, offsetPath, offsetPaths, type Path, polylinePath, regionArea, scaling } from '../../../src/geometry/index.ts';
import { compareWithArtwork, traceOutlines } from '../../../src/lettering/index.ts';
import { circle, line } from '../../support/shapes.ts';
import { arc, moved, reversedAll, shuffled, SIMILARITIES } from '../edit/common.ts';

const round = { cap: 'round', join: 'round', tolerance: 0.005 } as const;
const outlineOf = (region: { loops: readonly (readonly { x: number; y: number }[])[] }): Outline => ({ paths: region.loops.map((loop) => polylinePath(loop, true)), fillRule: 'nonzero' });
const pen = (path: Path, width: number): Stroke => ({ path, widths: [{ along: 0, width }] });
const compare = (strokes: readonly Stroke[], outlines: readonly Outline[], far = 0.3) => compareWithArtwork(strokes, outlines, { far })!;

/** A stadium of straight length 100 and radius 20. */
const AXIS = line([0, 0], [100, 0]);
const STADIUM = outlineOf(offsetPath(AXIS, 20, round));
const areaOf = (length: number, r: number) => 2 * r * length + Math.PI * r * r;

describe('a stadium', () => {
  it('is covered by its own axis at its own width, and nothing lies outside', () => {
    const { strokes, centre } = compare([pen(AXIS, 40)], [STADIUM]);
    expect(strokes.covered).toBeGreaterThan(0.9995);
    expect(strokes.outside).toBeLessThan(0.0005);
    expect(strokes.beyondStrokes.distance).toBeLessThan(0.05);
    expect(strokes.beyondArtwork.distance).toBeLessThan(0.05);
    expect(centre.missed).toBe(0);
  });
  it.each([10, 15, 19])('is covered by a narrower pen of radius %d as the areas of both stadiums tell', (r) => {
    const { strokes } = compare([pen(AXIS, 2 * r)], [STADIUM]);
    expect(strokes.covered).toBeCloseTo(areaOf(100, r) / areaOf(100, 20), 3);
    expect(strokes.outside).toBeLessThan(1e-6);
    expect(Math.abs(strokes.beyondStrokes.distance - (20 - r))).toBeLessThan(0.05);
  });
  it.each([25, 30])('lies within a wider pen of radius %d, of which the rest is outside', (r) => {
    const { strokes } = compare([pen(AXIS, 2 * r)], [STADIUM]);
    expect(strokes.covered).toBeCloseTo(1, 5);
    expect(strokes.outside).toBeCloseTo(1 - areaOf(100, 20) / areaOf(100, r), 3);
    expect(Math.abs(strokes.beyondArtwork.distance - (r - 20))).toBeLessThan(0.05);
  });
  it('misses half its centre where the stroke ends midway, and tells how far it is and where', () => {
    const { strokes, centre } = compare([pen(line([0, 0], [50, 0]), 40)], [STADIUM], 0.05);
    expect(strokes.covered).toBeCloseTo(areaOf(50, 20) / areaOf(100, 20), 3);
    expect(Math.abs(centre.missed - 0.48)).toBeLessThan(0.01);
    expect(centre.farthest.at.x).toBeCloseTo(100, 0);
    expect(centre.farthest.distance).toBeCloseTo(50, 0);
    expect(strokes.beyondStrokes.distance).toBeCloseTo(50, 0);
    expect(strokes.beyondStrokes.at.x).toBeGreaterThan(100);
  });
  it('is told apart from a stroke laid beside its axis', () => {
    const { strokes, centre } = compare([pen(line([0, 5], [100, 5]), 40)], [STADIUM], 0.1);
    expect(centre.missed).toBe(1);
    expect(centre.farthest.distance).toBeCloseTo(5, 1);
    expect(strokes.beyondArtwork.distance).toBeCloseTo(5, 1);
    expect(strokes.beyondArtwork.at.y).toBeGreaterThan(20);
  });
});

it('finds what was forgotten and what was added, with its regions', () => {
  const [a, b, c] = [AXIS, line([0, 100], [100, 100]), line([0, 200], [100, 200])];
  const { strokes, centre } = compare([pen(a, 40), pen(c, 40)], [STADIUM, outlineOf(offsetPath(b, 20, round))]);
  expect(strokes.covered).toBeCloseTo(0.5, 3);
  expect(strokes.outside).toBeCloseTo(0.5, 3);
  expect(regionArea(strokes.uncoveredRegion) / areaOf(100, 20)).toBeCloseTo(1, 2);
  expect(regionArea(strokes.outsideRegion) / areaOf(100, 20)).toBeCloseTo(1, 2);
  expect(centre.missed).toBeCloseTo(0.5, 2);
});

it('looks at a groove of one width beside the strokes\' own', () => {
  const groove = offsetPaths([AXIS], 10, round);
  const { channel, strokes } = compareWithArtwork([pen(AXIS, 40)], [STADIUM], { far: 0.3, channel: groove })!;
  expect(channel!.covered).toBeCloseTo(areaOf(100, 10) / areaOf(100, 20), 3);
  expect(strokes.covered).toBeGreaterThan(0.999);
});

it('finds little amiss with what tracing makes of strokes that cross, touch and go round', () => {
  const drawn = [line([0, 0], [120, 80]), line([0, 80], [120, 0]), arc({ x: 220, y: 40 }, 40, 0, 300), line([300, 0], [300, 90]), line([300, 45], [380, 45]), circle(460, 40, 40)];
  const outlines = [outlineOf(offsetPaths(drawn, 6, { ...round, tolerance: 0.002 }))];
  const { strokes } = traceOutlines(outlines, {}, () => undefined);
  const { strokes: found, centre } = compare(strokes, outlines);
  expect(found.covered).toBeGreaterThan(0.99);
  expect(found.outside).toBeLessThan(0.01);
  expect(centre.missed).toBeLessThan(0.01);
  expect(found.beyondStrokes.distance).toBeLessThan(1.5);
});

describe('does not depend on', () => {
  const list = [pen(line([0, 3], [90, 0]), 36), pen(arc({ x: 200, y: 0 }, 40, 0, 200), 22)];
  const outlines = [STADIUM, outlineOf(offsetPath(arc({ x: 200, y: 0 }, 40, 0, 210), 12, round))];
  const movedOutlines = (m: Affine): Outline[] => outlines.map((outline) => ({ ...outline, paths: outline.paths.map((path) => applyToPath(m, path)) }));
  const before = compare(list, outlines, 0.05);
  const figures = ({ strokes, centre }: typeof before, scale = 1) =>
    [strokes.covered, strokes.outside, centre.missed, strokes.beyondStrokes.distance / scale / 50, strokes.beyondArtwork.distance / scale / 50, centre.farthest.distance / scale / 50];
  const alike = (after: typeof before, scale = 1) => figures(after, scale).forEach((value, i) => expect(Math.abs(value - figures(before)[i]!)).toBeLessThan(0.01));
  it.each(SIMILARITIES)('where they lie: %s', (_, m) => alike(compare(moved(list, m), movedOutlines(m), 0.05)));
  it('their size', () => alike(compare(moved(list, scaling(6)), movedOutlines(scaling(6)), 0.05), 6));
  it.each([['direction', reversedAll], ['order and direction', shuffled]] as const)('strokes\' %s', (_, change) => alike(compare(change(list), outlines, 0.05)));
});

it('has no trouble with no strokes, dots, or artwork without area', () => {
  const { strokes, centre } = compare([], [STADIUM]);
  expect([strokes.covered, strokes.outside, centre.missed]).toEqual([0, 0, 1]);
  expect(Number.isFinite(strokes.beyondStrokes.distance) && Number.isFinite(centre.farthest.distance)).toBe(true);
  expect(compareWithArtwork([pen(AXIS, 4)], [], { far: 0.3 })).toBeUndefined();
  const dot: Stroke = { path: { start: { x: 0, y: 0 }, segments: [], closed: false }, width: 10 };
  expect(compare([dot], [{ paths: [circle(0, 0, 5)], fillRule: 'nonzero' }]).strokes.covered).toBeGreaterThan(0.99);
  expect(compare([{ path: AXIS }], [STADIUM]).widthless).toBe(1);
});

it('compares many strokes', () => {
  const lines = Array.from({ length: 60 }, (_, i) => arc({ x: (i % 20) * 60, y: Math.floor(i / 20) * 60 }, 20, i, i + 200));
  const outlines = lines.map((path) => outlineOf(offsetPath(path, 4, { ...round, tolerance: 0.02 })));
  expect(compare(lines.map((path) => pen(path, 8)), outlines).strokes.covered).toBeGreaterThan(0.99);
});
