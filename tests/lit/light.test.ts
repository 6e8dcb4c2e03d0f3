import { describe, expect, it } from 'vitest';
import { applyToPath, polylinePath, regionArea, rotation } from '../../src/geometry/index.ts';
import { blurred, spread } from '../../src/lit/blur.ts';
import { coverOf } from '../../src/lit/cover.ts';
import { beside, facing, stray } from '../../src/lit/fall-off.ts';
import { type Frame, MOST_PIXELS, frameOf } from '../../src/lit/frame.ts';
import { type Raster, emptyRaster } from '../../src/lit/raster.ts';
import { glowOf, lightOf } from '../../src/lit/render.ts';
import type { LitSign, View } from '../../src/lit/scene.ts';
import { trailOf } from '../../src/lit/trail.ts';
import { rectangle } from '../support/shapes.ts';

const frame: Frame = frameOf({ minX: 0, minY: 0, maxX: 200, maxY: 160 }, 200);
const wait = () => undefined;
const sumOf = ({ values }: Raster) => values.reduce((a, b) => a + b, 0);
const at = ({ columns, values }: Raster, x: number, y: number) => values[y * columns + x]!;
const line = (...points: readonly (readonly [number, number])[]) => polylinePath(points.map(([x, y]) => ({ x, y })), false);

describe('what is seen of a wall', () => {
  it('is shown in square pixels, no more than there may be', () => {
    expect(frame).toMatchObject({ columns: 200, rows: 160, scale: 1 });
    const high = frameOf({ minX: 0, minY: 0, maxX: 10, maxY: 1000 }, 4000);
    expect(high.columns * high.rows).toBeLessThanOrEqual(MOST_PIXELS);
    expect(high.rows / high.scale).toBeCloseTo(1000, 0);
  });

  it('is covered by a region to exactly its area, wherever its edges pass through pixels, holes left out', () => {
    const outer = rectangle(20.3, 30.7, 50.25, 20.5).loops;
    const hole = rectangle(30.1, 35.2, 7.7, 3.3).loops.map((loop) => [...loop].reverse());
    const slanted = [[{ x: 90, y: 40 }, { x: 141.3, y: 52.9 }, { x: 120.2, y: 133.1 }]];
    const loops = [...outer, ...hole, ...slanted];
    const cover = coverOf(loops, frame);
    expect(sumOf(cover)).toBeCloseTo(regionArea({ loops }), 1);
    expect([at(cover, 25, 160 - 40), at(cover, 33, 160 - 37), at(cover, 10, 10)]).toEqual([1, 0, 0]);
    expect(Math.max(...cover.values)).toBeLessThanOrEqual(1);
  });
});

describe('light', () => {
  const spot = emptyRaster({ columns: 256, rows: 256 });
  spot.values[128 * 256 + 128] = 1;

  it.each([0.7, 1.7, 6, 20])('is all kept by a blur of %d pixels, and as wide as it should be', (sigma) => {
    const wide = spread(spot, [{ sigma, weight: 1 }], wait);
    expect(sumOf(wide)).toBeCloseTo(1, 3);
    const variance = wide.values.reduce((sum, value, i) => sum + value * ((i % 256) - 128) ** 2, 0);
    expect(Math.sqrt(variance) / sigma).toBeGreaterThan(0.95);
    expect(Math.sqrt(variance) / sigma).toBeLessThan(1.05);
  });

  it('is shared out in full by every mixture', () => {
    for (const mixture of [facing(20), beside(5), stray(1, 7)]) expect(mixture.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 4);
  });

  /** An endless line: one that is long against the distances looked at, on a raster of one pixel to the mm. */
  const long = emptyRaster({ columns: 256, rows: 1200 });
  for (let y = 0; y < 1200; y++) long.values[y * 256 + 128] = 1;

  it('of an endless line falls off on a wall as 1 / distance of the wall (textbook: line source)', () => {
    const middle = (distance: number) => at(spread(long, facing(distance), wait), 128, 600);
    // h² / (2 (d² + h²)^(3/2)) at d = 0: the lambertian kernel summed along the line.
    for (const distance of [10, 20, 40]) expect(middle(distance) * 2 * distance).toBeCloseTo(1, 1);
    expect(middle(10) / middle(40)).toBeGreaterThan(3.8);
    expect(middle(10) / middle(40)).toBeLessThan(4.2);
  });

  it('of an endless line above a board falls off beside it as h / (pi (d² + h²)) (textbook: line source, cosine law)', () => {
    const height = 6;
    const board = spread(long, beside(height), wait);
    for (const d of [0, 4, 8, 16, 32, 64]) expect(at(board, 128 + d, 600) / (height / (Math.PI * (d * d + height * height))), `${d} mm`).toBeCloseTo(1, 0.85);
  });

  it('of a small source facing a wall falls off as 1 / r⁴ far to the side: inverse square and two cosines', () => {
    const wall = spread(spot, facing(8), wait);
    for (const r of [0, 8, 16, 32]) expect(at(wall, 128 + r, 128) / (64 / (Math.PI * (r * r + 64) ** 2)), `${r} mm`).toBeCloseTo(1, 0.8);
  });

  it('lies along a line in the amount of its length, whichever way it runs', () => {
    for (const path of [line([20, 20], [120, 20]), line([20.3, 20.6], [80.3, 100.6]), applyToPath(rotation(17), line([40, 20], [140, 20]))])
      expect(sumOf(trailOf([{ path }], frame))).toBeCloseTo(100, 1);
  });

  it('is mirrored by a blur of what is mirrored, to the last bit', () => {
    const [a, b] = [emptyRaster({ columns: 40, rows: 9 }), emptyRaster({ columns: 40, rows: 9 })];
    for (const [x, value] of [[3, 1], [17, 0.3], [30, 2.7]] as const) {
      a.values[4 * 40 + x] = value;
      b.values[4 * 40 + 39 - x] = value;
    }
    const [left, right] = [blurred(a, 2.3), blurred(b, 2.3)];
    for (let x = 0; x < 40; x++) expect(at(left, x, 3)).toBe(at(right, 39 - x, 3));
  });
});

