import { describe, expect, it } from 'vitest';
import { applyToPath, type Path, reversePath, samplePath, translation } from '../../src/geometry/index.ts';
import * as truth from './truth/index.ts';

const { W, at, straight } = truth;
const as = (...paths: readonly Path[]) => ({ strokes: paths.map((path) => ({ path })) });
const linesOf = (shape: truth.Truth) => as(...shape.strokes.map(({ path }) => path));

describe('comparing a tracing with the truth', () => {
  it.each([truth.uprightS(), truth.word(), truth.annulus(), truth.letterM()])('finds nothing wrong with the truth of $name itself, run either way', (shape) => {
    for (const lines of [linesOf(shape), as(...shape.strokes.map(({ path }) => reversePath(path)).reverse())]) {
      const found = truth.compare(shape, lines);
      expect(found).toMatchObject({ rightCount: true, matched: true, kinks: 0 });
      expect(found.whole.max).toBeLessThan(0.01);
      expect(found.ends ?? 0).toBeLessThan(1e-6);
    }
  });

  it('measures a shift across the stroke, and does not need points opposite points', () => {
    const stadium = truth.stadium();
    const { inner, whole, ends } = truth.compare(stadium, as(straight(at(0, 0.3), at(33, 0.3), at(100, 0.3))));
    for (const value of [inner.mean, inner.p95, inner.max, whole.max, ends]) expect(value).toBeCloseTo(3, 6);
  });

  it('sees a stroke that stops short: in its end, not in its inner places', () => {
    const { inner, whole, ends } = truth.compare(truth.stadium(), as(straight(at(0, 0), at(100 - 0.4 * W, 0))));
    expect(inner.max).toBeLessThan(1e-9);
    expect(whole.max).toBeCloseTo(40, 6);
    expect(ends).toBeCloseTo(40, 6);
  });

  it('sees strokes that swapped partners at a crossing, where distances see nothing', () => {
    const [one, two] = [straight(at(-60, 0), at(0, 0), at(0, 60)), straight(at(60, 0), at(0, 0), at(0, -60))];
    const crossing = { ...truth.crossing(90), strokes: [straight(at(-60, 0), at(60, 0)), straight(at(0, -60), at(0, 60))].map((path) => ({ path, ends: ['free', 'free'] as const })) };
    const found = truth.compare(crossing, as(one, two));
    expect(found.inner.max).toBeLessThan(1e-9);
    expect(found).toMatchObject({ rightCount: true, matched: false, kinks: 2 });
    expect(found.worstKink).toBeCloseTo(90, 6);
  });

  it('sees what is missing, what is in pieces and what is too much', () => {
    const word = truth.word();
    const paths = word.strokes.map(({ path }) => path);
    expect(truth.compare(word, as(...paths.slice(1)))).toMatchObject({ rightCount: false, matched: false });
    expect(truth.compare(word, as(...paths.slice(1))).inner.p95).toBeGreaterThan(100);
    const samples = samplePath(paths[0]!, 1).map(({ point }) => point);
    const pieces = [samples.slice(0, 300), samples.slice(299)].map((points) => straight(...points));
    expect(truth.compare(word, as(...pieces, ...paths.slice(1)))).toMatchObject({ count: 5, rightCount: false, matched: false });
  });

  it('moved strokes are as far off as they were moved', () => {
    const ring = truth.annulus();
    const { whole } = truth.compare(ring, as(applyToPath(translation(0.5, 0), ring.strokes[0]!.path)));
    expect(whole.max).toBeCloseTo(5, 2);
    expect(whole.mean).toBeCloseTo(5 * (2 / Math.PI), 1);
  });
});

describe('changed outlines', () => {
  const area = (shape: Pick<truth.Truth, 'outlines'>) => shape.outlines.flatMap(({ paths }) => paths).reduce((sum, path) => sum + path.segments.length, 0);

  it('doubling doubles the points, halving takes about half of them', () => {
    const shape = truth.uprightS();
    expect(area({ outlines: truth.doubled(shape.outlines) })).toBe(2 * area(shape));
    expect(area({ outlines: truth.halved(shape.outlines) })).toBeLessThan(0.6 * area(shape));
  });

  it.each([0.01, 0.03, 0.05])('noise of %d of the width has that size', (share) => {
    const shape = truth.stadium();
    const loop = truth.noisy(shape, share).outlines[0]!.paths[0]!;
    const off = samplePath(loop, 0.5).map(({ point }) => point).filter(({ x }) => x > 5 && x < 95).map(({ y }) => Math.abs(y) - W / 2);
    const size = Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length) / W;
    expect(size).toBeGreaterThan((0.7 * share) / Math.sqrt(3));
    expect(size).toBeLessThan((1.3 * share) / Math.sqrt(3));
  });
});
