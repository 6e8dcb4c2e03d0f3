import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/index.ts';
import { eachPieceNear, nearestOf, piecesOf } from '../../src/lettering/pieces.ts';

/** A curl that comes near itself again and again. */
const curl = (count: number, scale: number): Point[] =>
  Array.from({ length: count }, (_, k) => ({ x: scale * (Math.cos(k / 40) * (2 + Math.sin(k / 7)) + k / 300), y: scale * Math.sin(k / 40) * (2 + Math.cos(k / 11)) }));

const points = (scale: number): Point[] => Array.from({ length: 60 }, (_, k) => ({ x: scale * (((k * 37) % 60) / 8 - 3), y: scale * (((k * 23) % 60) / 10 - 3) }));

describe.each([[0.01], [1], [1000]])('a line in pieces, %d times as large', (scale) => {
  const line = curl(2000, scale);
  const pieces = piecesOf(line, true);

  it('finds the nearest place as a search of all does, none beyond the limit', () => {
    for (const point of points(scale)) {
      const to = (k: number) => Math.hypot(line[k]!.x - point.x, line[k]!.y - point.y);
      const best = line.reduce((least, _, k) => (to(k) < to(least) ? k : least), 0);
      expect(nearestOf(pieces, point, Infinity, to)).toBe(best);
      expect(nearestOf(pieces, point, to(best), to)).toBe(best);
      expect(nearestOf(pieces, point, 0.999 * to(best), to)).toBeUndefined();
    }
  });

  it('shows every piece that touches a box, in order, and looks at few', () => {
    for (const { x, y } of points(scale)) {
      const box = { minX: x, minY: y, maxX: x + 0.1 * scale, maxY: y + 0.1 * scale };
      const seen: number[] = [];
      eachPieceNear(pieces, box, (k) => seen.push(k));
      const touching = line.flatMap(({ x: u, y: v }, k) => {
        const a = line.at(k - 1)!;
        return Math.min(a.x, u) <= box.maxX && Math.max(a.x, u) >= box.minX && Math.min(a.y, v) <= box.maxY && Math.max(a.y, v) >= box.minY ? [k] : [];
      });
      expect(seen).toEqual([...seen].sort((a, b) => a - b));
      expect(seen).toEqual(expect.arrayContaining(touching));
      expect(seen.length).toBeLessThan(touching.length + 200);
    }
  });
});

describe('pieces of a line', () => {
  const square = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }];

  it('of equally near places give the earliest, whichever half holds it', () => {
    const there = Array.from({ length: 100 }, (_, k) => ({ x: k, y: 0 }));
    const line = [...there, ...[...there].reverse()];
    for (const x of [3, 50, 99]) expect(nearestOf(piecesOf(line, false), { x, y: 5 }, Infinity, (k) => Math.hypot(line[k]!.x - x, 5))).toBe(x);
  });

  it('close the line only where it is closed', () => {
    const across = (closed: boolean) => {
      const seen: number[] = [];
      eachPieceNear(piecesOf(square, closed), { minX: -1, minY: 4, maxX: 1, maxY: 6 }, (k) => seen.push(k));
      return seen.includes(0);
    };
    expect([across(true), across(false)]).toEqual([true, false]);
    expect(nearestOf(piecesOf([], false), square[0]!, Infinity, () => 0)).toBeUndefined();
  });

  it('look at hardly more places of a line with sixteen times as many', () => {
    const looks = (count: number) => {
      let sum = 0;
      const line = Array.from({ length: count }, (_, k) => ({ x: Math.cos((6 * k) / count), y: (6 * k) / count }));
      nearestOf(piecesOf(line, false), { x: 3, y: 3 }, Infinity, (k) => { sum++; return Math.hypot(line[k]!.x - 3, line[k]!.y - 3); });
      return sum;
    };
    expect(looks(1000)).toBeGreaterThan(0);
    expect(looks(16_000)).toBeLessThan(5 * looks(1000));
  });
});
