import { Zlib } from 'fflate';
import { base64OfBytes } from './base64.ts';
import type { Pixels } from './develop.ts';

const SIGNATURE = Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10);

/** Rows compressed between two pauses. */
const ROWS = 64;

/** How hard to compress, of 9: what is left is noise against bands, which no effort makes shorter. */
const LEVEL = 2;

/** A PNG (ISO/IEC 15948) of red, green and blue with eight bits each, as base64. It holds no time and no text, so that equal pixels give equal bytes. */
export function pngOf(pixels: Pixels, pause: () => void): string {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, pixels.columns);
  view.setUint32(4, pixels.rows);
  // Eight bits, colours of three, and the only methods there are of compression, filters and order.
  header.set([8, 2, 0, 0, 0], 8);
  // Said to be colours of IEC 61966-2-1, perceptual.
  const parts = [SIGNATURE, chunk('IHDR', [header]), chunk('sRGB', [Uint8Array.of(0)]), chunk('IDAT', compressed(pixels, pause)), chunk('IEND', [])];
  pause();
  return base64OfBytes(joined(parts));
}

/** Each row after a byte that says it is not filtered. */
function compressed({ columns, rows, codes }: Pixels, pause: () => void): Uint8Array[] {
  const parts: Uint8Array[] = [];
  const stream = new Zlib({ level: LEVEL }, (part) => { parts.push(part); });
  const width = 3 * columns;
  for (let from = 0; from < rows; from += ROWS) {
    const count = Math.min(ROWS, rows - from);
    const block = new Uint8Array(count * (width + 1));
    for (let row = 0; row < count; row++) block.set(codes.subarray((from + row) * width, (from + row + 1) * width), row * (width + 1) + 1);
    stream.push(block, from + count === rows);
    pause();
  }
  return parts;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function chunk(name: string, data: readonly Uint8Array[]): Uint8Array {
  const checked = joined([Uint8Array.from(name, (letter) => letter.charCodeAt(0)), ...data]);
  const whole = new Uint8Array(checked.length + 8);
  const view = new DataView(whole.buffer);
  view.setUint32(0, checked.length - 4);
  whole.set(checked, 4);
  view.setUint32(checked.length + 4, remainderOf(checked));
  return whole;
}

/** Remainders of a byte by the polynomial of ISO/IEC 15948, annex D. */
const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

function remainderOf(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = REMAINDERS[(rest ^ byte) & 255]! ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
