import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { halves, pieceAt, pieceBox, readPath } from '../../../src/editor/sheet/path.ts';

describe('a path that is read', () => {
  it('keeps lines, cubics and closing lines', () => {
    const [open, closed] = readPath('M0 0L10 0C10 5 5 10 0 10M20 20L30 20L30 30Z');
    expect(open).toMatchObject({ closed: false, pieces: [{ from: { x: 0, y: 0 }, to: { x: 10, y: 0 } }, { to: { x: 0, y: 10 }, controls: [{ x: 10, y: 5 }, { x: 5, y: 10 }] }] });
    expect(closed).toMatchObject({ closed: true });
    expect(closed!.pieces.at(-1)).toEqual({ from: { x: 30, y: 30 }, to: { x: 20, y: 20 } });
  });

  it('takes numbers that go on as more of the same, and signs and exponents as separators', () => {
    expect(readPath('M0,0 10-5 1e1.5')[0]!.pieces.map(({ to }) => to)).toEqual([{ x: 10, y: -5 }, { x: 10, y: 0.5 }]);
  });

  it('stops at what is no path data and keeps what came before', () => {
    expect(readPath('')).toEqual([]);
    expect(readPath('nothing')).toEqual([]);
    expect(readPath('M0 0L1 1L2')[0]!.pieces).toHaveLength(1);
    expect(readPath('L1 1')[0]!.pieces).toHaveLength(1);
  });

  it('draws arcs on their circle within a millionth of the radius, sweep 1 counter-clockwise with y up', () => {
    fc.assert(fc.property(fc.double({ min: 0.1, max: 2000, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true }), fc.double({ min: 0.05, max: 3.1, noNaN: true }), fc.boolean(), (r, from, turn, ccw) => {
      const at = (angle: number) => ({ x: 7 + r * Math.cos(angle), y: -3 + r * Math.sin(angle) });
      const [a, b] = [at(from), at(ccw ? from + turn : from - turn)];
      const { pieces } = readPath(`M${a.x} ${a.y}A${r} ${r} 0 0 ${ccw ? 1 : 0} ${b.x} ${b.y}`)[0]!;
      for (const piece of pieces) for (const t of [0, 0.3, 0.5, 0.8, 1]) {
        const { x, y } = pieceAt(piece, t);
        expect(Math.abs(Math.hypot(x - 7, y + 3) - r)).toBeLessThan(2e-6 * r);
      }
      const middle = at(ccw ? from + turn / 2 : from - turn / 2);
      const nearest = Math.min(...pieces.flatMap((piece) => [0, 0.5, 1].map((t) => Math.hypot(pieceAt(piece, t).x - middle.x, pieceAt(piece, t).y - middle.y))));
      expect(nearest).toBeLessThan(0.11 * r);
    }));
  });

  it('takes the large arc, grows radii that cannot reach, and draws a line for a radius of 0', () => {
    const large = readPath('M1 0A1 1 0 1 1 0 -1')[0]!.pieces;
    expect(large.some(({ from }) => from.x < -0.9)).toBe(true);
    const grown = readPath('M0 0A1 1 0 0 1 10 0')[0]!.pieces;
    expect(Math.min(...grown.map(({ to }) => to.y))).toBeCloseTo(-5, 6);
    expect(readPath('M0 0A0 0 0 0 1 10 0')[0]!.pieces).toEqual([{ from: { x: 0, y: 0 }, to: { x: 10, y: 0 } }]);
  });

  it('halves a piece into two that follow it, inside its box', () => {
    const piece = readPath('M0 0C1 8 6 9 10 0')[0]!.pieces[0]!;
    const [first, second] = halves(piece);
    for (const t of [0.1, 0.5, 0.9]) {
      expect(pieceAt(first, t).y).toBeCloseTo(pieceAt(piece, t / 2).y, 12);
      expect(pieceAt(second, t).x).toBeCloseTo(pieceAt(piece, 0.5 + t / 2).x, 12);
      expect(pieceAt(piece, t).y).toBeLessThanOrEqual(pieceBox(piece).maxY);
    }
  });
});
