import { describe, expect, it } from 'vitest';
import { cubicPath, pathBounds, pathLength } from '../../src/geometry/index.ts';
import { circle, line } from '../support/shapes.ts';

describe('a path in cubics alone', () => {
  it('keeps a polyline exactly', () => {
    const path = line([0, 0], [30, 40], [30, 90]);
    expect(cubicPath(path, 1e-5).segments.map(({ kind, end }) => [kind, end])).toEqual([['cubic', { x: 30, y: 40 }], ['cubic', { x: 30, y: 90 }]]);
    expect(pathLength(cubicPath(path, 1e-5))).toBeCloseTo(100, 9);
  });

  it('keeps a circle within the tolerance, closed', () => {
    const path = cubicPath(circle(10, 20, 50), 1e-5);
    expect(path.closed).toBe(true);
    expect(path.segments.at(-1)!.end).toEqual(path.start);
    expect(pathLength(path)).toBeCloseTo(100 * Math.PI, 3);
    expect(pathBounds(path)).toMatchObject({ minX: expect.closeTo(-40, 4) as number, maxY: expect.closeTo(70, 4) as number });
  });

  it('keeps a single point', () => {
    const dot = { start: { x: 1, y: 2 }, segments: [], closed: false };
    expect(cubicPath(dot, 1e-5)).toEqual(dot);
  });
});
