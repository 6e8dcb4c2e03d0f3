import { describe, expect, it } from 'vitest';
import { components, type Loop, pathEnd, pathLength, type Point, polylinePath, regionArea, rotation, scaling, withoutSpikes } from '../../src/geometry/index.ts';
import { sampleBoundary } from '../../src/lettering/boundary.ts';
import { cleanOutlines } from '../../src/lettering/clean.ts';
import { traceOutlines } from '../../src/lettering/index.ts';
import { meet, partnerOf } from '../../src/lettering/joins.ts';
import { medialGraph } from '../../src/lettering/medial.ts';
import { seeded } from '../support/random.ts';
import { movedOutlines } from './truth/index.ts';

const at = (x: number, y: number): Point => ({ x, y });
const outline = (...loops: readonly Loop[]) => [{ paths: loops.map((loop) => polylinePath(loop, true)), fillRule: 'nonzero' as const }];
const trace = (outlines: ReturnType<typeof outline>) => traceOutlines(outlines, {}, () => undefined);
const told = (outlines: ReturnType<typeof outline>) => trace(outlines).strokes.map(({ path }) => [...[path.start, pathEnd(path)].map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).sort(), pathLength(path).toFixed(2)]);

/** A bar of 100 by 10, with more points between two of its corners. */
const bar = (...more: readonly Point[]): Point[] => [at(0, 0), ...more, at(100, 0), at(100, 10), at(0, 10)];
const HAIR = 0.004;
const there = (x: number, y: number): Point[] => [at(x, 0), at(x + HAIR / 2, y), at(x + HAIR, 0)];

const SPIKED: readonly (readonly [string, Loop])[] = [
  ['outward', bar(...there(50, -20))],
  ['outward with a flat end', bar(at(50, 0), at(50, -20), at(50 + HAIR, -20), at(50 + HAIR, 0))],
  ['inward', bar(...there(50, 6))],
  ['along an edge', bar(at(60, 0), at(30, HAIR), at(30.1, 0))],
  ['several in a row', bar(...there(20, -9), ...there(40, 7), ...there(40.2, -12), ...there(80, 3))],
  ['a spike of a spike', bar(at(50, 0), at(50, -10), at(58, -10), at(50, -10 - HAIR), at(50, -20), at(50 + HAIR, 0))],
  ['bent', bar(at(50, 0), at(50, -10), at(55, -15), at(55 + HAIR, -15), at(50 + HAIR, -10), at(50 + HAIR, 0))],
  ['at the start', [at(-20, 5), at(0, 5 - HAIR), at(0, 0), at(100, 0), at(100, 10), at(0, 10), at(0, 5)]],
];

describe('loops that turn back on themselves', () => {
  it.each(SPIKED)('%s: traced as without, turned and scaled too', (_, loop) => {
    for (const change of [rotation(0), rotation(33), scaling(7)]) {
      expect(told(movedOutlines(outline(loop), change) as ReturnType<typeof outline>)).toEqual(told(movedOutlines(outline(bar()), change) as ReturnType<typeof outline>));
    }
  });

  it.each(SPIKED)('%s: the spike goes wherever the loop starts, and nothing else does', (_, loop) => {
    for (let start = 0; start < loop.length; start++) {
      const cleared = withoutSpikes([...loop.slice(start), ...loop.slice(0, start)], 0.02);
      expect(Math.abs(regionArea({ loops: [cleared] }) - 1000)).toBeLessThan(0.3);
      for (const { x, y } of cleared) expect(x >= 0 && x <= 100 && y >= -HAIR && y <= 10 && (y <= HAIR || y >= 5 - HAIR)).toBe(true);
    }
  });

  it('what is thin all over is nothing, and a sharp tip that is not thin stays', () => {
    expect(withoutSpikes([at(0, 0), at(50, 0.01), at(100, 0), at(50, 0)], 0.02)).toEqual([]);
    const tip = [at(0, 0), at(30, 1), at(0, 2)];
    expect(withoutSpikes(tip, 0.02)).toEqual(tip);
  });
});

