import { BrokenFont, cutShort } from './broken.ts';
import { ByteReader } from './byte-reader.ts';
import { ByteWriter } from './byte-writer.ts';

/** A table of a font, under its tag of four characters. */
export interface FontTable {
  readonly tag: string;
  readonly data: Uint8Array;
}

/** The most a font may hold once it is unpacked, bytes: above any typeface of an alphabet, below what memory bears. */
export const LARGEST_FONT = 48 * 1024 * 1024;

/** Refuses what a packed file claims to hold before room is made for it. */
export function refuseHuge(bytes: number): void {
  if (bytes > LARGEST_FONT) throw new BrokenFont(`at most ${LARGEST_FONT / 1024 / 1024} MiB in a font`, `one that claims to hold ${(bytes / 1024 / 1024).toFixed(0)} MiB`);
}

/**
 * A font of these tables as an sfnt file (ISO/IEC 14496-22, section 4.3). Checksums are left 0: nothing here looks at them.
 */
export function writeSfnt(flavour: number, tables: readonly FontTable[]): Uint8Array {
  const power = Math.floor(Math.log2(Math.max(1, tables.length)));
  const file = new ByteWriter();
  file.u32(flavour);
  for (const value of [tables.length, 16 * 2 ** power, power, 16 * (tables.length - 2 ** power)]) file.u16(value);
  let offset = 12 + 16 * tables.length;
  const sorted = [...tables].sort((a, b) => (a.tag < b.tag ? -1 : 1));
  for (const { tag, data } of sorted) {
    file.put(Uint8Array.from(tag, (letter) => letter.charCodeAt(0)));
    for (const value of [0, offset, data.length]) file.u32(value);
    offset += (data.length + 3) & ~3;
  }
  for (const { data } of sorted) {
    file.put(data);
    file.pad();
  }
  return file.written();
}

/** The tables of an sfnt file, or of the first font of a collection. Throws BrokenFont. */
export function sfntTables(bytes: Uint8Array): FontTable[] {
  const directory = new ByteReader(bytes, 'the list of tables');
  directory.take(firstFont(bytes));
  directory.u32();
  const count = directory.u16();
  directory.take(6);
  return Array.from({ length: count }, () => {
    const tag = directory.tag();
    directory.u32();
    const [offset, length] = [directory.u32(), directory.u32()];
    if (offset + length > bytes.length) throw cutShort(`table “${printable(tag)}” lies from byte ${offset} to ${offset + length} of ${bytes.length}`);
    return { tag, data: bytes.subarray(offset, offset + length) };
  });
}

function firstFont(bytes: Uint8Array): number {
  const head = new ByteReader(bytes, 'the header');
  if (head.tag() !== 'ttcf') return 0;
  head.take(8);
  return head.u32();
}

/** A tag of a damaged file may hold anything. */
const printable = (tag: string): string => tag.replace(/[^ -~]/g, '?');
