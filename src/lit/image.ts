import type { Box } from '../geometry/index.ts';
import type { Pixels } from './develop.ts';

/** A picture of pixels with its place on the sheet. */
export interface PlacedImage {
  /** A PNG as base64 (RFC 4648 section 4). */
  readonly png: string;
  /** The same, small, for where there is little room. */
  readonly small: string;
  readonly columns: number;
  readonly rows: number;
  /** What it shows, in mm: its pixels are square. */
  readonly box: Box;
  /** What is seen on it, for those who do not see it. */
  readonly says: string;
}

/** Most pixels across of a small one. */
const SMALL = 256;

/** Means of square blocks of a picture, so that it is no wider than a small one should be. */
export function smaller({ columns, rows, codes }: Pixels): Pixels {
  const block = Math.ceil(columns / SMALL);
  const [width, height] = [Math.max(1, Math.floor(columns / block)), Math.max(1, Math.floor(rows / block))];
  const small = new Uint8Array(3 * width * height);
  for (let to = 0; to < small.length; to++) {
    const [part, x, y] = [to % 3, Math.floor(to / 3) % width, Math.floor(to / 3 / width)];
    let sum = 0;
    for (let dy = 0; dy < block; dy++) for (let dx = 0; dx < block; dx++) sum += codes[3 * (Math.min(rows - 1, y * block + dy) * columns + x * block + dx) + part]!;
    small[to] = Math.round(sum / (block * block));
  }
  return { columns: width, rows: height, codes: small };
}
