import { encode } from 'fast-png';
import { applyToPoint, type Affine, type Loop, type Region } from '../../../src/geometry/index.ts';

/** A picture of a region as a scanner would take it: how much of each pixel it covers, exactly. */
export interface Cover {
  readonly columns: number;
  readonly rows: number;
  /** 0 to 1, row by row from the upper left corner. */
  readonly values: Float64Array;
}

/**
 * The exact share of each pixel that a region covers. Each edge adds, to every pixel it crosses, the area between itself and the pixel's
 * right side, and to all pixels right of it in that row its height there (summed up at the end); loops count by their direction.
 * Coordinates are in pixels, y down.
 */
export function coverOf(loops: readonly Loop[], columns: number, rows: number): Cover {
  const sums = new Float64Array((columns + 2) * rows);
  for (const loop of loops) loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length]!;
    addEdge(sums, columns + 2, rows, [from.x, from.y, to.x, to.y]);
  });
  const values = new Float64Array(columns * rows);
  for (let y = 0; y < rows; y++) {
    for (let x = 0, total = 0; x < columns; x++) {
      total += sums[y * (columns + 2) + x]!;
      values[y * columns + x] = Math.min(1, Math.abs(total));
    }
  }
  return { columns, rows, values };
}

function addEdge(sums: Float64Array, stride: number, rows: number, [x0, y0, x1, y1]: readonly [number, number, number, number]): void {
  if (y0 === y1) return;
  const sign = y0 < y1 ? 1 : -1;
  const [ax, ay, bx, by] = y0 < y1 ? [x0, y0, x1, y1] : [x1, y1, x0, y0];
  const slope = (bx - ax) / (by - ay);
  for (let row = Math.max(0, Math.floor(ay)); row < Math.min(rows, Math.ceil(by)); row++) {
    const [top, bottom] = [Math.max(ay, row), Math.min(by, row + 1)];
    if (bottom > top) addSlice(sums, row * stride, stride, [ax + (top - ay) * slope, ax + (bottom - ay) * slope], sign * (bottom - top));
  }
}

/** One row's part of an edge, from x `a` to x `b`, `height` high: pixel by pixel. */
function addSlice(sums: Float64Array, base: number, stride: number, [a, b]: readonly [number, number], height: number): void {
  const [left, right] = [Math.min(a, b), Math.max(a, b)];
  const last = stride - 2;
  const put = (pixel: number, middle: number, part: number) => {
    if (pixel >= last) return;
    if (pixel < 0) { sums[base]! += part; return; }
    sums[base + pixel]! += part * (pixel + 1 - middle);
    sums[base + pixel + 1]! += part * (middle - pixel);
  };
  if (right - left < 1e-12) return put(Math.floor(left), left, height);
  for (let pixel = Math.floor(left); pixel < right; pixel++) {
    const [from, to] = [Math.max(left, pixel), Math.min(right, pixel + 1)];
    if (to > from) put(pixel, (from + to) / 2, (height * (to - from)) / (right - left));
  }
}

/** Turns a region in mm, y up, into loops in pixels, y down, on a page so many mm high. */
export const inPixels = ({ loops }: Region, pixelsPerMm: number, height: number, by: Affine = [1, 0, 0, 1, 0, 0]): Loop[] =>
  loops.map((loop) => loop.map((point) => {
    const { x, y } = applyToPoint(by, point);
    return { x: x * pixelsPerMm, y: (height - y) * pixelsPerMm };
  }));

export interface Faults {
  /** Standard deviation of the blur, pixels. */
  readonly blur?: number;
  /** Share of light lost from the upper left to the lower right corner. */
  readonly shade?: number;
  /** Standard deviation of noise and of paper grain (two pixels wide), as shares of full light. */
  readonly noise?: number;
  readonly grain?: number;
  /** Share of pixels that are black or white for no reason. */
  readonly salt?: number;
  /** Light of paper and ink, linear. */
  readonly paper?: number;
  readonly ink?: number;
  /** Light adds up before it is coded, as in a scanner; or code values do, as where a program drew the picture. */
  readonly adds?: 'light' | 'codes';
}

const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const coded = (light: number): number => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);

/** Code values (0 to 255) of a scan with faults. */
export function scanned(cover: Cover, faults: Faults = {}, seed = 1): Uint8Array {
  const { blur = 0, shade = 0, noise = 0, grain = 0, salt = 0, paper = 0.85, ink = 0.04, adds = 'light' } = faults;
  const { columns, rows } = cover;
  const random = seeded(seed);
  const soft = blur > 0 ? smeared(cover, blur) : cover;
  const grains = grain > 0 ? smeared({ columns, rows, values: Float64Array.from({ length: columns * rows }, () => normal(random)) }, 1).values : undefined;
  return Uint8Array.from(soft.values, (share, i) => {
    if (salt > 0 && random() < salt) return random() < 0.5 ? 0 : 255;
    const light = adds === 'light' ? coded(paper + (ink - paper) * share) : coded(paper) + (coded(ink) - coded(paper)) * share;
    const dim = 1 - (shade * ((i % columns) / columns + Math.floor(i / columns) / rows)) / 2;
    // Shade takes light away; a power law passes it on to the code as a factor.
    const value = light * dim ** (1 / 2.2) + (noise > 0 ? noise * normal(random) : 0) + (grains ? grain * 3.5 * grains[i]! : 0);
    return Math.round(255 * Math.min(1, Math.max(0, value)));
  });
}

/** A quick generator for millions of pixels (mulberry32); its quality does not matter here. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A Gaussian blur of its own, so that what is tested does not blur its own tests. */
export function smeared({ columns, rows, values }: Cover, sigma: number): Cover {
  const reach = Math.ceil(4 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma ** 2)));
  const total = weights.reduce((a, b) => a + b);
  const along = (from: Float64Array, stride: number, length: number) => from.map((_, i) => {
    const at = Math.floor(i / stride) % length;
    let sum = 0;
    for (let k = -reach; k <= reach; k++) sum += weights[k + reach]! * from[i + (Math.min(length - 1, Math.max(0, at + k)) - at) * stride]!;
    return sum / total;
  });
  return { columns, rows, values: along(along(values, 1, columns), columns, rows) };
}

/** A grey PNG file. */
export const pngOf = (data: Uint8Array, columns: number, rows: number): Uint8Array => encode({ width: columns, height: rows, data, channels: 1, depth: 8 });
