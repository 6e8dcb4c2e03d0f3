import type { ByteReader } from './byte-reader.ts';
import { ByteWriter } from './byte-writer.ts';

/** Flags of a component (ISO/IEC 14496-22, table “glyf”), and how many bytes follow for what they say. */
const WORDS = 0x1;
const MORE = 0x20;
const INSTRUCTED = 0x100;
const SHAPES: readonly (readonly [flag: number, bytes: number])[] = [[0x8, 2], [0x40, 4], [0x80, 8]];

/** The components of one glyph as they stand in the stream, and whether instructions follow. */
export function componentBytes(stream: ByteReader): { readonly bytes: Uint8Array; readonly instructed: boolean } {
  const bytes = new ByteWriter();
  let instructed = false;
  for (let more = true; more;) {
    const flags = stream.u16();
    bytes.u16(flags);
    const shape = SHAPES.find(([flag]) => (flags & flag) !== 0)?.[1] ?? 0;
    bytes.put(stream.take(2 + ((flags & WORDS) !== 0 ? 4 : 2) + shape));
    instructed ||= (flags & INSTRUCTED) !== 0;
    more = (flags & MORE) !== 0;
  }
  return { bytes: bytes.written(), instructed };
}
