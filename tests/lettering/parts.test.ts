import { describe, expect, it } from 'vitest';
import { distance, flattenPath, leastRadius, makeRegionIndex, pathEnd, type Point, samplePath } from '../../src/geometry/index.ts';
import { addEquation, emptyNormals, solveNormals } from '../../src/lettering/banded.ts';
import { sampleBoundary, walkOf, wayBetween } from '../../src/lettering/boundary.ts';
import { cleanOutlines } from '../../src/lettering/clean.ts';
import { crotchBetween, isSmooth } from '../../src/lettering/crotch.ts';
import { alongCircle, courseAtEnd } from '../../src/lettering/ends.ts';
import { fitCubics, tangentsOf } from '../../src/lettering/fit-cubics.ts';
import { pairCost } from '../../src/lettering/pairing.ts';
import { relaxed, USUAL } from '../../src/lettering/settle.ts';
import { momentsOf } from '../../src/lettering/solid.ts';
import { footFrom } from '../../src/lettering/walls.ts';
import { seeded } from '../support/random.ts';
import { asOutline } from './truth/index.ts';

const at = (x: number, y: number): Point => ({ x, y });
const square = (size: number): Point[] => [at(0, 0), at(size, 0), at(size, size), at(0, size)];

describe('the boundary', () => {
  const boundary = sampleBoundary({ loops: [square(10)] }, 1);
  const walk = walkOf(boundary);

  it('has points no farther apart than asked, and walks round corners and round the start', () => {
    expect(boundary.next.length).toBe(40);
    expect(walk.from(8, 4)).toEqual(at(10, 2));
    expect(walk.from(2, -4)).toEqual(at(0, 2));
    expect(walk.way(38, 3)).toBeCloseTo(5);
    expect(walk.way(3, 38)).toBeCloseTo(-5);
    expect(wayBetween(boundary, 38, 3)).toBeCloseTo(5);
  });

  it('finds the nearest place of a wall by walking downhill', () => {
    const foot = footFrom(boundary, 0, at(6.3, 1.5));
    expect(foot.distance).toBeCloseTo(1.5, 9);
    expect(foot.toward).toEqual(at(0, -1));
  });
});

it('outlines that overlap become one region, crumbs dropped and sources remembered', () => {
  const bar = (x: number, source: string) => ({ ...asOutline({ loops: [[at(x, 0), at(x + 60, 0), at(x + 60, 10), at(x, 10)]] }), source });
  const crumb = asOutline({ loops: [[at(0, 50), at(0.5, 50), at(0, 50.5)]] });
  const cleaned = cleanOutlines([bar(0, 'a'), bar(50, 'b'), crumb])!;
  expect([cleaned.region.loops.length, cleaned.crumbs, cleaned.sourceAt(at(20, 5)), cleaned.sourceAt(at(100, 5)), cleaned.sourceAt(at(0, 90))]).toEqual([1, 1, 'a', 'b', undefined]);
  expect(Math.abs(cleaned.width - 2 * 1100 / 240)).toBeLessThan(0.01);
  expect(cleanOutlines([])).toBeUndefined();
  expect(cleanOutlines([asOutline({ loops: [[at(0, 0), at(5, 0), at(9, 0)]] })])).toBeUndefined();
});

it('a crotch is a turn beyond the walls\' own bend, on straight and on bent walls', () => {
  // A bar of 10 with a stem of 10 standing on it; the crotch is the corner at (35, 10).
  const shape = [at(0, 0), at(70, 0), at(70, 10), at(35, 10), at(35, 60), at(25, 60), at(25, 10), at(0, 10)];
  const boundary = sampleBoundary({ loops: [shape] }, 0.8);
  const shore = { boundary, walk: walkOf(boundary) };
  const nearest = (place: Point) => [...boundary.next.keys()].reduce((best, i) => (distance(place, at(boundary.places[2 * i]!, boundary.places[2 * i + 1]!)) < distance(place, at(boundary.places[2 * best]!, boundary.places[2 * best + 1]!)) ? i : best), 0);
  const corner = crotchBetween(shore, nearest(at(38, 10)), nearest(at(35, 13)), 10);
  expect(corner.turn).toBeCloseTo(Math.PI / 2, 1);
  expect(distance(at(boundary.places[2 * corner.index]!, boundary.places[2 * corner.index + 1]!), at(35, 10))).toBeLessThan(1);
  expect(isSmooth(crotchBetween(shore, nearest(at(28, 0)), nearest(at(32, 0)), 10))).toBe(true);
  const ring = sampleBoundary({ loops: [Array.from({ length: 200 }, (_, i) => at(15 * Math.cos((-2 * Math.PI * i) / 200), 15 * Math.sin((-2 * Math.PI * i) / 200)))] }, 0.5);
  expect(isSmooth(crotchBetween({ boundary: ring, walk: walkOf(ring) }, 20, 24, 10))).toBe(true);
});

it('banded least squares agree with the equations they came from', () => {
  const random = seeded(5);
  const [count, reach] = [30, 7];
  const normals = emptyNormals(count, reach);
  const truth = Array.from({ length: count }, () => random() - 0.5);
  for (let k = 0; k < 150; k++) {
    const first = Math.floor(random() * (count - reach));
    const places = [first, first + 2, first + 3, first + 7];
    const factors = places.map(() => random() - 0.5);
    addEquation(normals, places, factors, factors.reduce((sum, factor, i) => sum + factor * truth[places[i]!]!, 0), 0.5 + random());
  }
  solveNormals(normals).forEach((value, i) => expect(value).toBeCloseTo(truth[i]!, 8));
});

