import { beforeAll, describe, expect, it } from 'vitest';
import {
  components, COORDINATE_LIMIT_MM, emptyRegion, intersectRegions, isEmptyRegion, loopArea, type Region, regionArea, regionBounds,
  regionFromLoops, regionPerimeter, subtractRegion, unionRegions, UNITS_PER_MM,
} from '../../src/geometry/index.ts';
import { nativeClipper, type NativeClipper } from '../support/native-clipper.ts';
import { seeded } from '../support/random.ts';
import { around, faultyScribble, points, rectangle, scribble, solid, turned } from './region-shapes.ts';

const square = rectangle(0, 0, 10, 10);

describe('area, perimeter and bounds', () => {
  it('give the shoelace example of text-books, with the sign of the orientation', () => {
    // Meister 1769 / Gauss; example of REFERENCES 2.c.
    const ell = points([0, 0], [6, 0], [6, 2], [2, 2], [2, 5], [0, 5]);
    expect(loopArea(ell)).toBe(18);
    expect(loopArea([...ell].reverse())).toBe(-18);
    expect(regionPerimeter({ loops: [ell] })).toBe(22);
    expect(regionBounds({ loops: [ell] })).toEqual({ minX: 0, minY: 0, maxX: 6, maxY: 5 });
  });

  it('keep their digits far from the origin', () => {
    const far = rectangle(90_000.1, -90_000.3, 0.002, 0.003);
    expect(loopArea(far)).toBeCloseTo(6e-6, 12);
    expect(regionArea(solid(far))).toBeCloseTo(6e-6, 12);
  });

  it('know the empty region', () => {
    expect(isEmptyRegion(emptyRegion)).toBe(true);
    expect(isEmptyRegion(solid(square))).toBe(false);
    expect(regionBounds(emptyRegion)).toBeUndefined();
    expect(regionArea(emptyRegion)).toBe(0);
  });
});

describe('regionFromLoops', () => {
  const inner = rectangle(3, 3, 4, 4);

  it.each([
    ['same way', [square, inner], 100, 84],
    ['opposite ways', [square, [...inner].reverse()], 84, 84],
  ])('fills two nested squares drawn the %s as SVG 2 says of nonzero and evenodd', (_, loops, nonzero, evenodd) => {
    expect(regionArea(regionFromLoops(loops, 'nonzero'))).toBe(nonzero);
    expect(regionArea(regionFromLoops(loops, 'evenodd'))).toBe(evenodd);
  });

  it('turns outer loops counter-clockwise and holes clockwise whatever came in', () => {
    for (const loops of [[square, inner], [[...square].reverse(), inner], [[...square].reverse(), [...inner].reverse()]]) {
      const region = regionFromLoops(loops, 'evenodd');
      expect(region.loops.map((loop) => Math.sign(loopArea(loop))).sort()).toEqual([-1, 1]);
    }
  });

  it('brings coordinates of four decimals back as the identical numbers', () => {
    const loop = rectangle(0.1, 0.0003, 100.1234, 7.7777);
    const back = solid(loop).loops[0]!;
    expect(new Set(back.map(({ x }) => x))).toEqual(new Set([0.1, 100.2234]));
    expect(new Set(back.map(({ y }) => y))).toEqual(new Set([0.0003, 7.778]));
  });

  it.each([
    ['nothing', []], ['a point', points([1, 1])], ['a line there and back', points([0, 0], [5, 5], [9, 9])],
    ['one place many times', points([1, 1], [1, 1], [1, 1], [1, 1])], ['less than a unit', rectangle(0, 0, 1e-5, 1e-5)],
  ])('makes the empty region of %s', (_, loop) => {
    expect(regionFromLoops([loop], 'nonzero')).toEqual(emptyRegion);
  });

  it('drops spikes, repeated points and points on straight runs', () => {
    const loop = points([0, 0], [5, 0], [10, 0], [10, 0], [10, 4], [30, 4], [10, 4], [10, 10], [0, 10], [0, 20], [0, 10]);
    expect(solid(loop).loops.map((found) => [found.length, loopArea(found)])).toEqual([[4, 100]]);
  });

  it.each([Number.NaN, Infinity, -Infinity, COORDINATE_LIMIT_MM * 1.001, 1e308])('refuses the coordinate %s and names it', (value) => {
    const loop = points([0, 0], [value, 0], [0, 5]);
    expect(() => solid(loop)).toThrow(RangeError);
    expect(() => solid(loop)).toThrow(String(value));
  });

  it('works up to the coordinate limit', () => {
    const m = COORDINATE_LIMIT_MM;
    expect(regionArea(solid(rectangle(-m, -m, 2 * m, 2 * m)))).toBe(4 * m * m);
  });
});

