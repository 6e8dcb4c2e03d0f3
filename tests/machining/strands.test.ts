import { describe, expect, it } from 'vitest';
import { type Path, distance, pathFromCubics, pathLength } from '../../src/geometry/index.ts';
import { makeStrands } from '../../src/machining/measure/strands.ts';

const curve = (...[start, control1, control2, end]: readonly [number, number][]): Path => {
  const at = ([x, y]: readonly [number, number]) => ({ x, y });
  return pathFromCubics(at(start!), [[at(control1!), at(control2!), at(end!)]], false);
};

/** One that stops and turns back, one that nearly does, and a hairpin with an open tip. */
const TIGHT = {
  cusp: curve([0, 0], [100, 80], [0, 80], [100, 0]),
  'near cusp': curve([30, 100], [90, 19.802], [30, 20], [89.802, 100.5]),
  hairpin: curve([100, 230], [140, 230.067], [140, 230.133], [100, 230.2]),
};

describe.each(Object.entries(TIGHT))('a centre line with a %s', (_, path) => {
  const { samples, lines } = makeStrands([path], 0.625);

  it('is sampled closely at the bend alone', () => {
    expect(samples.length).toBeGreaterThan(pathLength(path) / 0.625);
    expect(samples.length).toBeLessThan(pathLength(path) / 0.625 + 1000);
  });

  it('is sampled in order from end to end, no two neighbours too far apart', () => {
    expect(samples[0]!.point).toEqual(path.start);
    expect(samples.at(-1)!.distance).toBeCloseTo(lines[0]!.length, 6);
    samples.slice(1).forEach(({ point, distance: along }, i) => {
      expect(along).toBeGreaterThan(samples[i]!.distance);
      expect(distance(point, samples[i]!.point)).toBeLessThanOrEqual(along - samples[i]!.distance + 1e-9);
      expect(along - samples[i]!.distance).toBeLessThanOrEqual(0.625 + 1e-9);
    });
  });
});
