import { describe, expect, it } from 'vitest';
import { type Path, type Point, arcAngles, biarc, fitArcs, fitLines, pathSegmentsWithStarts } from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { asPolyline, rounded, sampled, tangentBreaks, twoWayDistance } from './curve-shapes.ts';

const TOLERANCE = 0.005;
/** Our own flattening of the result for the comparison may stray by this much. */
const MEASURE = 2e-5;

const open = (points: readonly Point[]) => fitArcs(points, { closed: false, tolerance: TOLERANCE });
const closed = (points: readonly Point[]) => fitArcs(points, { closed: true, tolerance: TOLERANCE });
const turned = (points: readonly Point[], angle: number, factor = 1): Point[] =>
  points.map(({ x, y }) => ({ x: factor * (x * Math.cos(angle) - y * Math.sin(angle)), y: factor * (x * Math.sin(angle) + y * Math.cos(angle)) }));
const onGrid = (points: readonly Point[], grid: number) => points.map((p) => rounded(p, grid));
const kinds = ({ segments }: Path) => ({ lines: segments.filter(({ kind }) => kind === 'line').length, arcs: segments.filter(({ kind }) => kind === 'arc').length });
const deviation = (path: Path, points: readonly Point[]) => twoWayDistance(asPolyline(path), path.closed ? [...points, points[0]!] : points);

/** What must hold of every fit. */
function expectFollows(path: Path, points: readonly Point[], tolerance = TOLERANCE): void {
  expect(deviation(path, points)).toBeLessThanOrEqual(tolerance + MEASURE);
  expect(path.start).toEqual(points[0]);
  expect(path.segments.at(-1)?.end ?? path.start).toEqual(path.closed ? points[0] : points.at(-1));
  for (const { start, segment } of pathSegmentsWithStarts(path)) {
    if (segment.kind !== 'arc') continue;
    const { startRadius, endRadius, sweep } = arcAngles(start, segment);
    expect(Math.abs(startRadius - endRadius)).toBeLessThan(1e-7);
    expect(Math.abs(sweep)).toBeLessThan((171 * Math.PI) / 180);
  }
}

const expectSmooth = (path: Path) => expect(Math.max(0, ...tangentBreaks(path))).toBeLessThan(0.05);

const circle = (radius: number) => (t: number) => ({ x: 100.3 + radius * Math.cos(t), y: 7.7 + radius * Math.sin(t) });
const ellipse = (a: number, b: number) => (t: number) => ({ x: a * Math.cos(t) + 500.123, y: b * Math.sin(t) + 300.77 });
const round = (curve: (t: number) => Point, sagitta: number, grid: number) => sampled(curve, [0, 2 * Math.PI], sagitta, grid).slice(0, -1);

function roundedRectangle(width: number, height: number, radius: number, sagitta: number): Point[] {
  const centres = [[width - radius, height - radius], [radius, height - radius], [radius, radius], [width - radius, radius]] as const;
  const steps = Math.ceil(Math.PI / 4 / Math.acos(1 - sagitta / radius));
  return centres.flatMap(([x, y], quarter) => Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (quarter + i / steps) * (Math.PI / 2);
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  }));
}

const GRIDS = [[0.002, 0.001], [0.0005, 0.001], [0.002, 0.0001], [0.0005, 0.0001], [0.0001, 0]] as const;

