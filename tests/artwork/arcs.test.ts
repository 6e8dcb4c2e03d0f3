import { describe, expect, it } from 'vitest';
import { type Path, type Point, arcAngles, flattenPath } from '../../src/geometry/index.ts';
import { readPage, strokeOf, tidy } from './support.ts';

/** The arc of a path, as angles counted on the screen (y down) as the standard counts them. */
function onScreen(path: Path) {
  const [arc] = path.segments;
  if (arc?.kind !== 'arc') throw new Error('expected an arc');
  const { centre, startRadius, sweep } = arcAngles(path.start, arc);
  return { centre: [tidy(centre.x), tidy(100 - centre.y)], radius: tidy(startRadius), turn: tidy((-sweep * 180) / Math.PI) };
}

// SVG 2, appendix B.2 (SVG 1.1, F.6.5 and F.6.6).
describe('an arc by its ends becomes one by its centre', () => {
  it('a quarter turn about the origin', () => {
    expect(onScreen(strokeOf('M100 0A100 100 0 0 1 0 100'))).toEqual({ centre: [0, 0], radius: 100, turn: 90 });
  });
  it('and the rest of the same circle', () => {
    expect(onScreen(strokeOf('M100 0A100 100 0 1 0 0 100'))).toEqual({ centre: [0, 0], radius: 100, turn: -270 });
  });
  it('with radii too small, which grow until they reach', () => {
    const { centre, radius, turn } = onScreen(strokeOf('M0 0A30 30 0 0 1 100 0'));
    expect({ centre, radius, turn: Math.abs(turn) }).toEqual({ centre: [50, 0], radius: 50, turn: 180 });
  });
  it('with negative radii, whose sign does not count', () => {
    expect(onScreen(strokeOf('M100 0A-100 -100 0 0 1 0 100'))).toEqual({ centre: [0, 0], radius: 100, turn: 90 });
  });
  it('nearly a full circle, as some programs write one', () => {
    const { centre, radius, turn } = onScreen(strokeOf('M60 50A10 10 0 1 1 60 49.9999'));
    expect(centre[0]).toBeCloseTo(50, 3);
    expect(radius).toBeCloseTo(10, 6);
    expect(turn).toBeCloseTo(360 - (0.0001 / 10) * (180 / Math.PI), 4);
  });
  it('with a radius of zero, which is a line', () => {
    expect(strokeOf('M0 0A0 20 0 0 1 100 0').segments.map(({ kind }) => kind)).toEqual(['line']);
  });
  it('with equal ends, which draws nothing', () => {
    expect(strokeOf('M0 0L5 5A9 9 0 0 1 5 5').segments).toHaveLength(1);
  });
  it('with radii that dwarf its chord, which is a line to a hair', () => {
    expect(strokeOf('M0 0A1e300 1e300 0 0 1 100 0').segments.map(({ kind }) => kind)).toEqual(['line']);
    const [bulge] = strokeOf('M0 0A1e5 1e5 0 0 1 10 0').segments;
    expect(bulge).toMatchObject({ kind: 'cubic' });
  });
});

/** How far points lie from the ellipse, measured on the unit circle and scaled by the greater radius. */
function deviation(points: readonly Point[], [cx, cy]: readonly [number, number], [rx, ry]: readonly [number, number], degrees: number): number {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return points.reduce((worst, { x, y }) => {
    const [dx, dy] = [x - cx, 100 - y - cy];
    return Math.max(worst, Math.abs(Math.hypot((cos * dx + sin * dy) / rx, (cos * dy - sin * dx) / ry) - 1) * Math.max(rx, ry));
  }, 0);
}

describe('an arc of an ellipse becomes cubics', () => {
  // Worked from the same formulas: centre (17.657, 32.575) for both, turning 93.034 or -266.97 degrees.
  it.each([['0 1', true], ['1 0', false]] as const)('on the ellipse of the worked example, flags %s', (flags, isShort) => {
    const path = strokeOf(`M0 0A50 25 30 ${flags} 60 40`);
    expect(path.segments.every(({ kind }) => kind === 'cubic')).toBe(true);
    const points = flattenPath(path, 1e-4);
    expect(deviation(points, [17.657, 32.575], [50, 25], 30)).toBeLessThan(2e-3);
    const length = points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y), 0);
    expect(length < 100).toBe(isShort);
  });

  it('within the tolerance asked for, with more pieces for a finer one', () => {
    const ellipse = (tolerance: number) => readPage('<ellipse cx="50" cy="50" rx="5000" ry="2000"/>', { tolerance }).outlines[0]!.paths[0]!;
    for (const tolerance of [2, 0.01]) {
      const points = flattenPath(ellipse(tolerance), tolerance / 20);
      expect(deviation(points, [50, 50], [5000, 2000], 0)).toBeLessThan(tolerance * 1.06);
    }
    expect(ellipse(0.01).segments.length).toBeGreaterThan(ellipse(2).segments.length);
  });
});

it('turns the y axis once: growing angles on the screen are clockwise', () => {
  expect(strokeOf('M100 0A100 100 0 0 1 0 100').segments[0]).toMatchObject({ kind: 'arc', clockwise: true });
});
