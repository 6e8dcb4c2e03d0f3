import { describe, expect, it } from 'vitest';
import { type ArcSegment, type EllipticalArc, arcToCubics, cubicPoint, distance, ellipseAngles, ellipticalArcToCubics, pathFromCubics, rotate } from '../../src/geometry/index.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;
const arcOf = (radiusX: number, radiusY: number, end: { x: number; y: number }, options: Partial<EllipticalArc> = {}): EllipticalArc => ({ radiusX, radiusY, rotation: 0, large: false, sweep: true, end, ...options });

// SVG 2 (W3C editor's draft, 29 June 2026), implementation notes: elliptical arcs, conversion from endpoints to centre.
describe('the centre of an elliptical arc', () => {
  it('of a quarter circle lies at its corner', () => {
    const quarter = ellipseAngles({ x: 100, y: 0 }, arcOf(100, 100, { x: 0, y: 100 }))!;
    expect(quarter.centre.x).toBeCloseTo(0, 9);
    expect(quarter.centre.y).toBeCloseTo(0, 9);
    expect(degrees(quarter.startAngle)).toBeCloseTo(0, 9);
    expect(degrees(quarter.sweep)).toBeCloseTo(90, 9);
  });

  const tilted = arcOf(50, 25, { x: 60, y: 40 }, { rotation: 30 });
  it('of a tilted ellipse follows the formula', () => {
    const arc = ellipseAngles({ x: 0, y: 0 }, tilted)!;
    expect(arc.centre.x).toBeCloseTo(17.657, 3);
    expect(arc.centre.y).toBeCloseTo(32.575, 3);
    expect(degrees(arc.startAngle)).toBeCloseTo(-129.17, 2);
    expect(degrees(arc.sweep)).toBeCloseTo(93.034, 3);
  });

  it('is the same for the rest of that ellipse, run the other way', () => {
    const rest = ellipseAngles({ x: 0, y: 0 }, { ...tilted, large: true, sweep: false })!;
    expect(rest.centre.x).toBeCloseTo(17.657, 3);
    expect(degrees(rest.sweep)).toBeCloseTo(-266.97, 2);
  });

  it('lies midway when the radii are too small to reach, and the radii grow', () => {
    const arc = ellipseAngles({ x: 0, y: 0 }, arcOf(30, 30, { x: 100, y: 0 }))!;
    expect([arc.centre.x, arc.centre.y, arc.radiusX, arc.radiusY]).toEqual([50, expect.closeTo(0, 9), expect.closeTo(50, 9), expect.closeTo(50, 9)]);
    expect(Math.abs(degrees(arc.sweep))).toBeCloseTo(180, 6);
  });

  it('takes negative radii as positive', () => {
    expect(ellipseAngles({ x: 0, y: 0 }, { ...tilted, radiusX: -50 })).toEqual(ellipseAngles({ x: 0, y: 0 }, tilted));
  });
});

describe('cubics along an elliptical arc', () => {
  it('are one straight cubic for a radius of zero and none for equal ends', () => {
    const [line] = ellipticalArcToCubics({ x: 0, y: 0 }, arcOf(0, 5, { x: 9, y: 0 }), 0.01);
    expect(cubicPoint(line!, 0.5)).toEqual({ x: 4.5, y: 0 });
    expect(ellipticalArcToCubics({ x: 1, y: 1 }, arcOf(5, 5, { x: 1, y: 1 }), 0.01)).toEqual([]);
  });

  it.each([[30, false, true], [-75, true, true], [200, true, false], [90, false, false]])('lie on the ellipse, rotated by %d degrees, and end exactly', (rotation, large, sweep) => {
    const [start, arc] = [{ x: -7, y: 3 }, arcOf(50, 20, { x: 21, y: 11 }, { rotation, large, sweep })];
    const cubics = ellipticalArcToCubics(start, arc, 1e-4);
    const { centre, radiusX, radiusY } = ellipseAngles(start, arc)!;
    expect([cubics[0]![0], cubics.at(-1)![3]]).toEqual([start, arc.end]);
    for (const cubic of cubics) {
      for (let t = 0; t <= 1; t += 0.05) {
        const p = cubicPoint(cubic, t);
        const q = rotate({ x: p.x - centre.x, y: p.y - centre.y }, -rotation);
        expect(Math.abs(Math.hypot(q.x / radiusX, q.y / radiusY) - 1) * radiusX).toBeLessThan(1.1e-4);
      }
    }
  });

  it('stay finite for huge and tiny ellipses', () => {
    for (const size of [1e-150, 1e150]) {
      const cubics = ellipticalArcToCubics({ x: 0, y: 0 }, arcOf(2 * size, size, { x: size, y: size }), 0.01);
      expect(cubics.flat().every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
    }
  });
});

// M. Goldapp, Approximation of circular arcs by cubic polynomials, Computer Aided Geometric Design 8 (1991) 227-238.
describe('a circular arc as one cubic', () => {
  it.each([[90, 0.55228, 2.7253e-4], [60, 0.35727, undefined], [45, 0.26522, undefined], [30, 0.17554, undefined]])('over %d degrees has handles of %d radii', (turn, handle, error) => {
    const end = rotate({ x: 1, y: 0 }, turn);
    const arc: ArcSegment = { kind: 'arc', end, centre: { x: 0, y: 0 }, clockwise: false };
    const cubics = arcToCubics({ x: 1, y: 0 }, arc, 1);
    expect(cubics).toHaveLength(1);
    expect(distance(cubics[0]![0], cubics[0]![1])).toBeCloseTo(handle, 5);
    const errors = Array.from({ length: 1001 }, (_, i) => Math.hypot(...Object.values(cubicPoint(cubics[0]!, i / 1000)) as [number, number]) - 1);
    expect(Math.min(...errors)).toBeGreaterThan(-1e-9);
    if (error !== undefined) expect(Math.max(...errors)).toBeCloseTo(error, 7);
  });

  it('takes as many cubics as the tolerance asks for', () => {
    const circle: ArcSegment = { kind: 'arc', end: { x: 100, y: 0 }, centre: { x: 0, y: 0 }, clockwise: true };
    const fine = arcToCubics({ x: 100, y: 0 }, circle, 1e-4);
    expect(arcToCubics({ x: 100, y: 0 }, circle, 1)).toHaveLength(4);
    expect(fine.length).toBeGreaterThan(4);
    const worst = Math.max(...fine.flatMap((cubic) => [0.1, 0.2113, 0.5, 0.7887].map((t) => Math.abs(distance(cubicPoint(cubic, t), circle.centre) - 100))));
    expect(worst).toBeLessThan(1e-4);
    expect(pathFromCubics({ x: 100, y: 0 }, fine.map(([, a, b, c]) => [a, b, c]), true).segments).toHaveLength(fine.length);
  });
});
