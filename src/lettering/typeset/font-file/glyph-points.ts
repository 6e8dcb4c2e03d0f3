import type { ByteReader } from './byte-reader.ts';
import type { ByteWriter } from './byte-writer.ts';

/** A point of an outline in font units; `on` the curve, or a control point off it. */
export interface GlyphPoint {
  readonly x: number;
  readonly y: number;
  readonly on: boolean;
}

/** Points from their steps (W3C, WOFF File Format 2.0, section 5.2: triplet encoding). */
export function readPoints(flags: ByteReader, coordinates: ByteReader, count: number): GlyphPoint[] {
  let [x, y] = [0, 0];
  return Array.from({ length: count }, () => {
    const flag = flags.u8();
    const [dx, dy] = readStep(flag & 127, coordinates);
    x += dx;
    y += dy;
    return { x, y, on: flag < 128 };
  });
}

const signed = (flag: number, size: number): number => ((flag & 1) === 1 ? size : -size);

function readStep(flag: number, from: ByteReader): readonly [number, number] {
  if (flag < 10) return [0, signed(flag, ((flag & 14) << 7) + from.u8())];
  if (flag < 20) return [signed(flag, (((flag - 10) & 14) << 7) + from.u8()), 0];
  const [along, up] = sizesOf(flag, from);
  return [signed(flag, along), signed(flag >> 1, up)];
}

function sizesOf(flag: number, from: ByteReader): readonly [number, number] {
  if (flag < 84) {
    const [high, low] = [flag - 20, from.u8()];
    return [1 + (high & 0x30) + (low >> 4), 1 + ((high & 0x0c) << 2) + (low & 15)];
  }
  if (flag < 120) {
    const high = flag - 84;
    return [1 + (Math.floor(high / 12) << 8) + from.u8(), 1 + (((high % 12) >> 2) << 8) + from.u8()];
  }
  if (flag < 124) {
    const [a, b, c] = [from.u8(), from.u8(), from.u8()];
    return [(a << 4) + (b >> 4), ((b & 15) << 8) + c];
  }
  return [from.u16(), from.u16()];
}

const ON_CURVE = 0x1;
const SAME_X = 0x10;
const SAME_Y = 0x20;
const OVERLAPS = 0x40;

/** Writes flags, then steps along x, then along y (ISO/IEC 14496-22, table “glyf”): two bytes for each step that is not 0. */
export function writePoints(points: readonly GlyphPoint[], overlaps: boolean, glyf: ByteWriter): void {
  const steps = points.map(({ x, y, on }, i) => ({ dx: x - (points[i - 1]?.x ?? 0), dy: y - (points[i - 1]?.y ?? 0), on }));
  steps.forEach(({ dx, dy, on }, i) => glyf.u8((on ? ON_CURVE : 0) | (dx === 0 ? SAME_X : 0) | (dy === 0 ? SAME_Y : 0) | (overlaps && i === 0 ? OVERLAPS : 0)));
  for (const { dx } of steps) if (dx !== 0) glyf.u16(dx);
  for (const { dy } of steps) if (dy !== 0) glyf.u16(dy);
}