describe.each(GRIDS)('with chords %d mm off the curve and points rounded to %d mm', (sagitta, grid) => {
  it.each([0.2, 1, 5, 50, 500])('a circle of radius %d comes back as three arcs of one circle', (radius) => {
    const points = round(circle(radius), sagitta, grid);
    const path = closed(points);
    expectFollows(path, points);
    expectSmooth(path);
    expect(kinds(path)).toEqual({ lines: 0, arcs: 3 });
    const [start, arc] = [path.start, path.segments[0]!];
    if (arc.kind !== 'arc') throw new Error('a circle is made of arcs');
    expect(Math.abs(arcAngles(start, arc).startRadius - radius)).toBeLessThan(0.003);
  });

  it.each([[200, 100, 10], [20, 10, 1], [900, 500, 60]])('a rounded rectangle %d x %d, radius %d, comes back as four lines and four arcs', (width, height, radius) => {
    for (const angle of [0, 0.4321, 2]) {
      const points = onGrid(turned(roundedRectangle(width, height, radius, sagitta), angle), grid);
      const path = closed(points);
      expectFollows(path, points);
      expectSmooth(path);
      expect(kinds(path)).toEqual({ lines: 4, arcs: 4 });
    }
  });

  it('a rounded rectangle that starts inside a side or an arc keeps that start', () => {
    const loop = onGrid(turned(roundedRectangle(200, 100, 10, sagitta), 0.3), grid);
    const quarter = loop.length / 4;
    const middle = { x: (loop[quarter]!.x + loop[quarter - 1]!.x) / 2, y: (loop[quarter]!.y + loop[quarter - 1]!.y) / 2 };
    const inSide = closed([middle, ...loop.slice(quarter), ...loop.slice(0, quarter)]);
    expect(kinds(inSide)).toEqual({ lines: 5, arcs: 4 });
    const at = Math.floor(quarter / 2);
    const points = [...loop.slice(at), ...loop.slice(0, at)];
    const inArc = closed(points);
    expect(kinds(inArc)).toEqual({ lines: 4, arcs: 5 });
    expectFollows(inArc, points);
    expectSmooth(inArc);
  });

  it('a slot comes back as two lines and two half circles of two arcs each', () => {
    const points = onGrid(turned(roundedRectangle(200, 20, 10, sagitta), 0.4321), grid);
    const path = closed(points);
    expectFollows(path, points);
    expectSmooth(path);
    expect(kinds(path)).toEqual({ lines: 2, arcs: 4 });
  });

  it('a half disc keeps its two corners', () => {
    const points = sampled(circle(20), [0, Math.PI], sagitta, grid);
    const path = closed(points);
    expectFollows(path, points);
    expect(kinds(path)).toEqual({ lines: 1, arcs: 2 });
    expect(tangentBreaks(path).filter((turn) => turn > 80)).toHaveLength(2);
  });
});

/**
 * Arcs tangent to each other need, by the theory of spline approximation, about the integral of
 * (|k'| / (36 sqrt(12) e))^(1/3) ds of them for a curve of curvature k and a greatest error e: one arc of length h
 * leaves k' h^3 / 6 times sqrt(3) / 36, the greatest value of Bernoulli's polynomial of degree 3 (Abramowitz and Stegun, 23.1).
 */
function arcsNeeded(curve: (t: number) => Point, [t0, t1]: readonly [number, number], error: number): number {
  const steps = 4000;
  const at = (i: number) => curve(t0 + ((t1 - t0) * i) / steps);
  const edges = Array.from({ length: steps }, (_, i) => ({ x: at(i + 1).x - at(i).x, y: at(i + 1).y - at(i).y }));
  const sizes = edges.map(({ x, y }) => Math.hypot(x, y));
  const bends = edges.slice(1).map((v, i) => {
    const u = edges[i]!;
    return (2 * Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y)) / (sizes[i]! + sizes[i + 1]!);
  });
  return bends.slice(1).reduce((sum, bend, i) => {
    const change = Math.abs(bend - bends[i]!) / sizes[i + 1]!;
    return sum + Math.cbrt((change * Math.sqrt(3)) / (216 * error)) * sizes[i + 1]!;
  }, 0);
}

const sine = (t: number) => ({ x: t, y: 10 * Math.sin(t / 8) });
const spiral = (t: number) => ({ x: (5 + 2 * t) * Math.cos(t), y: (5 + 2 * t) * Math.sin(t) });

/** Parallel at 4 mm to the cubic (0,0) (40,80) (80,-60) (120,30). */
function parallel(t: number): Point {
  const s = 1 - t;
  const [x, y] = [120 * t, 240 * s * s * t - 180 * s * t * t + 30 * t ** 3];
  const slope = (240 * s * s - 480 * s * t + 360 * t * t - 360 * s * t + 180 * t * t - 180 * t * t + 90 * t * t) / 120;
  const size = Math.hypot(1, slope);
  return { x: x - (4 * slope) / size, y: y + 4 / size };
}

