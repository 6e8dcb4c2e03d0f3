import { BrokenFont } from './broken.ts';
import { ByteReader } from './byte-reader.ts';
import { ByteWriter } from './byte-writer.ts';

/**
 * The table of advances and side bearings; a side bearing left out is the glyph's leftmost point (W3C, WOFF File Format 2.0,
 * section 5.4). Throws BrokenFont.
 */
export function restoreMetrics(packed: Uint8Array, header: Uint8Array | undefined, leftmost: readonly number[] | undefined): Uint8Array {
  if (!header || !leftmost) throw new BrokenFont('tables “hhea” and “glyf” beside “hmtx”', 'one of them missing');
  const head = new ByteReader(header, 'table “hhea”');
  head.take(34);
  const count = head.u16();
  const from = new ByteReader(packed, 'table “hmtx”');
  const flags = from.u8();
  const advances = Array.from({ length: count }, () => from.u16());
  const bearings = leftmost.map((left, glyph) => ((flags & (glyph < count ? 1 : 2)) === 0 ? from.i16() : left));
  const table = new ByteWriter();
  bearings.forEach((bearing, glyph) => {
    if (glyph < count) table.u16(advances[glyph]!);
    table.u16(bearing);
  });
  return table.written();
}
