import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { needsPlacing, placed } from '../../../src/editor/sheet/deep.ts';
import { contains } from '../../../src/editor/sheet/near.ts';
import { type Chain, pieceAt, pieceBox, readPath } from '../../../src/editor/sheet/path.ts';
import { type Frame, type Point, SCALES, toScreen, toSheet, unite } from '../../../src/editor/sheet/view.ts';

const inSight = ({ x, y }: Point) => x >= 0 && x <= 1000 && y >= 0 && y <= 600;
const frameAt = (x: number, y: number, scale: number): Frame => ({ x, y, scale, width: 1000, height: 600 });

/** Distance of a place to a chain of points, and whether a closed one has it inside. */
function toChords(points: readonly Point[], { x, y }: Point): number {
  return Math.min(...points.slice(1).map((b, i) => {
    const a = points[i]!;
    const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / square));
    return Math.hypot(a.x + t * (b.x - a.x) - x, a.y + t * (b.y - a.y) - y);
  }));
}
const inside = (points: readonly Point[], { x, y }: Point): boolean => points.reduce((odd, b, i) => {
  const a = points.at(i - 1)!;
  return (a.y > y) !== (b.y > y) && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x) ? !odd : odd;
}, false);

describe('a path placed on the screen near to', () => {
  const curve: Chain = readPath('M2300 1100C2380 1180 2420 1220 2500 1300')[0]!;

  it('lies within a tenth of a pixel of the true curve where a hundredth of a millimetre is 100 pixels', () => {
    const frame = frameAt(2400, 1200, SCALES.most);
    const points = placed(curve, frame);
    let seen = 0;
    for (let t = 0.49999; t < 0.50001; t += 1e-7) {
      const place = toScreen(frame, pieceAt(curve.pieces[0]!, t));
      if (!inSight(place)) continue;
      seen += 1;
      expect(toChords(points, place)).toBeLessThan(0.1);
    }
    expect(seen).toBeGreaterThan(50);
  });

  it('follows bends within a tenth of a pixel', () => {
    const bend = readPath('M0 0C0 80 20 100 100 100')[0]!;
    const frame = frameAt(40, 60, 5);
    const points = placed(bend, frame);
    for (let t = 0; t <= 1; t += 0.01) {
      const place = toScreen(frame, pieceAt(bend.pieces[0]!, t));
      if (inSight(place)) expect(toChords(points, place)).toBeLessThan(0.1);
    }
    expect(points.length).toBeLessThan(500);
  });

  it('fills all that is seen from inside a large shape, wherever that begins', () => {
    const corners = ['-1000 -1000', '1000 -1000', '1000 1000', '-1000 1000'];
    for (const begin of [0, 1, 2, 3]) for (const turned of [corners, corners.toReversed()]) {
      const [first, ...rest] = [...turned.slice(begin), ...turned.slice(0, begin)];
      const points = placed(readPath(`M${first}L${rest.join('L')}Z`)[0]!, frameAt(0, 0, 10));
      for (const at of [{ x: 1.5, y: 1.5 }, { x: 998.5, y: 1.5 }, { x: 500.5, y: 300.5 }, { x: 1.5, y: 598.5 }]) expect(inside(points, at)).toBe(true);
    }
  });

  it('hands over numbers that 32-bit floats hold within a thousandth of a pixel, unlike millimetres', () => {
    for (const { x, y } of placed(curve, frameAt(2400, 1200, SCALES.most))) expect(Math.max(Math.abs(Math.fround(x) - x), Math.abs(Math.fround(y) - y))).toBeLessThan(1e-3);
    expect(Math.abs(Math.fround(2400.0101) - 2400.0101) * SCALES.most).toBeGreaterThan(0.5);
  });

  it('leaves pictures alone until floats would show', () => {
    const box = { minX: 0, minY: 0, maxX: 2400, maxY: 1200 };
    expect(needsPlacing(frameAt(0, 0, 1), box)).toBe(false);
    expect(needsPlacing(frameAt(0, 0, 1000), box)).toBe(true);
  });

  it('fills in sight exactly what the whole path fills, wherever one looks', () => {
    const blob = readPath('M0 0C300 -80 420 60 400 300C380 500 100 420 60 300C20 180 -120 60 0 0Z')[0]!;
    const shape = { chains: [blob], box: unite(blob.pieces.map(pieceBox)) };
    fc.assert(fc.property(fc.double({ min: -50, max: 450, noNaN: true }), fc.double({ min: -50, max: 450, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true }).map(Math.exp), fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 600 }), (x, y, scale, px, py) => {
      const frame = frameAt(x, y, scale);
      const points = placed(blob, frame);
      const at = { x: px + 0.37, y: py + 0.41 };
      // Within a pixel of the edge both answers are right; the reference takes chords.
      const nearEdge = points.length > 1 && toChords([...points, points[0]!], at) < 1 + 0.5 * scale;
      if (!nearEdge) expect(inside(points, at)).toBe(contains(shape, toSheet(frame, at)));
    }), { numRuns: 300 });
  });

  it('keeps nothing far outside the canvas', () => {
    fc.assert(fc.property(fc.double({ min: 2000, max: 2600, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true }).map(Math.exp), (x, scale) => {
      for (const point of placed(curve, frameAt(x, 1200, scale))) {
        expect(point.x).toBeGreaterThanOrEqual(-64.001);
        expect(point.x).toBeLessThanOrEqual(1064.001);
        expect(Math.abs(point.y - 300)).toBeLessThanOrEqual(364.001);
      }
    }));
  });
});