describe.each<[string, (t: number) => Point, readonly [number, number], boolean]>([
  ['the ellipse 50, 20', ellipse(50, 20), [0, 2 * Math.PI], true],
  ['the ellipse 500, 100', ellipse(500, 100), [0, 2 * Math.PI], true],
  ['a spiral', spiral, [0, 20], false],
  ['a sine wave', sine, [0, 100], false],
  ['a parallel of a cubic', parallel, [0, 1], false],
])('%s', (_, curve, range, isClosed) => {
  it.each([GRIDS[0], GRIDS[1], GRIDS[3]])('becomes few tangent arcs (chords %d off, grid %d)', (sagitta, grid) => {
    const all = sampled(curve, range, sagitta, grid);
    const points = isClosed ? all.slice(0, -1) : all;
    const path = fitArcs(points, { closed: isClosed, tolerance: TOLERANCE });
    expectFollows(path, points);
    expectSmooth(path);
    // Chords and rounding take their part of the tolerance; arcs in pairs cannot share it perfectly.
    const needed = arcsNeeded(curve, range, TOLERANCE - sagitta / 2 - grid / 2);
    expect(path.segments.length).toBeGreaterThan(0.8 * needed);
    expect(path.segments.length).toBeLessThan(2 * needed + 4);
    expect(path.segments.length).toBeLessThan(points.length / 3);
  });
});

