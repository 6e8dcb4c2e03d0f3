import { BrokenFont, cutShort } from './broken.ts';
import { ByteReader } from './byte-reader.ts';
import { type FontTable, refuseHuge, sfntTables } from './sfnt.ts';
import { unpackWoff } from './woff.ts';
import { unpackWoff2 } from './woff2.ts';

const SFNT = ['\0\x01\0\0', 'OTTO', 'true', 'ttcf'];

/** What every font must have to be set: sizes, number of glyphs, characters, advances (ISO/IEC 14496-22, section 5). */
const NEEDED: readonly (readonly [tag: string, bytes: number])[] = [['head', 54], ['maxp', 6], ['hhea', 36], ['hmtx', 4], ['cmap', 4]];
const OUTLINES = ['glyf', 'CFF ', 'CFF2'];
const BITMAPS = ['CBDT', 'EBDT', 'sbix', 'bdat'];

/**
 * A font file (TrueType or OpenType, a collection's first font, WOFF or WOFF2) as sfnt with outlines, by its content, whatever its
 * name says. Throws BrokenFont where it is none.
 */
export function unpackFont(bytes: Uint8Array): Uint8Array {
  refuseHuge(bytes.length);
  const sfnt = unpacked(bytes);
  requireTables(sfntTables(sfnt));
  return sfnt;
}

function unpacked(bytes: Uint8Array): Uint8Array {
  if (bytes.length === 0) throw new BrokenFont('a font file', 'an empty file');
  const signature = bytes.length < 4 ? '' : new ByteReader(bytes, 'the header').tag();
  if (signature === 'wOFF') return unpackWoff(bytes);
  if (signature === 'wOF2') return unpackWoff2(bytes);
  if (SFNT.includes(signature)) return bytes;
  throw new BrokenFont('a font file', 'a file that does not begin like one', 'Choose a TrueType, OpenType, WOFF or WOFF2 file.');
}

function requireTables(tables: readonly FontTable[]): void {
  const sizes = new Map(tables.map(({ tag, data }) => [tag, data.length]));
  if (!OUTLINES.some((tag) => sizes.has(tag))) throw noOutlines(BITMAPS.some((tag) => sizes.has(tag)));
  for (const [tag, bytes] of NEEDED) {
    if (!sizes.has(tag)) throw new BrokenFont(`a font with table “${tag}”`, 'one without');
    if (sizes.get(tag)! < bytes) throw cutShort(`table “${tag}” has ${sizes.get(tag)} of at least ${bytes} bytes`);
  }
  if (sizes.has('glyf') && !sizes.has('loca')) throw new BrokenFont('a font with table “loca”', 'one without');
}

const noOutlines = (bitmaps: boolean): BrokenFont =>
  new BrokenFont('a font with outlines', bitmaps ? 'one of bitmaps only' : 'one without any', 'Choose a font whose letters are outlines.');