describe('a sign', () => {
  const view: View = { board: 'white', wall: 'white', wallDistance: 25, colourTemperature: 3000, white: 5000, brightness: 1, ambient: 0, exposure: 0 };
  /** Two upright tubes either side of the middle of the frame. */
  const sign: LitSign = {
    tubes: [...rectangle(65, 40, 10, 80).loops, ...rectangle(125, 40, 10, 80).loops], tubeWidth: 10, board: rectangle(40, 20, 120, 120).loops, fixings: [],
    lines: [70, 130].map((x) => ({ path: line([x, 45], [x, 115]) })),
  };
  const lit = lightOf(sign, view, frame, wait);
  const dark = lightOf({ ...sign, lines: sign.lines.slice(0, 1) }, view, frame, wait);

  it('shines 1 along the middle of a tube, less at its walls and ends, not at all outside', () => {
    const tubes = coverOf(sign.tubes, frame);
    const glow = glowOf(sign, tubes, frame);
    expect((at(glow, 69, 80) + at(glow, 70, 80)) / 2).toBeCloseTo(1, 1);
    expect(at(glow, 65, 80)).toBeLessThan(0.7);
    expect(at(glow, 69, 41)).toBeLessThan(0.6);
    expect(at(glow, 63, 80)).toBe(0);
  });

  it('looks the same mirrored', () => {
    for (const [x, y] of [[69, 80], [50, 80], [90, 50], [45, 25]] as const)
      expect(at(lit.sign, x, y) / at(lit.sign, 199 - x, y), `${x}, ${y}`).toBeCloseTo(1, 1);
  });

  it('looks turned when it is turned', () => {
    const turn = (x: number, y: number) => ({ x: 180 - y, y: x - 20 });
    const turned: LitSign = {
      ...sign, tubes: sign.tubes.map((loop) => loop.map((p) => turn(p.x, p.y))), board: sign.board!.map((loop) => loop.map((p) => turn(p.x, p.y))),
      lines: [70, 130].map((x) => ({ path: line([turn(x, 45).x, turn(x, 45).y], [turn(x, 115).x, turn(x, 115).y]) })),
    };
    const light = lightOf(turned, view, frame, wait).sign;
    for (const [x, y] of [[70.5, 80.5], [50.5, 80.5], [100.5, 80.5], [84.5, 60.5]] as const) {
      const to = turn(x, y);
      expect(at(light, Math.floor(to.x), Math.floor(160 - to.y)) / at(lit.sign, Math.floor(x), Math.floor(160 - y)), `${x}, ${y}`).toBeCloseTo(1, 1);
    }
  });

  it('stays dark where nothing is lit, beside a tube that is', () => {
    expect(at(dark.sign, 130, 80)).toBeLessThan(0.02 * at(lit.sign, 130, 80));
    expect(at(dark.sign, 69, 80)).toBeGreaterThan(0.9 * at(lit.sign, 69, 80));
  });

  it('lights the wall less through a board that lets less through, and sheds a shadow of the room\'s light', () => {
    const wall = (board: View['board']) => at(lightOf(sign, { ...view, board }, frame, wait).sign, 30, 80);
    expect(wall('white')).toBeGreaterThan(2 * wall('black'));
    expect(at(lit.room, 100, 144)).toBeLessThan(0.85 * at(lit.room, 10, 144));
  });

  it('shows modules where they are long against the tube, and hides them where they are short', () => {
    const ripple = (module: number) => {
      const glow = glowOf({ ...sign, lines: [{ path: line([70, 45], [70, 115]), module }] }, coverOf(sign.tubes, frame), frame);
      const along = Array.from({ length: 40 }, (_, i) => at(glow, 70, 60 + i));
      return 1 - Math.min(...along) / Math.max(...along);
    };
    expect(ripple(35)).toBeGreaterThan(0.05);
    expect(ripple(8)).toBeLessThan(0.01);
  });
});