describe('rough and odd input', () => {
  it.each([0.001, 0.002, 0.003])('scattered by up to %d mm is smoothed within the tolerance', (noise) => {
    const random = seeded(7);
    const scattered = (curve: (t: number) => Point, count: number) => Array.from({ length: count }, (_, i) => {
      const p = curve((2 * Math.PI * i) / count);
      return { x: p.x + noise * (2 * random() - 1), y: p.y + noise * (2 * random() - 1) };
    });
    for (const points of [scattered(ellipse(50, 20), 4000), scattered(circle(30), 2000)]) {
      const path = closed(points);
      expectFollows(path, points);
      expect(path.segments.length).toBeLessThan(110);
    }
  });

  it('finds corners between curves, and no others', () => {
    // Three arcs of radius 30 that meet at 60 degrees: a Reuleaux triangle has corners of 120 degrees, so turns of 60.
    const corners = [0, 1, 2].map((i) => ({ x: Math.cos((i * 2 * Math.PI) / 3) * 17.32, y: Math.sin((i * 2 * Math.PI) / 3) * 17.32 }));
    const loop = corners.flatMap((corner, i) => {
      const opposite = corners[(i + 2) % 3]!;
      const from = Math.atan2(corner.y - opposite.y, corner.x - opposite.x);
      const radius = Math.hypot(corner.y - opposite.y, corner.x - opposite.x);
      return sampled((t) => ({ x: opposite.x + radius * Math.cos(from + t), y: opposite.y + radius * Math.sin(from + t) }), [0, Math.PI / 3], 0.001, 0.001).slice(0, -1);
    });
    const path = closed(loop);
    expectFollows(path, loop);
    expect(kinds(path)).toEqual({ lines: 0, arcs: 3 });
    tangentBreaks(path).forEach((turn) => expect(turn).toBeCloseTo(60, 0));
  });

  it.each([5, 10, 20, 40])('keeps a corner of %d degrees between two arcs', (degrees) => {
    const half = (t: number) => ({ x: 50 * Math.sin(t), y: 50 * (1 - Math.cos(t)) });
    const arc = sampled(half, [0, 0.6], 0.001, 0);
    const before = arc.map(({ x, y }) => ({ x: -x, y })).reverse();
    const points = onGrid([...before, ...turned(arc.slice(1), (degrees * Math.PI) / 180)], 0.001);
    const path = open(points);
    expectFollows(path, points);
    expect(kinds(path)).toEqual({ lines: 0, arcs: 2 });
    expect(Math.max(...tangentBreaks(path))).toBeCloseTo(degrees, 0);
  });

  it('starts smoothly a hair before the end of a side', () => {
    const loop = onGrid(turned(roundedRectangle(200, 100, 10, 0.001), 0.3), 0.001);
    const [side, end] = [loop.at(-1)!, loop[0]!];
    const size = Math.hypot(end.x - side.x, end.y - side.y);
    for (const short of [0.01, 0.05, 0.2]) {
      const t = 1 - short / size;
      const points = [rounded({ x: side.x + t * (end.x - side.x), y: side.y + t * (end.y - side.y) }, 0.001), ...loop];
      const path = closed(points);
      expectFollows(path, points);
      expectSmooth(path);
    }
  });

  it.each([0.001, 0.005, 0.01, 0.02, 0.05, 0.1])('keeps a loop of radius %d, small as it is', (radius) => {
    const points = Array.from({ length: 24 }, (_, i) => rounded(circle(radius)((2 * Math.PI * i) / 24), 1e-4));
    expectFollows(closed(points), points.filter((p, i) => i === 0 || p.x !== points[i - 1]!.x || p.y !== points[i - 1]!.y));
  });

  it('keeps polygons, slivers, spikes, repeats and single points as they are', () => {
    const square = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }];
    expect(closed(square).segments.map(({ end }) => end)).toEqual([...square.slice(1), square[0]]);
    expect(kinds(closed([...square, square[0]!]))).toEqual({ lines: 4, arcs: 0 });
    expect(open([{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 2, y: 0 }]).segments).toHaveLength(2);
    expect(open([{ x: 3, y: 4 }, { x: 3, y: 4 }])).toEqual({ start: { x: 3, y: 4 }, segments: [], closed: false });
    expect(closed([{ x: 0, y: 0 }, { x: 1, y: 0 }]).segments).toHaveLength(2);
  });

  it('refuses no points, points that are not finite or out of reach, and a tolerance that is not positive', () => {
    expect(() => open([])).toThrow(RangeError);
    for (const x of [NaN, Infinity, 1e308]) expect(() => open([{ x, y: 0 }, { x: 0, y: 0 }])).toThrow(RangeError);
    for (const tolerance of [0, -1, NaN, Infinity]) expect(() => fitArcs([{ x: 0, y: 0 }], { closed: true, tolerance })).toThrow(RangeError);
  });

  it('holds the bound on whatever comes: random polygons of any size', () => {
    const random = seeded(21);
    for (let round = 0; round < 150; round++) {
      const size = 10 ** (random() * 6 - 4);
      const points = Array.from({ length: 2 + Math.floor(random() * 10) }, () => (random() < 0.3 ? { x: Math.round(random() * 3) * size, y: Math.round(random() * 3) * size } : { x: random() * size, y: random() * size }));
      const path = fitArcs(points, { closed: random() < 0.5, tolerance: TOLERANCE });
      const along = asPolyline(path);
      expect(along.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
      if (along.length > 1) expect(deviation(path, points)).toBeLessThanOrEqual(TOLERANCE + MEASURE);
    }
  });

  it('holds the bound, and stays smooth but for the corners put in, on chains of lines, arcs and spirals', () => {
    const random = seeded(11);
    let [joints, breaks, corners] = [0, 0, 0];
    for (let round = 0; round < 45; round++) {
      const { points, corners: put } = chain(random, 1 + Math.floor(random() * 6), [0, 1e-4, 1e-3][round % 3]!);
      const path = open(points);
      expectFollows(path, points);
      joints += path.segments.length - 1;
      breaks += tangentBreaks(path).filter((turn) => turn > 0.05).length;
      corners += put;
    }
    expect(breaks).toBeLessThanOrEqual(corners + joints / 50);
  });
});

