import jpeg from 'jpeg-js';
import { beforeAll, describe, expect, it } from 'vitest';
import { decodePicture, type Outline, type PictureOptions, tracePicture } from '../../../src/artwork/index.ts';
import { type Affine, applyToPath, flattenPath, type Loop, loopArea, loopPerimeter, type Point, type Region, rotation } from '../../../src/geometry/index.ts';
import { traceOutlines, type TracedStroke } from '../../../src/lettering/index.ts';
import { compare } from '../../lettering/truth/compare.ts';
import { shippedLettering } from './demo.ts';
import { coverOf, type Faults, inPixels, pngOf, scanned } from './scan.ts';

const OPTIONS: PictureOptions = { width: 0, widthOf: 'picture', lettering: 'either', threshold: 0, speckSize: 0, tolerance: 0 };

function traced(bytes: Uint8Array, options: Partial<PictureOptions>) {
  const reading = decodePicture(bytes);
  if (!reading.ok) throw new Error(reading.problems[0].found);
  return tracePicture(reading.picture, { ...OPTIONS, ...options }, () => {});
}
function found(bytes: Uint8Array, options: Partial<PictureOptions>) {
  const tracing = traced(bytes, options);
  if (!tracing.ok) throw new Error(tracing.problems[0].found);
  return tracing;
}

const circle = (x: number, y: number, radius: number): Loop => Array.from({ length: 720 }, (_, k) => ({ x: x + radius * Math.cos((k * Math.PI) / 360), y: y + radius * Math.sin((k * Math.PI) / 360) }));
const loopsOf = ({ paths }: Outline): Loop[] => paths.map((path) => flattenPath(path, 0.001));

describe('a ring of 40 and 25 pixels radius, its centre between the pixels', () => {
  const at = { x: 60.3, y: 55.8 };
  const picture = (faults: Faults) => pngOf(scanned(coverOf([circle(at.x, at.y, 40), [...circle(at.x, at.y, 25)].reverse()], 120, 110), faults), 120, 110);

  it.each<[string, Faults]>([['scanned', {}], ['scanned softly', { blur: 1 }], ['shaded', { shade: 0.4 }], ['light on dark', { paper: 0.04, ink: 0.8 }]])('%s keeps its place, area and perimeter', (_, faults) => {
    const { outlines } = found(picture(faults), { width: 120 });
    expect(outlines).toHaveLength(1);
    const [outer, hole] = loopsOf(outlines[0]!) as [Loop, Loop];
    // Exactly pi r^2 and 2 pi r; outer loops run counter-clockwise, holes clockwise.
    expect(Math.abs(loopArea(outer) / (Math.PI * 40 ** 2) - 1)).toBeLessThan(0.004);
    expect(Math.abs(-loopArea(hole) / (Math.PI * 25 ** 2) - 1)).toBeLessThan(0.006);
    expect(Math.abs(loopPerimeter(outer) / (80 * Math.PI) - 1)).toBeLessThan(0.003);
    const off = (loop: Loop, radius: number) => Math.max(...loop.map(({ x, y }: Point) => Math.abs(Math.hypot(x - at.x, y - (110 - at.y)) - radius)));
    expect([off(outer, 40) < 0.3, off(hole, 25) < 0.3]).toEqual([true, true]);
  });

  it('moves its edge as the threshold says', () => {
    const area = (threshold: number) => loopArea(loopsOf(found(picture({ blur: 2 }), { width: 120, threshold }).outlines[0]!)[0]!);
    expect(area(0)).toBeCloseTo(area(0.5), 6);
    expect(area(0.2) - area(0.5)).toBeGreaterThan(200);
    expect(area(0.5) - area(0.8)).toBeGreaterThan(200);
  });

  it('gets its size from the lettering or from square pixels that the file states, and from lower ones too', () => {
    expect(found(picture({}), { width: 160, widthOf: 'lettering' }).seen.scale.across).toBeCloseTo(2, 1);
    const reading = decodePicture(picture({}));
    if (!reading.ok) throw new Error();
    const tracing = tracePicture({ ...reading.picture, resolution: { across: 4, down: 2 } }, OPTIONS, () => {});
    if (!tracing.ok) throw new Error();
    const [outer] = loopsOf(tracing.outlines[0]!) as [Loop];
    expect(loopArea(outer) / (Math.PI * 10 * 20)).toBeCloseTo(1, 2);
  });
});