describe('fitting cubics', () => {
  const spiral = Array.from({ length: 300 }, (_, i) => at((40 + i / 8) * Math.cos(i / 40), (40 + i / 8) * Math.sin(i / 40)));

  it('stays within the tolerance of every point, with few pieces and no kink', () => {
    for (const tolerance of [0.1, 0.01, 0.001]) {
      const path = fitCubics(spiral, false, tolerance);
      const index = makeRegionIndex({ loops: [flattenPath(path, tolerance / 20)] });
      for (const point of spiral) expect(index.distanceToBoundary(point)).toBeLessThan(1.1 * tolerance);
      expect(path.segments.length).toBeLessThan(tolerance < 0.01 ? 32 : 16);
      expect(leastRadius(path).radius).toBeGreaterThan(25);
    }
  });

  it('closes a ring smoothly, and ends an open line exactly at its ends', () => {
    const ring = Array.from({ length: 80 }, (_, i) => at(30 * Math.cos(i * Math.PI / 40), 30 * Math.sin(i * Math.PI / 40)));
    const path = fitCubics(ring, true, 0.005);
    expect([path.closed, pathEnd(path)]).toEqual([true, path.start]);
    expect(Math.abs(leastRadius(path).radius - 30)).toBeLessThan(2);
    for (const { point } of samplePath(path, 1)) expect(Math.abs(Math.hypot(point.x, point.y) - 30)).toBeLessThan(0.01);
    const open = fitCubics(spiral, false, 0.01);
    expect([open.start, pathEnd(open)]).toEqual([spiral[0], spiral.at(-1)]);
  });

  it('never runs back along a nearly straight piece of few points, wherever they lie within the tolerance', () => {
    const random = seeded(7);
    for (let k = 0; k < 100; k++) {
      const points = Array.from({ length: 8 }, (_, i) => at(1.6 * i, 0.01 * i * i + 0.05 * (random() - 0.5)));
      for (const { tangent } of samplePath(fitCubics(points, false, 0.02), 0.05)) expect(tangent.x).toBeGreaterThan(0.9);
    }
  });

  it('finds tangents of a circle, also at its ends', () => {
    const arc = Array.from({ length: 30 }, (_, i) => at(10 * Math.cos(i / 15), 10 * Math.sin(i / 15)));
    tangentsOf(arc, false).forEach((tangent, i) => expect(Math.hypot(tangent.x + Math.sin(i / 15), tangent.y - Math.cos(i / 15))).toBeLessThan(0.002));
  });
});

it('a circle\'s end tells its heading and curvature, and runs on along it', () => {
  const arc = Array.from({ length: 40 }, (_, i) => at(25 * Math.sin(i / 20), 25 - 25 * Math.cos(i / 20)));
  const { heading, curvature } = courseAtEnd(arc, 12);
  expect(heading).toBeCloseTo(39 / 20, 4);
  expect(curvature).toBeCloseTo(1 / 25, 4);
  const next = alongCircle(arc.at(-1)!, heading, curvature, 10);
  expect(Math.hypot(next.x, next.y - 25)).toBeCloseTo(25, 3);
});

describe('the cost of a pair of arms', () => {
  const view = (x: number, y: number, degrees: number, width = 10, curvature = 0) =>
    ({ tip: 0, point: at(x, y), direction: (degrees * Math.PI) / 180, curvature, width, span: 2 });

  it('is nothing straight through, the angle at a bend, and less than the angle on a circle that both lie on', () => {
    expect(pairCost(view(-10, 0, 180), view(10, 0, 0))).toBeCloseTo(0, 6);
    expect(pairCost(view(-10, 0, 180), view(10 * Math.cos(0.5), 10 * Math.sin(0.5), 28.65))).toBeCloseTo(28.65, 1);
    const bent = pairCost(view(0, 0, 180, 10, -1 / 40), view(40 * Math.sin(0.5), 40 - 40 * Math.cos(0.5), 28.65, 10, 1 / 40));
    expect(bent).toBeLessThan(2);
  });

  it('grows with a step aside and with a step in width, and does not care which arm comes first', () => {
    const [a, b] = [view(-10, 0, 180), view(10, 6, 0, 7)];
    expect(pairCost(a, b)).toBeCloseTo(pairCost(b, a), 9);
    expect(pairCost(a, view(10, 6, 0))).toBeGreaterThan(30);
    expect(pairCost(a, view(10, 0, 0, 5))).toBeCloseTo(25, 6);
  });
});

it('moments of a turned rectangle: its middle, its direction, and the half-axes of the ellipse with the same ones', () => {
  const [cos, sin] = [Math.cos(0.4), Math.sin(0.4)];
  const loop = [at(-30, -10), at(30, -10), at(30, 10), at(-30, 10)].map(({ x, y }) => at(100 + x * cos - y * sin, 50 + x * sin + y * cos));
  const { centre, long, short, direction } = momentsOf({ loops: [loop] });
  // Second moment of a side of length s about its middle: s^2 / 12 (any handbook), an ellipse's: a^2 / 4.
  expect([centre.x, centre.y, long, short, direction].map((value) => Number(value.toFixed(6)))).toEqual([100, 50, 34.641016, 11.547005, 0.4]);
});

it.each([[50], [3000]])('a line of %d places that sees no wall at all is still smoothed where it is', (count) => {
  const boundary = sampleBoundary({ loops: [square(10)] }, 1);
  const line = Array.from({ length: count }, (_, i) => ({ ...at(i, 0.1 * (i % 2)), half: 5, seen: 0, left: [], right: [] }));
  const smooth = relaxed({ boundary, walk: walkOf(boundary) }, line, USUAL);
  for (const { y } of smooth) expect(Math.abs(y)).toBeLessThan(0.11);
  for (let i = 4; i < count - 3; i++) expect(Math.abs(smooth[i]!.y - smooth[i - 1]!.y)).toBeLessThan(0.01);
});