/** Lines, arcs and spirals, each starting in the direction the one before ended in, but for a corner now and then. */
function chain(random: () => number, count: number, grid: number): { points: Point[]; corners: number } {
  let [x, y, heading, corners] = [random() * 1000, random() * 1000, random() * 6, 0];
  const points: Point[] = [{ x, y }];
  for (let k = 0; k < count; k++) {
    if (k > 0 && random() < 0.25) {
      heading += (random() < 0.5 ? -1 : 1) * (0.2 + random() * 2.2);
      corners++;
    }
    const size = Math.exp(random() * 5 - 1.5);
    const [k0, k1] = random() < 0.3 ? [0, 0] : [0, 0].map(() => ((random() - 0.5) * 2) / Math.exp(random() * 4 - 1)) as [number, number];
    const sagitta = 0.0003 + random() * 0.0015;
    for (let s = 0; s < size;) {
      const bend = (at: number) => k0 + ((k1 - k0) * at) / size;
      let step = size - s;
      while (step > 1e-3 && (Math.max(Math.abs(bend(s)), Math.abs(bend(s + step))) * step * step) / 8 > sagitta) step *= 0.8;
      const middle = bend(s + step / 2);
      x += step * Math.cos(heading + (middle * step) / 2);
      y += step * Math.sin(heading + (middle * step) / 2);
      heading += middle * step;
      s += step;
      points.push({ x, y });
    }
  }
  return { points: onGrid(points, grid), corners };
}

describe('a fit in lines only', () => {
  it('stays within the tolerance both ways, with fewer points', () => {
    const points = round(ellipse(50, 20), 0.0005, 0.001);
    const path = fitLines(points, { closed: true, tolerance: TOLERANCE });
    expect(deviation(path, points)).toBeLessThanOrEqual(TOLERANCE);
    expect(kinds(path).arcs).toBe(0);
    expect(path.segments.length).toBeLessThan(points.length / 2);
    expect(path.segments.at(-1)!.end).toEqual(path.start);
  });
});

// K. M. Bolton, Biarc curves, Computer-Aided Design 7 (1975) 89-92: joint midway between handles of equal length.
describe('a biarc', () => {
  const right = { x: 1, y: 0 };
  const up = { x: 0, y: 1 };
  it.each([
    [{ x: 10, y: 10 }, up, { x: 7.0711, y: 2.9289 }, [10, 10]],
    [{ x: 10, y: 4 }, right, { x: 5, y: 2 }, [7.25, 7.25]],
    [{ x: 8, y: 6 }, up, { x: 5.4749, y: 1.5251 }, [10.59, 5.2278]],
  ])('from (0,0) to %o has the joint and radii of the formula', (end, direction, joint, radii) => {
    const pieces = biarc({ x: 0, y: 0 }, right, end, direction)!;
    expect(pieces[0].end.x).toBeCloseTo(joint.x, 4);
    expect(pieces[0].end.y).toBeCloseTo(joint.y, 4);
    expect(pieces.map((piece) => (piece.kind === 'arc' ? piece.radius : Infinity))).toEqual(radii.map((radius) => expect.closeTo(radius, 3)));
  });

  it('turns left then right for a step sideways, 11.035 long in all', () => {
    const pieces = biarc({ x: 0, y: 0 }, right, { x: 10, y: 4 }, right)!;
    expect(pieces.map((piece) => piece.kind === 'arc' && piece.clockwise)).toEqual([false, true]);
    const total = pieces.reduce((sum, piece) => sum + (piece.kind === 'arc' ? 2 * piece.half * piece.radius : 0), 0);
    expect(total).toBeCloseTo(11.035, 3);
  });

  it('is straight along a line, and does not exist toward where it came from', () => {
    expect(biarc({ x: 0, y: 0 }, right, { x: 10, y: 0 }, right)!.map(({ kind }) => kind)).toEqual(['line', 'line']);
    expect(biarc({ x: 0, y: 0 }, right, { x: 0, y: 0 }, up)).toBeUndefined();
    expect(biarc({ x: 0, y: 0 }, right, { x: -10, y: 0 }, right)).toBeUndefined();
  });
});
