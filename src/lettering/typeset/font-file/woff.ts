import { unzlibSync } from 'fflate';
import { BrokenFont, cutShort } from './broken.ts';
import { ByteReader } from './byte-reader.ts';
import { type FontTable, refuseHuge, writeSfnt } from './sfnt.ts';

interface Entry {
  readonly tag: string;
  readonly offset: number;
  readonly packed: number;
  readonly length: number;
}

/** The font inside a WOFF 1.0 file, as sfnt (W3C, WOFF File Format 1.0, sections 3 to 5). Throws BrokenFont. */
export function unpackWoff(woff: Uint8Array): Uint8Array {
  const head = new ByteReader(woff, 'the header');
  head.u32();
  const flavour = head.u32();
  head.u32();
  const count = head.u16();
  head.take(30);
  const entries = Array.from({ length: count }, (): Entry => {
    const [tag, offset, packed, length] = [head.tag(), head.u32(), head.u32(), head.u32()];
    head.u32();
    return { tag, offset, packed, length };
  });
  refuseHuge(entries.reduce((sum, { length }) => sum + length, 0));
  return writeSfnt(flavour, entries.map((entry) => unpackTable(woff, entry)));
}

function unpackTable(woff: Uint8Array, { tag, offset, packed, length }: Entry): FontTable {
  if (offset + packed > woff.length) throw cutShort(`a table lies from byte ${offset} to ${offset + packed} of ${woff.length}`);
  if (packed > length) throw new BrokenFont('tables no larger packed than unpacked', `one of ${packed} bytes for ${length}`);
  const data = woff.subarray(offset, offset + packed);
  return { tag, data: packed < length ? inflated(data, length) : data };
}

function inflated(data: Uint8Array, length: number): Uint8Array {
  try {
    const table = unzlibSync(data, { out: new Uint8Array(length) });
    if (table.length === length) return table;
  } catch {
    // Told below: what the unpacker says is of no help to whoever chose the file.
  }
  throw cutShort('a table that cannot be unpacked');
}
