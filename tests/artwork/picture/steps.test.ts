import { describe, expect, it } from 'vitest';
import { filledMap, rowOf } from '../../../src/artwork/picture/coarse.ts';
import { evened } from '../../../src/artwork/picture/evening.ts';
import { averaged, blurred, type Grid, withoutOutliers } from '../../../src/artwork/picture/grid.ts';
import { otsu } from '../../../src/artwork/picture/otsu.ts';
import { shapesOf, strokeWidth, without } from '../../../src/artwork/picture/shapes.ts';
import { seeded } from './scan.ts';

const grid = (columns: number, rows: number, value: (x: number, y: number) => number): Grid =>
  ({ columns, rows, values: Float32Array.from({ length: columns * rows }, (_, i) => value(i % columns, Math.floor(i / columns))) });

describe('Otsu\'s threshold', () => {
  it('of a histogram worked by hand: 8 7 2 6 9 4 divides before its fourth class', () => {
    // 36 values, mean 85/36, variance 313/36 - (85/36)^2 = 3.1196. Up to the third class 17 values of mean 11/17, then 19 of mean
    // 74/19: (17 x 19 / 36^2) (74/19 - 11/17)^2 = 2.6287.
    const { at, separation, means } = otsu([8, 7, 2, 6, 9, 4]);
    expect(at).toBe(3);
    expect(separation).toBeCloseTo(2.6287 / 3.1196, 4);
    expect(means).toEqual([11 / 17, 74 / 19]);
  });

  it('lies in the middle between two separate heaps, which all places between part equally well', () => {
    expect(otsu([5, 9, 0, 0, 0, 0, 0, 4, 1])).toMatchObject({ at: 4 });
    expect(otsu([0, 0, 7, 0]).separation).toBe(0);
  });
});

describe('shapes', () => {
  const NEXT = [[-1, 0], [1, 0], [0, -1], [0, 1]] as const;
  const CORNERS = [[-1, -1], [1, -1], [-1, 1], [1, 1]] as const;

  /** Components by flooding from every pixel, the plain way; ink over corners too. */
  function flooded({ columns, rows, values }: Grid): string[] {
    const seen = new Set<number>();
    const isInk = (at: number) => values[at]! >= 0.5;
    const around = (at: number, steps: readonly (readonly [number, number])[]) => steps.flatMap(([dx, dy]) => {
      const [x, y] = [(at % columns) + dx, Math.floor(at / columns) + dy];
      return x < 0 || x >= columns || y < 0 || y >= rows ? [] : [y * columns + x];
    });
    const flood = (start: number) => {
      const parts = [start];
      seen.add(start);
      for (const at of parts) {
        const fresh = around(at, isInk(start) ? [...NEXT, ...CORNERS] : NEXT).filter((to) => isInk(to) === isInk(start) && !seen.has(to));
        for (const to of fresh) seen.add(to);
        parts.push(...fresh);
      }
      const sides = parts.flatMap((at) => around(at, NEXT).filter((to) => isInk(to) !== isInk(start))).length;
      return `${isInk(start) ? 'ink' : 'ground'} ${parts.length} ${sides} ${parts.some((at) => around(at, NEXT).length < 4)}`;
    };
    return Array.from(values, (_, at) => at).flatMap((at) => (seen.has(at) ? [] : [flood(at)]));
  }

  it('are those that flooding finds, with their pixels, sides and touch of the edge, in the same order', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = seeded(seed);
      const share = 0.2 + 0.6 * random();
      const made = grid(3 + (seed % 17), 3 + (seed % 11), () => (random() < share ? 1 : 0));
      expect(shapesOf(made, 0.5).map(({ isInk, pixels, sides, edge }) => `${isInk ? 'ink' : 'ground'} ${pixels} ${sides} ${edge !== undefined}`)).toEqual(flooded(made));
    }
  });

  it('vanish when they are taken out, ink and holes alike', () => {
    const made = grid(20, 20, (x, y) => (x > 4 && x < 15 && y > 4 && y < 15 && !(x === 9 && y === 9)) || (x === 1 && y === 1) ? 1 : 0);
    const small = shapesOf(made, 0.5).filter(({ pixels }) => pixels === 1);
    expect(small).toHaveLength(2);
    const clean = without(made, small);
    expect([clean.values[21], clean.values[9 * 20 + 9]]).toEqual([0, 1]);
    expect(shapesOf(clean, 0.5)).toHaveLength(2);
  });

  it('tell the width of a band, whatever specks lie about it', () => {
    const made = grid(300, 100, (x, y) => (y >= 40 && y < 52 && x > 10 && x < 290) || (x % 10 === 0 && y % 10 === 0) ? 1 : 0);
    // 12 wide, 11.5 with its short ends; straight along the pixels the mean ratio of sides to length overstates by 4 / pi.
    expect(strokeWidth(shapesOf(made, 0.5)) * (Math.PI / 4)).toBeGreaterThan(10.5);
    expect(strokeWidth(shapesOf(made, 0.5)) * (Math.PI / 4)).toBeLessThan(12);
  });
});