describe('union, difference and intersection', () => {
  const left = solid(square);
  const right = solid(rectangle(6, 5, 10, 10));

  it('of two overlapping squares have the areas arithmetic gives', () => {
    expect(regionArea(unionRegions([left, right]))).toBe(180);
    expect(regionArea(intersectRegions(left, right))).toBe(20);
    expect(regionArea(subtractRegion(left, right))).toBe(80);
  });

  it('leave regions alone that do not meet', () => {
    const far = solid(rectangle(50, 50, 1, 1));
    expect(subtractRegion(left, far)).toEqual(left);
    expect(intersectRegions(left, far)).toEqual(emptyRegion);
    expect(unionRegions([left, far]).loops).toEqual([...left.loops, ...far.loops]);
  });

  it('join squares that share an edge and keep apart those that share a corner', () => {
    const parts = unionRegions([left, solid(rectangle(10, 0, 5, 10)), solid(rectangle(15, 10, 3, 3))]);
    expect(components(parts).map(regionArea).sort((a, b) => a - b)).toEqual([9, 150]);
  });

  it('cut a hole, and a part lying in that hole is a component of its own', () => {
    const ring = subtractRegion(left, solid(rectangle(2, 2, 6, 6)));
    const both = unionRegions([ring, solid(rectangle(4, 4, 2, 2))]);
    expect(components(both).map(({ loops }) => loops.map(loopArea))).toEqual([[100, -36], [4]]);
  });

  it('of very many overlapping discs in a row equal the row', () => {
    const disc = around(60, (t) => [5 * Math.cos(t), 5 * Math.sin(t)]);
    const discs = Array.from({ length: 200 }, (_, i) => solid(disc.map(({ x, y }) => ({ x: x + i, y }))));
    const row = unionRegions(discs);
    expect(row.loops.length).toBe(1);
    // Between neighbours one millimetre apart the row is notched by less than the sagitta of a one-millimetre chord.
    const whole = loopArea(disc) + 199 * 10;
    expect(regionArea(row)).toBeGreaterThan(whole - 199 * 2 * (5 - Math.sqrt(24.75)) * 1.1 - 199 * 0.02);
    expect(regionArea(row)).toBeLessThan(whole);
  });

  it('obey inclusion and exclusion on scribbles, also turned and scaled', () => {
    const random = seeded(11);
    for (let k = 0; k < 40; k += 1) {
      const [ra, rb] = [solid(turned(scribble(random, 12, 50), k * 17, 1 + k)), solid(turned(scribble(random, 12, 50), k * 17, 1 + k))];
      const total = regionArea(ra) + regionArea(rb);
      const union = regionArea(unionRegions([ra, rb]));
      const common = regionArea(intersectRegions(ra, rb));
      expect(Math.abs(union + common - total)).toBeLessThan(1e-6 * total + 1e-3);
      expect(Math.abs(regionArea(subtractRegion(ra, rb)) - (regionArea(ra) - common))).toBeLessThan(1e-6 * total + 1e-3);
    }
  });
});

describe('booleans against Clipper2 itself', () => {
  let native: NativeClipper;
  beforeAll(async () => { native = await nativeClipper(); });

  // Crossings are rounded to whole units, each library in its own way: one unit along the boundary may differ.
  const expectSame = (ours: Region, theirs: Region, what: string): void =>
    expect(native.mismatch(ours, theirs), what).toBeLessThan(1e-6 + regionPerimeter(theirs) / UNITS_PER_MM);

  it('agree on 300 faulty scribbles under every fill rule', () => {
    const random = seeded(5);
    for (let k = 0; k < 300; k += 1) {
      const loops = [faultyScribble(random, 4 + (k % 20), 40), faultyScribble(random, 4 + (k % 9), 40)];
      const rule = (['nonzero', 'evenodd', 'positive'] as const)[k % 3]!;
      const ours = regionFromLoops(loops, rule);
      expectSame(ours, native.union(loops, rule), `scribble ${k}, ${rule}`);
    }
  });

  it('agree on differences and intersections of regions with holes', () => {
    const random = seeded(6);
    for (let k = 0; k < 100; k += 1) {
      const [a, b] = [regionFromLoops([scribble(random, 15, 60)], 'evenodd'), regionFromLoops([scribble(random, 15, 60)], 'evenodd')];
      expectSame(subtractRegion(a, b), native.combine('subtract', a, b), `difference ${k}`);
      expectSame(intersectRegions(a, b), native.combine('intersect', a, b), `intersection ${k}`);
      expectSame(unionRegions([a, b]), native.union([...a.loops, ...b.loops], 'nonzero'), `union ${k}`);
    }
  });
});