describe('the medial graph of a boundary that lies on itself', () => {
  const nodesFor = (...loops: readonly Loop[]) => {
    const boundary = sampleBoundary({ loops }, 1);
    const { x, boundary: { next } } = medialGraph(boundary);
    return { points: boundary.next.length, after: next.length, nodes: x.length, finite: x.every(Number.isFinite) };
  };

  it.each([
    ['a spike without width', [bar(at(50, 0), at(50, -20), at(50, 0))]],
    ['edges that lie on one another', [bar(at(60, 0), at(30.37, 0))]],
    ['a corner that touches', [[at(0, 0), at(40, 0), at(50, 5), at(60, 0), at(100, 0), at(100, 10), at(60, 10), at(50, 5), at(40, 10), at(0, 10)]]],
    ['two loops alike', [bar(), bar()]],
    ['a hole on an edge', [bar(), [at(20, 0), at(20, 4), at(30, 4), at(30, 0)]]],
  ])('%s: ends, with few nodes for each point', (_, loops) => {
    const { points, after, nodes, finite } = nodesFor(...loops);
    expect([after < 17 * points, nodes < 2 * after, finite]).toEqual([true, true, true]);
  });

  it('no gap lets what is outside in', () => {
    const { boundary: { next }, x, y, radius } = medialGraph(sampleBoundary({ loops: [[at(0, 0), at(40, 0), at(50, 5), at(60, 0), at(100, 0), at(100, 10), at(60, 10), at(50, 5), at(40, 10), at(0, 10)]] }, 1));
    expect(next.length).toBeGreaterThan(100);
    for (let node = 0; node < x.length; node++) expect([y[node]! > -0.1, y[node]! < 10.1, radius[node]! < 7]).toEqual([true, true, true]);
  });
});

describe('a line of which its other end left little', () => {
  const places = [at(0, 0), at(3, 0.2), at(6, 0)].map((place) => ({ ...place, half: 5, seen: 2, left: [], right: [] }));
  const across = [0, 1].map((k) => partnerOf(k, [at(12 + k, -20), at(12 + k, 20)], false));

  it.each([[1, 0], [1, 2], [2, 0], [2, 2], [3, 0], [3, 2]])('of %d places, with %d partners, still ends somewhere', (count, partners) => {
    const { line } = meet(places.slice(0, count), 100, across.slice(0, partners), at(12, 1));
    expect(line.length).toBeGreaterThanOrEqual(count);
    expect(line.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
  });
});

describe('broken drawings', () => {
  it('loops of one part share no point, however they touched', () => {
    const frame = [at(0, 0), at(100, 0), at(100, 100), at(0, 100)];
    for (const holes of [[[at(10, 10), at(0, 50), at(10, 90), at(90, 90), at(90, 10)]], [[at(10, 10), at(10, 90), at(50, 50)], [at(50, 50), at(90, 90), at(90, 10)]]]) {
      for (const part of components(cleanOutlines(outline(frame, ...holes))!.region)) {
        const places = part.loops.flatMap((loop) => loop.map(({ x, y }) => `${x} ${y}`));
        expect(new Set(places).size).toBe(places.length);
      }
    }
  });

  it.each([0.1])('a whisker of %d on a bar of 10, its line followed on into the bar, gives figures', (thin) => {
    expect(JSON.stringify(trace(outline(bar(at(50, 0), at(50 + thin / 2, -20), at(50 + thin, 0)))))).not.toContain('null');
  });

  it('any of forty: neither throws nor gives what is no figure, and takes few nodes for each point', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const drawing = outline(...brokenLoops(seeded(seed)));
      const cleaned = cleanOutlines(drawing);
      for (const part of components(cleaned?.region ?? { loops: [] })) {
        const boundary = sampleBoundary(part, cleaned!.width / 12);
        expect(medialGraph(boundary).x.length, `seed ${seed}`).toBeLessThan(4 * boundary.next.length + 100);
      }
      if (seed % 8 === 0) expect(JSON.stringify(trace(drawing)), `seed ${seed}`).not.toContain('null');
    }
  });
});

/** One or two polygons of few corners on a coarse grid, with points repeated and edges run over twice. */
function brokenLoops(random: () => number): Loop[] {
  const place = () => at(5 * Math.floor(9 * random()), 5 * Math.floor(9 * random()));
  return Array.from({ length: 1 + Math.floor(2 * random()) }, () => Array.from({ length: 3 + Math.floor(4 * random()) }, place).flatMap((point) => {
    const kind = Math.floor(4 * random());
    return kind === 0 ? [point, point] : kind === 1 ? [point, place(), point] : kind === 2 ? [point, at(point.x + 7, point.y), at(point.x + 2, point.y + HAIR)] : [point];
  }));
}