describe('grids', () => {
  it('are blurred by a Gaussian: a lone pixel keeps its sum and spreads by the variance', () => {
    const { values } = blurred(grid(41, 41, (x, y) => (x === 20 && y === 20 ? 1 : 0)), 1.5);
    const sum = (weight: (x: number, y: number) => number) => values.reduce((total, value, i) => total + value * weight(i % 41, Math.floor(i / 41)), 0);
    expect(sum(() => 1)).toBeCloseTo(1, 5);
    // Cut off at three standard deviations, a normal distribution keeps 97 % of its variance.
    expect(sum((x) => (x - 20) ** 2)).toBeGreaterThan(0.96 * 2.25);
    expect(sum((_, y) => (y - 20) ** 2)).toBeLessThan(1.02 * 2.25);
    expect(blurred(grid(9, 5, () => 0.3), 2).values.every((value) => Math.abs(value - 0.3) < 1e-6)).toBe(true);
  });

  it('lose lone pixels and keep edges to the last bit', () => {
    const edge = grid(12, 12, (x, y) => Math.min(1, Math.max(0, 0.7 * x + 0.4 * y - 6)));
    expect(withoutOutliers(edge).values).toEqual(edge.values);
    const spotted = { ...edge, values: edge.values.slice() };
    spotted.values[3 * 12 + 3] = 1;
    expect(withoutOutliers(spotted).values[3 * 12 + 3]).toBe(Math.max(edge.values[4 * 12 + 4]!, 0));
  });

  it('are averaged in blocks', () => {
    expect([...averaged(grid(5, 4, (x, y) => x + 10 * y), 2).values]).toEqual([5.5, 7.5, 25.5, 27.5]);
  });

  it('fill gaps between what was seen, and follow a slope where all was', () => {
    const seen = { cell: 10, columns: 16, rows: 8, sums: new Float64Array(128), weights: new Float64Array(128) };
    for (let i = 0; i < 128; i++) if (i % 16 < 5 || i % 16 > 8) [seen.sums[i], seen.weights[i]] = [100 * (i % 16), 100];
    const { values } = filledMap(seen, 1);
    for (let i = 0; i < 128; i++) expect(Math.abs(values[i]! - (i % 16))).toBeLessThan(i % 16 < 4 || i % 16 > 9 ? 0.1 : 1.5);
    const row = new Float32Array(160);
    rowOf({ cell: 10, columns: 16, rows: 8, values: Float32Array.from({ length: 128 }, (_, i) => i % 16) }, 40, row);
    expect([row[0], row[159]]).toEqual([0, 15]);
    for (let x = 5; x < 155; x++) expect(row[x]).toBeCloseTo((x + 0.5) / 10 - 0.5, 4);
  });
});

it('lighting is taken out: ground comes out at 0 and lettering at 1, whichever is lighter, under any shade', () => {
  const stroke = (x: number, y: number) => (x > 60 && x < 240 && y % 50 > 15 && y % 50 < 27) || Math.hypot(x - 250, y - 100) < 30;
  const shade = (x: number, y: number) => 1 - 0.45 * (x / 300) - 0.15 * (y / 200);
  for (const [ground, ink] of [[0.8, 0.05], [0.03, 0.7], [0.5, 0.3]] as const) {
    const light = grid(300, 200, (x, y) => shade(x, y) * (stroke(x, y) ? ink : ground));
    const even = evened(light, 'either')!;
    expect(even.lettering).toBe(ink > ground ? 'lighter' : 'darker');
    even.cover.values.forEach((value, i) => { if (Math.abs(value - (stroke(i % 300, Math.floor(i / 300)) ? 1 : 0)) > 0.15) throw new Error(`${value} at ${i % 300}, ${Math.floor(i / 300)} of ${ground} ${ink}`); });
  }
  expect(evened(grid(50, 50, () => 0.4), 'either')).toBeUndefined();
});
