import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Frame, RULER, SCALES, between, fit, panBy, showsBox, toScreen, toSheet, visibleBox, zoomAt } from '../../../src/editor/sheet/view.ts';

const frames = fc.record({
  x: fc.double({ min: -3000, max: 3000, noNaN: true }), y: fc.double({ min: -3000, max: 3000, noNaN: true }),
  scale: fc.double({ min: Math.log(SCALES.least), max: Math.log(SCALES.most), noNaN: true }).map(Math.exp),
  width: fc.integer({ min: 100, max: 3000 }), height: fc.integer({ min: 100, max: 2000 }),
});
const places = fc.record({ x: fc.double({ min: 0, max: 3000, noNaN: true }), y: fc.double({ min: 0, max: 2000, noNaN: true }) });

describe('a view', () => {
  it('leads from the screen to the sheet and back to the same pixel', () => {
    fc.assert(fc.property(frames, places, (frame, at) => {
      const back = toScreen(frame, toSheet(frame, at));
      expect(Math.hypot(back.x - at.x, back.y - at.y)).toBeLessThan(1e-5);
    }));
  });

  it('tells a hundredth of a millimetre apart at the nearest zoom, far out on a long sheet', () => {
    const frame: Frame = { x: 2400, y: 1200, scale: SCALES.most, width: 1000, height: 600 };
    const [a, b] = [toScreen(frame, { x: 2400, y: 1200 }), toScreen(frame, { x: 2400.01, y: 1200.01 })];
    expect(b.x - a.x).toBeCloseTo(100, 5);
    expect(a.y - b.y).toBeCloseTo(100, 5);
  });

  it('keeps what lies under the pointer there while zooming, also at the ends of the range', () => {
    fc.assert(fc.property(frames, places, fc.double({ min: 0.01, max: 100, noNaN: true }), (frame, at, factor) => {
      const held = toSheet(frame, at);
      const zoomed = { ...frame, ...zoomAt(frame, at, factor) };
      const now = toScreen(zoomed, held);
      expect(Math.hypot(now.x - at.x, now.y - at.y)).toBeLessThan(1e-4);
      expect(zoomed.scale).toBeGreaterThanOrEqual(SCALES.least);
      expect(zoomed.scale).toBeLessThanOrEqual(SCALES.most);
    }));
  });

  it('moves with the hand that pushes it, y up', () => {
    const frame: Frame = { x: 0, y: 0, scale: 2, width: 800, height: 600 };
    const pushed = { ...frame, ...panBy(frame, 30, 40) };
    const place = toScreen(frame, { x: 7, y: 9 });
    expect(toScreen(pushed, { x: 7, y: 9 })).toEqual({ x: place.x + 30, y: place.y + 40 });
    expect(toScreen(frame, { x: 0, y: 1 }).y).toBeLessThan(toScreen(frame, { x: 0, y: 0 }).y);
  });

  it('fits a box clear of the rulers and as large as there is room', () => {
    fc.assert(fc.property(fc.integer({ min: 200, max: 3000 }), fc.integer({ min: 200, max: 2000 }), fc.double({ min: 1, max: 2000, noNaN: true }), fc.double({ min: 1, max: 2000, noNaN: true }), (width, height, w, h) => {
      const frame = { width, height, ...fit({ width, height }, { minX: 10, minY: 20, maxX: 10 + w, maxY: 20 + h }) };
      const low = toScreen(frame, { x: 10, y: 20 });
      const high = toScreen(frame, { x: 10 + w, y: 20 + h });
      expect(Math.min(low.x, high.y)).toBeGreaterThan(RULER);
      expect(high.x).toBeLessThan(width);
      expect(low.y).toBeLessThan(height);
    }));
  });

  it('fits a single point without zooming into nothing', () => {
    const view = fit({ width: 800, height: 600 }, { minX: 5, minY: 6, maxX: 5, maxY: 6 });
    expect(view).toMatchObject({ x: 5, y: 6 });
    expect(view.scale).toBeLessThan(100);
  });

  it('flies from one view exactly to another without leaving the way between', () => {
    const [a, b] = [{ x: 0, y: 0, scale: 0.5 }, { x: 800, y: 300, scale: 40 }];
    expect(between(a, b, 0)).toEqual(a);
    const end = between(a, b, 1);
    expect(end.x).toBeCloseTo(b.x, 9);
    expect(end.scale).toBeCloseTo(b.scale, 9);
    for (let t = 0; t <= 1; t += 0.05) expect(between(a, b, t).x).toBeGreaterThanOrEqual(0);
    expect(between(a, { ...b, scale: a.scale }, 0.5).x).toBeCloseTo(400, 9);
  });

  it('knows when a box would not be found in it', () => {
    const frame: Frame = { x: 500, y: 250, scale: 1, width: 1024, height: 524 };
    expect(showsBox(frame, { minX: 400, minY: 200, maxX: 600, maxY: 300 })).toBe(true);
    expect(showsBox(frame, { minX: 5000, minY: 200, maxX: 6000, maxY: 300 })).toBe(false);
    expect(showsBox({ ...frame, scale: 0.01 }, { minX: 400, minY: 200, maxX: 600, maxY: 300 })).toBe(false);
    expect(visibleBox(frame)).toEqual({ minX: -24, minY: 0, maxX: 1000, maxY: 524 });
  });
});
