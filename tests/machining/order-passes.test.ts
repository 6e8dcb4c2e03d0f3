import { describe, expect, it } from 'vitest';
import { orderPasses, rapidLength, type Pass, type PassKind } from '../../src/machining/index.ts';
import { seeded } from '../support/random.ts';
import { mill } from './passes-fixture.ts';

const cutter = mill(6);

function pass(kind: PassKind, name: string, ...places: readonly (readonly [number, number])[]): Pass {
  const [start, ...rest] = places.map(([x, y]) => ({ x, y, z: 2 }));
  return { kind, name, cutter, start: start!, moves: rest.map((to) => ({ kind: 'line', to: { ...to, z: -1 }, feed: 100 })) };
}

const HERE = { x: 0, y: 0 };
const names = (passes: readonly Pass[]) => passes.map(({ name }) => name);

/** Short strokes strewn over a sheet. */
function strewn(count: number, seed: number): Pass[] {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, i) => {
    const [x, y] = [random() * 1000, random() * 600];
    return pass('groove', `groove ${i}`, [x, y], [x + random() * 40, y + random() * 40]);
  });
}

describe('the order of passes', () => {
  it('is grooves, holes, outline, whatever the distances', () => {
    const given = [pass('outline', 'o', [1, 1], [2, 2]), pass('hole', 'h', [5, 5]), pass('groove', 'g', [900, 900], [950, 900])];
    expect(names(orderPasses(given, HERE))).toEqual(['g', 'h', 'o']);
  });

  it('keeps all passes, each once', () => {
    const given = [...strewn(60, 1), pass('hole', 'h', [3, 3]), pass('outline', 'o', [0, 0], [9, 9])];
    const ordered = orderPasses(given, HERE);
    expect(new Set(ordered)).toEqual(new Set(given));
    expect(ordered).toHaveLength(given.length);
  });

  it('keeps passes of one name together and in their order', () => {
    const groove = (name: string, x: number) => [1, 2, 3].map((step) => pass('groove', name, [x, step % 2 ? 0 : 500], [x, step]));
    const given = [...groove('b', 300), ...groove('a', 10), ...groove('c', 150)];
    const ordered = orderPasses(given, HERE);
    expect(names(ordered)).toEqual(['a', 'a', 'a', 'c', 'c', 'c', 'b', 'b', 'b']);
    for (const name of ['a', 'b', 'c']) expect(ordered.filter((one) => one.name === name)).toEqual(given.filter((one) => one.name === name));
  });

  it('cuts what lies within an outline before it, even when the outline is nearer', () => {
    const ring = (name: string, from: number, size: number) => pass('outline', name, [from, from], [from + size, from], [from + size, from + size], [from, from + size], [from, from]);
    const given = [ring('edge', 0, 100), ring('cut-out', 30, 20), ring('island', 35, 5), ring('second edge', 200, 50)];
    const ordered = names(orderPasses(given, HERE));
    expect(ordered.indexOf('island')).toBeLessThan(ordered.indexOf('cut-out'));
    expect(ordered.indexOf('cut-out')).toBeLessThan(ordered.indexOf('edge'));
  });

  it('finds the shortest tour of a few holes, by trying all of them', () => {
    const random = seeded(7);
    for (let round = 0; round < 30; round++) {
      const holes = Array.from({ length: 6 }, (_, i) => pass('hole', `h${i}`, [random() * 100, random() * 100]));
      const least = Math.min(...permutations(holes).map((tour) => rapidLength(tour, HERE)));
      expect(rapidLength(orderPasses(holes, HERE), HERE)).toBeLessThan(least * 1.12);
    }
  });

  it.each([1, 2, 3])('shortens the rapids of strewn strokes well below nearest neighbour (seed %d)', (seed) => {
    const given = strewn(120, seed);
    const ordered = orderPasses(given, HERE);
    expect(rapidLength(ordered, HERE)).toBeLessThan(0.95 * rapidLength(nearestNeighbour(given), HERE));
    expect(rapidLength(ordered, HERE)).toBeLessThan(0.25 * rapidLength(given, HERE));
  });

  it('is no longer than the order given when that is already best', () => {
    const row = Array.from({ length: 20 }, (_, i) => pass('hole', `h${i}`, [i * 10, 0]));
    expect(orderPasses(row, HERE)).toEqual(row);
    expect(rapidLength(row, HERE)).toBe(190);
  });

  it('is the same on every call and takes no passes', () => {
    const given = strewn(50, 9);
    expect(orderPasses(given, HERE)).toEqual(orderPasses(given, HERE));
    expect(orderPasses([], HERE)).toEqual([]);
  });
});

function permutations<T>(items: readonly T[]): T[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((item, i) => permutations([...items.slice(0, i), ...items.slice(i + 1)]).map((rest) => [item, ...rest]));
}

/** Written again here, plainly, as the figure to beat. */
function nearestNeighbour(passes: readonly Pass[]): Pass[] {
  const waiting = [...passes];
  const tour: Pass[] = [];
  let at: { x: number; y: number } = HERE;
  while (waiting.length > 0) {
    const away = (one: Pass) => Math.hypot(one.start.x - at.x, one.start.y - at.y);
    const next = waiting.reduce((best, one) => (away(one) < away(best) ? one : best));
    waiting.splice(waiting.indexOf(next), 1);
    tour.push(next);
    at = next.moves.at(-1)?.to ?? next.start;
  }
  return tour;
}
