import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../src/artwork/artwork.ts';
import { distance, endTangents, flattenPath, makeSegmentIndex, pathEnd, pathLength } from '../../src/geometry/index.ts';
import { traceOutlines, type Tracing } from '../../src/lettering/index.ts';
import * as truth from './truth/index.ts';

const { W } = truth;
const trace = (shape: truth.Truth): Tracing => traceOutlines(shape.outlines, {}, () => undefined);
const found = (shape: truth.Truth) => truth.compare(shape, trace(shape));

describe('strokes with known centre lines, errors in percent of the width', () => {
  it.each([truth.stadium(), truth.rectangle(), truth.ellipse()])('$name within 0.1', (shape) => {
    const { inner, rightCount } = found(shape);
    expect([rightCount, inner.max < 0.1]).toEqual([true, true]);
  });

  it.each([truth.uprightS(), truth.taper(), truth.arch()])('$name: mean 0.25, largest 1, ends 1', (shape) => {
    const { inner, ends, rightCount, kinks } = found(shape);
    expect([rightCount, kinks, inner.mean < 0.25, inner.max < 1, ends! < 1]).toEqual([true, 0, true, true, true]);
  });

  it.each([8, 12, 18, 25, 45, 90])('two straight strokes that cross at %i degrees, within 0.5', (degrees) => {
    const { inner, matched } = found(truth.crossing(degrees));
    expect([matched, inner.max < 0.5]).toEqual([true, true]);
  });

  it.each([20, 30, 45, 60, 90])('a stem that meets a bar at %i degrees, within 0.5, and says what it joins', (degrees) => {
    const shape = truth.tee(degrees);
    const { inner, matched } = truth.compare(shape, trace(shape));
    const joined = trace(shape).strokes.flatMap(({ ends }) => ends).filter(({ kind }) => kind === 'joins');
    expect([matched, inner.max < 0.5, joined.length]).toEqual([true, true, 1]);
  });

  it.each([truth.letterN(), truth.letterH(), truth.letterM(), truth.letterR(), truth.letterU(), truth.brushN()])('$name: the arch leaves its stem along its true line', (shape) => {
    const { inner, matched } = found(shape);
    expect([matched, inner.max < 4]).toEqual([true, true]);
  });

  it.each([truth.loopE(), truth.loopL()])('$name, a line that crosses itself, is one stroke within 1', (shape) => {
    const { inner, matched } = found(shape);
    expect([matched, inner.max < 1]).toEqual([true, true]);
  });

  it('a word of four strokes, plain and with uneven outlines', () => {
    for (const [noise, p95, max] of [[0, 1.2, 4], [0.01, 1.5, 5], [0.03, 2.5, 6]] as const) {
      const { inner, matched } = found(noise ? truth.noisy(truth.word(), noise) : truth.word());
      expect([matched, inner.p95 < p95, inner.max < max], `noise ${noise}`).toEqual([true, true, true]);
    }
  }, 30_000);
});

describe('free ends', () => {
  it.each(truth.endShapes())('$name: where a round cap of the stroke\'s own width reaches as far as the lettering, within 1', (shape) => {
    const { ends, whole, matched, kinks } = found(shape);
    expect([matched, kinks, ends! < 1, whole.max < 1.5]).toEqual([true, 0, true, true]);
  });

  it('an S with flat ends within 1, and a drop with a tail within 2', () => {
    for (const [shape, most] of [[truth.flatS(), 1], [truth.flatS(6), 1], [truth.comma(), 2]] as const) {
      const { ends, matched, kinks } = found(shape);
      expect([matched, kinks, ends! < most]).toEqual([true, 0, true]);
    }
  });
});

describe('what is no stroke', () => {
  it('a star and a square are left as regions, with a reason and a place', () => {
    for (const shape of [truth.star(), truth.square()]) {
      const { strokes, regions } = trace(shape);
      expect([strokes.length, regions.length]).toEqual([0, 1]);
      expect(regions[0]!.says).toMatch(/no stroke/);
    }
  });

  it('a round dot is a short stroke at its middle, an oval one lies along it, a ring is closed', () => {
    const [dot, oval, ring] = [truth.roundDot(), truth.ovalDot(), truth.ringDot()].map((shape) => trace(shape).strokes);
    expect(distance(dot![0]!.path.start, { x: 0, y: 0 })).toBeLessThan(0.02 * W);
    expect(Math.abs(endTangents(oval![0]!.path).first.y)).toBeLessThan(0.01);
    expect(ring!.map(({ path }) => path.closed)).toEqual([true]);
  });

  it('nothing comes of nothing', () => {
    expect(traceOutlines([], {}, () => undefined)).toMatchObject({ strokes: [], junctions: [], regions: [], crumbs: 0 });
    expect(traceOutlines([{ paths: [], fillRule: 'nonzero' }], {}, () => undefined).strokes).toEqual([]);
  });
});

describe('the result', () => {
  const shape = truth.tee(60);
  const tracing = trace(shape);

  it('is strokes as every later step takes them, in cubics, with widths along the whole length', () => {
    const strokes: readonly Stroke[] = tracing.strokes;
    expect(strokes.length).toBe(2);
    for (const { path, widths, confidence } of tracing.strokes) {
      expect(path.segments.every(({ kind }) => kind === 'cubic')).toBe(true);
      expect(Math.abs(widths.at(-1)!.along - pathLength(path))).toBeLessThan(0.02 * W);
      for (const { along, width } of widths) if (along > W && along < widths.at(-1)!.along - 2 * W) expect(Math.abs(width - W)).toBeLessThan(0.03 * W);
      expect(confidence).toBeGreaterThan(0.5);
    }
  });

  it('a joined end lies on its partner', () => {
    for (const { path, ends } of tracing.strokes) {
      ends.forEach((end, i) => {
        if (end.kind !== 'joins') return;
        const points = flattenPath(tracing.strokes[end.stroke]!.path, 1e-4);
        const index = makeSegmentIndex(points.slice(1).map((to, k) => ({ from: points[k]!, to })));
        expect(index.nearest(i === 0 ? path.start : pathEnd(path), 1)!.distance).toBeLessThan(0.01 * W);
      });
    }
  });

  it('tells each junction\'s arms and pairs', () => {
    const [junction] = tracing.junctions;
    expect([tracing.junctions.length, junction!.arms.length, junction!.pairs.length]).toEqual([1, 3, 1]);
  });

  it('is the same every time, and names the outline a stroke came from', () => {
    expect(trace(shape)).toEqual(tracing);
    expect(traceOutlines(shape.outlines.map((outline) => ({ ...outline, source: 'letter' })), {}, () => undefined).strokes.map(({ source }) => source)).toEqual(['letter', 'letter']);
  });

  it('asks at every part whether to go on', () => {
    let calls = 0;
    traceOutlines(truth.phrase(3).outlines, {}, () => calls++);
    expect(calls).toBeGreaterThanOrEqual(3);
    expect(() => traceOutlines(shape.outlines, {}, () => { throw new Error('stop'); })).toThrow('stop');
  }, 30_000);
});
