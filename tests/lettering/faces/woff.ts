import { inflateSync } from 'node:zlib';

/** The font inside a WOFF 1.0 file, as its tables in an sfnt (W3C, WOFF File Format 1.0, section 3 to 5). */
export function unpackWoff(woff: Uint8Array): Uint8Array {
  const given = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (given.getUint32(0) !== 0x774f4646) throw new RangeError('not a WOFF 1.0 file');
  const count = given.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((at) => given.getUint32(44 + 20 * i + at)) as [number, number, number, number, number];
    const data = woff.subarray(offset, offset + packed);
    return { tag, checksum, data: packed < length ? inflateSync(data) : data };
  });
  const padded = (size: number) => (size + 3) & ~3;
  const head = 12 + 16 * count;
  const sfnt = new Uint8Array(tables.reduce((sum, { data }) => sum + padded(data.length), head));
  const made = new DataView(sfnt.buffer);
  const power = Math.floor(Math.log2(count));
  made.setUint32(0, given.getUint32(4));
  [count, 16 * 2 ** power, power, 16 * (count - 2 ** power)].forEach((value, i) => made.setUint16(4 + 2 * i, value));
  let at = head;
  tables.forEach(({ tag, checksum, data }, i) => {
    [tag, checksum, at, data.length].forEach((value, k) => made.setUint32(12 + 16 * i + 4 * k, value));
    sfnt.set(data, at);
    at += padded(data.length);
  });
  return sfnt;
}
