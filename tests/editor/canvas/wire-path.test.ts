import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Spot, drawWire, middleOf, routeWire } from '../../../src/editor/canvas/wire-path.ts';
import type { Box } from '../../../src/editor/model/boxes.ts';

const end = (x: number, y: number, lane = 0) => ({ at: [x, y] as const, lane });
const place = fc.integer({ min: -2000, max: 2000 });
const boxes = fc.array(fc.record({ x: place, y: place, width: fc.constant(208), height: fc.integer({ min: 100, max: 400 }) }), { maxLength: 20 });

const pieces = (turns: readonly Spot[]) => turns.slice(1).map((spot, i) => [turns[i]!, spot] as const);
const meets = ([[ax, ay], [bx, by]]: readonly [Spot, Spot], { x, y, width, height }: Box) =>
  Math.min(ax, bx) < x + width - 1 && Math.max(ax, bx) > x + 1 && Math.min(ay, by) < y + height - 1 && Math.max(ay, by) > y + 1;

describe('a wire', () => {
  it('has only level and upright pieces, from its output to its input, whatever lies between', () => {
    fc.assert(fc.property(place, place, place, place, boxes, (sx, sy, ex, ey, cards) => {
      const turns = routeWire(end(sx, sy), end(ex, ey), cards);
      expect(turns[0]).toEqual([sx, sy]);
      expect(turns.at(-1)).toEqual([ex, ey]);
      for (const [[ax, ay], [bx, by]] of pieces(turns)) expect(ax === bx || Math.abs(ay - by) < 0.5).toBe(true);
    }));
  });

  it('leaves to the right and arrives from the left, also when it goes back', () => {
    const turns = routeWire(end(1000, 0), end(0, 300), []);
    expect(turns[1]![0]).toBeGreaterThan(1000);
    expect(turns.at(-2)![0]).toBeLessThan(0);
  });

  it('goes back around its own card, not through it', () => {
    const own: Box = { x: 0, y: -50, width: 208, height: 200 };
    const turns = routeWire(end(208, 0), end(0, 40), [own]);
    expect(pieces(turns).some((piece) => meets(piece, own))).toBe(false);
  });

  it('goes around a card that stands between', () => {
    const card: Box = { x: 400, y: -100, width: 208, height: 200 };
    const turns = routeWire(end(208, 0), end(900, 0), [card]);
    expect(pieces(turns).some((piece) => meets(piece, card))).toBe(false);
  });

  it('is one straight line between ports that face one another', () => {
    expect(routeWire(end(208, 54), end(400, 54), [])).toEqual([[208, 54], [400, 54]]);
  });

  it('turns with round corners no larger than its pieces', () => {
    expect(drawWire([[0, 0], [100, 0], [100, 4], [200, 4]])).toBe('M0 0L98 0Q100 0 100 2L100 2Q100 4 102 4L200 4');
    expect(drawWire([[0, 0], [0, 0], [50, 0]])).toBe('M0 0L50 0');
  });

  it('has its middle halfway along it', () => {
    expect(middleOf([[0, 0], [100, 0], [100, 100]])).toEqual([100, 0]);
    expect(middleOf([[7, 7], [7, 7]])).toEqual([7, 7]);
  });
});
