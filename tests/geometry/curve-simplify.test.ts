import { describe, expect, it } from 'vitest';
import { type Point, simplifyLoop, simplifyPolyline } from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { distanceToPolyline, twoWayDistance } from './curve-shapes.ts';

const wave = (count: number, noise: number, seed: number): Point[] => {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, i) => ({ x: i * 0.1, y: 5 * Math.sin(i / 40) + noise * random() }));
};
const ring = (count: number): Point[] => Array.from({ length: count }, (_, i) => ({ x: 30 * Math.cos((2 * Math.PI * i) / count), y: 20 * Math.sin((2 * Math.PI * i) / count) }));
const closed = (loop: readonly Point[]) => [...loop, loop[0]!];

describe('a simplified polyline', () => {
  it.each([0.001, 0.01, 0.04])('stays within %d mm both ways, between the same ends', (tolerance) => {
    for (const noise of [0, 0.05]) {
      const points = wave(600, noise, 3);
      const result = simplifyPolyline(points, tolerance);
      expect([result[0], result.at(-1)]).toEqual([points[0], points.at(-1)]);
      expect(twoWayDistance(points, result)).toBeLessThanOrEqual(tolerance);
      if (noise === 0) expect(result.length).toBeLessThan(points.length);
    }
  });

  it('of a straight line is its two ends', () => {
    expect(simplifyPolyline(Array.from({ length: 100 }, (_, i) => ({ x: i, y: 2 * i })), 1e-9)).toHaveLength(2);
  });

  it('keeps a spike that turns back on its own line', () => {
    const points = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 4, y: 0 }];
    expect(simplifyPolyline(points, 0.01)).toEqual(points);
  });

  it('is itself when it has fewer than three points', () => {
    for (const points of [[], [{ x: 1, y: 1 }], [{ x: 1, y: 1 }, { x: 1, y: 1 }]]) expect(simplifyPolyline(points, 1)).toEqual(points);
  });

  it('comes back from a long zigzag, where the farthest point is always the next', () => {
    const points = Array.from({ length: 20_000 }, (_, i) => ({ x: i * 0.01, y: (i % 2) * 0.02 }));
    expect(simplifyPolyline(points, 0.001)).toHaveLength(20_000);
  });
});

describe('a simplified loop', () => {
  it('stays within the tolerance both ways, wherever it starts', () => {
    const loop = ring(700);
    const result = simplifyLoop(loop, 0.02);
    expect(result.length).toBeLessThan(140);
    expect(twoWayDistance(closed(loop), closed(result))).toBeLessThanOrEqual(0.02);
    const turned = [...loop.slice(123), ...loop.slice(0, 123)];
    const sorted = (points: readonly Point[]) => points.map(({ x, y }) => `${x} ${y}`).sort();
    expect(sorted(simplifyLoop(turned, 0.02))).toEqual(sorted(result));
  });

  it('loses a start in the middle of a side', () => {
    expect(simplifyLoop([{ x: 5, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }, { x: 0, y: 0 }], 0.01)).toHaveLength(4);
  });

  it('thinner than the tolerance keeps two points or one', () => {
    const sliver = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 5, y: 0.001 }];
    const result = simplifyLoop(sliver, 0.01);
    expect(result).toHaveLength(2);
    for (const p of sliver) expect(distanceToPolyline(p, closed(result))).toBeLessThanOrEqual(0.01);
    expect(simplifyLoop([{ x: 1, y: 1 }, { x: 1, y: 1 }, { x: 1, y: 1 }], 0.01)).toHaveLength(1);
  });
});