describe('a picture without lettering', () => {
  const flat = (value: (i: number) => number) => pngOf(Uint8Array.from({ length: 90 * 60 }, (_, i) => value(i)), 90, 60);
  it.each([
    ['white', flat(() => 255)], ['shaded only', flat((i) => 250 - (i % 90))], ['faint', flat((i) => (i % 90 > 30 && i % 90 < 40 && i > 900 && i < 4500 ? 248 : 250))],
    ['only noise', pngOf(scanned({ columns: 90, rows: 60, values: new Float64Array(5400) }, { noise: 0.1 }), 90, 60)],
  ])('is told so: %s', (_, bytes) => {
    expect(traced(bytes, { width: 100 })).toMatchObject({ ok: false, problems: [{ expected: 'lettering that stands out from its ground' }] });
  });
});

describe('a scan of the shipped lettering', () => {
  let region: Region;
  let truth: readonly TracedStroke[];
  beforeAll(() => {
    const shipped = shippedLettering();
    region = shipped.region;
    truth = traceOutlines(shipped.outlines, { tolerance: 0.02 }, () => {}).strokes;
  });

  /** How its centre lines differ from those of the drawing, percent of the width; the page lies askew by some degrees. */
  function differences(dotsPerInch: number, faults: Faults, { quality = 0, degrees = 0 } = {}) {
    const perMm = dotsPerInch / 25.4;
    const [columns, rows] = [Math.round(760 * perMm), Math.round(400 * perMm)];
    const turn: Affine = rotation(degrees);
    const codes = scanned(coverOf(inPixels(region, perMm, rows / perMm, turn), columns, rows), faults);
    const bytes = quality === 0 ? pngOf(codes, columns, rows) : jpegOf(codes, columns, rows, quality);
    const { outlines, seen } = found(bytes, { width: columns / perMm });
    const strokes = truth.map(({ path }) => ({ path: applyToPath(turn, path), ends: [] }));
    return { ...compare({ name: 'scan', width: 13, outlines: [], strokes, counts: [truth.length] }, traceOutlines(outlines, { tolerance: 0.02 }, () => {})), seen };
  }
  function jpegOf(codes: Uint8Array, width: number, height: number, quality: number): Uint8Array {
    const data = new Uint8Array(4 * codes.length).fill(255);
    codes.forEach((code, i) => data.fill(code, 4 * i, 4 * i + 3));
    return jpeg.encode({ width, height, data }, quality).data;
  }

  it('at 75 dots per inch gives the same centre lines, to two percent of their width', () => {
    const { rightCount, kinks, inner } = differences(75, {});
    expect({ rightCount, kinks }).toEqual({ rightCount: true, kinks: 0 });
    expect(inner.mean).toBeLessThan(0.5);
    expect(inner.p95).toBeLessThan(1);
  });

  it('does so at 40 dots per inch under uneven light, noisy, grainy, dirty, out of focus, askew and packed to JPEG quality 60', () => {
    const { rightCount, kinks, inner, seen } = differences(40, { noise: 0.03, grain: 0.02, blur: 0.8, shade: 0.4, salt: 0.001 }, { quality: 60, degrees: 1 });
    expect({ rightCount, kinks }).toEqual({ rightCount: true, kinks: 0 });
    expect(inner.mean).toBeLessThan(0.7);
    expect(inner.p95).toBeLessThan(2);
    expect(seen.strokePixels).toBeGreaterThan(20);
  });
});
