import { describe, expect, it } from 'vitest';
import type { Outline, Stroke } from '../../src/artwork/artwork.ts';
import { distance, endTangents, flattenPath, loopArea, makeSegmentIndex, pathEnd, pathLength, type Point, polylinePath, rotation, samplePath, scaling } from '../../src/geometry/index.ts';
import { tightBends, traceOutlines, type Tracing } from '../../src/lettering/index.ts';
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

  it('a broad stem that runs out into a hairline stays one stroke where another hairline meets it', () => {
    const { byStroke, rightCount, kinks } = found(truth.swellingStem());
    expect([rightCount, kinks, byStroke[0]!.mean < 3]).toEqual([true, 0, true]);
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

describe('an arm that widens towards a corner on either side', () => {
  it('is a pen that grew wider: neither wall leaves it', () => {
    const { inner, matched } = found(truth.word(61));
    expect([matched, inner.max < 1]).toEqual([true, true]);
  });
});

describe('a stroke that ends beside another', () => {
  it('is found where the other one swallows a corner of its end, and ends where a pen would', () => {
    const { count, ends, inner, matched } = found(truth.spurless());
    expect([count, matched, ends! < 1, inner.max < 4]).toEqual([2, true, true, true]);
  });

  it('ends where its own walls say, if short beyond the other one, however it is turned', () => {
    for (const change of [rotation(0), rotation(30), [-1, 0, 0, 1, 0, 0] as const]) {
      const { ends, inner, matched } = found(truth.moved(truth.letterB(), change));
      expect([matched, ends! < 1, inner.max < 1]).toEqual([true, true, true]);
    }
  });
});

it('three like arms: no two of them are one stroke, for nothing says which; each ends where they meet, in doubt', () => {
  for (const degrees of [0, 17]) {
    const shape = truth.moved(truth.wye(), rotation(degrees));
    const { count, inner, matched } = found(shape);
    expect([count, matched, inner.max < 0.5]).toEqual([3, true, true]);
    for (const { confidence, doubts } of trace(shape).strokes) expect([confidence < 0.05, doubts.length]).toEqual([true, 1]);
  }
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

  it('masses alone stay regions however they are turned, scaled or mirrored', () => {
    for (const shape of [truth.star(), truth.blob(), truth.square(), ...truth.masses()]) {
      for (const change of [rotation(0), rotation(23), rotation(45), rotation(90), scaling(0.1), scaling(10), [-1, 0, 0, 1, 0, 0] as const]) {
        const { strokes, regions } = traceOutlines(truth.movedOutlines(shape.outlines, change), {}, () => undefined);
        expect([strokes.length, regions.length], shape.name).toEqual([0, 1]);
      }
    }
  });

  it('dots of any shape beside a stem are one short stroke each at their middle, along their longer axis or along +x', () => {
    const stem = truth.asOutline({ loops: [[{ x: 50, y: -80 }, { x: 60, y: -80 }, { x: 60, y: 20 }, { x: 50, y: 20 }]] });
    for (const { name, loop, along } of truth.dots()) {
      for (const turn of [0, 20]) {
        const dot = truth.movedOutlines([truth.asOutline({ loops: [loopArea(loop) < 0 ? [...loop].reverse() : loop] })], rotation(turn));
        const { strokes, regions } = traceOutlines([stem, ...dot], {}, () => undefined);
        const bar = strokes.find(({ path }) => path.start.x < 40)!;
        expect([strokes.length, regions.length, pathLength(bar.path) < 2 * W], name).toEqual([2, 0, true]);
        const { first } = endTangents(bar.path);
        const wanted = along === undefined ? 0 : along + turn;
        expect(Math.abs(Math.sin(Math.atan2(first.y, first.x) - (wanted * Math.PI) / 180)), name).toBeLessThan(0.01);
      }
    }
  });

  it('what is no area at all, or nearly, does no harm', () => {
    const path = (points: readonly Point[], closed = true) => polylinePath(points, closed);
    const at = (x: number, y: number): Point => ({ x, y });
    const square = (size: number, x = 0, turned = false) => path(turned ? [at(x, 0), at(x, size), at(x + size, size), at(x + size, 0)] : [at(x, 0), at(x + size, 0), at(x + size, size), at(x, size)]);
    const trials: Outline[][] = [
      [{ paths: [path([at(3, 3)])], fillRule: 'nonzero' }],
      [{ paths: [path([at(0, 0), at(50, 0), at(100, 0)])], fillRule: 'nonzero' }],
      [{ paths: [path([at(0, 0), at(40, 40), at(40, 0), at(0, 40)])], fillRule: 'evenodd' }],
      [{ paths: [path([at(0, 0), at(100, 0), at(100, 10), at(0, 10)]), path([at(3, 3)]), path([at(0, 0), at(100, 0)])], fillRule: 'evenodd' }],
    ];
    for (const outlines of trials) expect(() => traceOutlines(outlines, {}, () => undefined)).not.toThrow();
    const nested = (['nonzero', 'evenodd'] as const).map((fillRule) => [true, false].map((turned) =>
      traceOutlines([{ paths: [path([at(-5, -5), at(45, -5), at(45, 45), at(-5, 45)]), square(40, 0, turned)], fillRule }], {}, () => undefined).strokes.filter(({ path: one }) => one.closed).length));
    expect(nested).toEqual([[1, 0], [1, 1]]);
  });

  it('thousands of crumbs are dropped and counted, and size does not matter', () => {
    const stem = truth.stadium().outlines[0]!;
    const crumbs = Array.from({ length: 1500 }, (_, i): Outline => truth.asOutline({ loops: [[{ x: i % 60, y: 20 + i / 60 }, { x: (i % 60) + 0.2, y: 20 + i / 60 }, { x: i % 60, y: 20.2 + i / 60 }]] }));
    const tracing = traceOutlines([stem, ...crumbs], {}, () => undefined);
    expect([tracing.strokes.length, tracing.crumbs]).toEqual([1, 1500]);
    for (const factor of [0.0001, 0.01, 100, 10_000]) {
      const { strokes } = traceOutlines(truth.movedOutlines([stem], scaling(factor)), {}, () => undefined);
      expect(strokes.map(({ path }) => Math.abs(pathLength(path) / factor - 100) < 0.1), String(factor)).toEqual([true]);
    }
  });

  it('nothing comes of nothing', () => {
    expect(traceOutlines([], {}, () => undefined)).toMatchObject({ strokes: [], junctions: [], regions: [], crumbs: 0 });
    expect(traceOutlines([{ paths: [], fillRule: 'nonzero' }], {}, () => undefined).strokes).toEqual([]);
  });
});

describe('along the stroke', () => {
  it.each([
    ['S', truth.uprightS(), truth.uneven(W, 0.2, 1)], ['taper', truth.taper(), truth.tapered(14, 6)], ['arch', truth.arch(), truth.uneven(W, 0.2, 3)],
    ['hairlines', truth.hairlined(), (share: number) => W * (0.05 + 0.95 * Math.sin(2 * Math.PI * share) ** 2)],
  ] as const)('%s: the widths are the pen\'s within one percent', (_, shape, law) => {
    const { path, widths } = trace(shape).strokes[0]!;
    const total = pathLength(path);
    const turned = distance(path.start, shape.strokes[0]!.path.start) > distance(path.start, pathEnd(shape.strokes[0]!.path));
    expect(Math.abs(widths.at(-1)!.along - total)).toBeLessThan(1e-6 * total);
    for (const { along, width } of widths) expect(Math.abs(width - law(turned ? 1 - along / total : along / total))).toBeLessThan(0.01 * W);
  });

  it('names each bend tighter than half the width once, by place and size', () => {
    const tight = truth.drawn('hairpin', [{ path: truth.wander({ x: 0, y: 0 }, 0, [[30, 0], [25, 170], [30, 0]]), law: truth.even(1.5), ends: ['round', 'round'] }]);
    for (const { path } of trace(tight).strokes) {
      const least = Math.min(...samplePath(path, 0.02).map(({ curvature }) => 1 / Math.abs(curvature)));
      expect(tightBends(path, [{ along: 0, width: 1.9 * least }, { along: pathLength(path), width: 1.9 * least }])).toEqual([]);
      const [bend, ...more] = tightBends(path, [{ along: 0, width: 4 * least }, { along: pathLength(path), width: 4 * least }]);
      expect([more.length, bend!.radius < 1.3 * least, bend!.radius > 0.95 * least]).toEqual([0, true, true]);
    }
    expect(trace(truth.arch()).strokes.flatMap(({ doubts }) => doubts)).toEqual([]);
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
