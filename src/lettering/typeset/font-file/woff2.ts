import { decompress } from 'brotli/decompress';
import { BrokenFont, cutShort } from './broken.ts';
import { ByteReader } from './byte-reader.ts';
import { type Glyphs, restoreGlyphs } from './glyf.ts';
import { restoreMetrics } from './hmtx.ts';
import { type FontTable, refuseHuge, writeSfnt } from './sfnt.ts';

/** Tags that a table's entry names by number (W3C, WOFF File Format 2.0, section 4.2). */
const KNOWN_TAGS = [
  'cmap', 'head', 'hhea', 'hmtx', 'maxp', 'name', 'OS/2', 'post', 'cvt ', 'fpgm', 'glyf', 'loca', 'prep', 'CFF ', 'VORG', 'EBDT', 'EBLC', 'gasp', 'hdmx', 'kern',
  'LTSH', 'PCLT', 'VDMX', 'vhea', 'vmtx', 'BASE', 'GDEF', 'GPOS', 'GSUB', 'EBSC', 'JSTF', 'MATH', 'CBDT', 'CBLC', 'COLR', 'CPAL', 'SVG ', 'sbix', 'acnt', 'avar',
  'bdat', 'bloc', 'bsln', 'cvar', 'fdsc', 'feat', 'fmtx', 'fvar', 'gvar', 'hsty', 'just', 'lcar', 'mort', 'morx', 'opbd', 'prop', 'trak', 'Zapf', 'Silf', 'Glat',
  'Gloc', 'Feat', 'Sill',
] as const;

/** Where table “head” says how long the offsets of glyphs are. */
const INDEX_FORMAT = 50;

interface Entry {
  readonly tag: string;
  readonly transformed: boolean;
  /** Bytes it takes in the unpacked stream. */
  readonly length: number;
}

/** The font inside a WOFF 2.0 file, as sfnt (W3C, WOFF File Format 2.0, sections 4 and 5). Throws BrokenFont. */
export function unpackWoff2(woff: Uint8Array): Uint8Array {
  const head = new ByteReader(woff, 'the header');
  head.u32();
  const flavour = head.u32();
  if (flavour === 0x74746366) throw new BrokenFont('one font', 'a collection of fonts in WOFF2', 'Give one font of it as a file of its own.');
  head.u32();
  const count = head.u16();
  head.take(6);
  const packed = head.u32();
  head.take(24);
  const entries = Array.from({ length: count }, () => readEntry(head));
  return writeSfnt(flavour, restored(unpackStream(head.take(packed), entries)));
}

function readEntry(head: ByteReader): Entry {
  const flags = head.u8();
  const tag = (flags & 63) === 63 ? head.tag() : KNOWN_TAGS[flags & 63]!;
  const version = flags >> 6;
  // For these two, and only these, version 0 is a transform and 3 is none.
  const transformed = tag === 'glyf' || tag === 'loca' ? version !== 3 : version !== 0;
  const length = head.base128();
  return { tag, transformed, length: transformed ? head.base128() : length };
}

type Unpacked = FontTable & Pick<Entry, 'transformed'>;

function unpackStream(packed: Uint8Array, entries: readonly Entry[]): Unpacked[] {
  const size = entries.reduce((sum, { length }) => sum + length, 0);
  refuseHuge(size);
  const stream = new ByteReader(inflated(packed, size), 'the packed tables');
  return entries.map(({ tag, transformed, length }) => ({ tag, transformed, data: stream.take(length) }));
}

function inflated(packed: Uint8Array, size: number): Uint8Array {
  try {
    return decompress(packed, size);
  } catch {
    throw cutShort('tables that cannot be unpacked');
  }
}

function restored(tables: readonly Unpacked[]): FontTable[] {
  const dataOf = (tag: string) => tables.find((table) => table.tag === tag)?.data;
  const packed = tables.find(({ tag, transformed }) => tag === 'glyf' && transformed);
  const glyphs = packed && restoreGlyphs(packed.data);
  return tables.map((table): FontTable => {
    const { tag, data, transformed } = table;
    if (!transformed) return tag === 'head' && glyphs ? { tag, data: withLongOffsets(data) } : table;
    if (tag === 'hmtx') return { tag, data: restoreMetrics(data, dataOf('hhea'), glyphs?.leftmost) };
    return { tag, data: glyphTable(tag, glyphs) };
  });
}

/** Table “head” (ISO/IEC 14496-22) saying that offsets of glyphs have four bytes: written anew, short ones might not reach. */
function withLongOffsets(head: Uint8Array): Uint8Array {
  const changed = Uint8Array.from(head);
  changed.set([0, 1], INDEX_FORMAT);
  return changed;
}

function glyphTable(tag: string, glyphs: Glyphs | undefined): Uint8Array {
  if (glyphs && tag === 'glyf') return glyphs.glyf;
  if (glyphs && tag === 'loca') return glyphs.loca;
  throw new BrokenFont('tables packed as the recommendation for WOFF 2.0 says', 'a transform it does not know');
}
