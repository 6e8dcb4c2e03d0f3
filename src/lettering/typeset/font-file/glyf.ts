import { BrokenFont } from './broken.ts';
import { ByteReader } from './byte-reader.ts';
import { ByteWriter } from './byte-writer.ts';
import { componentBytes } from './component.ts';
import { type GlyphPoint, readPoints, writePoints } from './glyph-points.ts';

/** The tables that hold outlines and where each of them begins (offsets of four bytes), and the least x of every glyph. */
export interface Glyphs {
  readonly glyf: Uint8Array;
  readonly loca: Uint8Array;
  readonly leftmost: readonly number[];
}

interface Streams {
  readonly contours: ByteReader;
  readonly counts: ByteReader;
  readonly flags: ByteReader;
  readonly glyphs: ByteReader;
  readonly components: ByteReader;
  readonly boxes: ByteReader;
  readonly instructions: ByteReader;
  readonly overlaps: Uint8Array | undefined;
}

/** Least and greatest x and y as the table has them: xMin, yMin, xMax, yMax. */
type GlyphBox = readonly [number, number, number, number];

/**
 * The outline tables from what the packed file has in their place: numbers of contours, of points, flags, coordinates and
 * instructions of all glyphs in streams of their own (W3C, WOFF File Format 2.0, sections 5.1 to 5.3). Throws BrokenFont.
 */
export function restoreGlyphs(packed: Uint8Array): Glyphs {
  const head = new ByteReader(packed, 'table “glyf”');
  head.u16();
  const options = head.u16();
  const count = head.u16();
  head.u16();
  const sizes = Array.from({ length: 7 }, () => head.u32()) as [number, number, number, number, number, number, number];
  const [contours, counts, flags, glyphs, components, boxes, instructions] = sizes.map((size) => head.part(size)) as [ByteReader, ByteReader, ByteReader, ByteReader, ByteReader, ByteReader, ByteReader];
  const boxed = boxes.take(4 * ((count + 31) >> 5));
  const overlaps = (options & 1) !== 0 ? head.take((count + 7) >> 3) : undefined;
  const streams = { contours, counts, flags, glyphs, components, boxes, instructions, overlaps };
  const glyf = new ByteWriter();
  const loca = new ByteWriter();
  const leftmost = Array.from({ length: count }, (_, glyph) => {
    loca.u32(glyf.length);
    const left = restoreGlyph(streams, glyph, bitOf(boxed, glyph), glyf);
    glyf.pad();
    return left;
  });
  loca.u32(glyf.length);
  return { glyf: glyf.written(), loca: loca.written(), leftmost };
}

/** Bits in order from the most significant one of the first byte. */
const bitOf = (bits: Uint8Array, place: number): boolean => ((bits[place >> 3]! >> (7 - (place & 7))) & 1) === 1;

/** Writes one glyph; returns its least x. */
function restoreGlyph(streams: Streams, glyph: number, boxed: boolean, glyf: ByteWriter): number {
  const contours = streams.contours.i16();
  if (contours === 0) {
    if (boxed) throw new BrokenFont('no box for a glyph without outline', `one for glyph ${glyph}`);
    return 0;
  }
  return contours > 0 ? restoreSimple(streams, contours, glyph, boxed, glyf) : restoreComposite(streams, boxed, glyf);
}

function restoreSimple(streams: Streams, contours: number, glyph: number, boxed: boolean, glyf: ByteWriter): number {
  let total = 0;
  const ends = Array.from({ length: contours }, () => (total += streams.counts.short255()) - 1);
  if (total > 0xffff) throw new BrokenFont('at most 65 535 points in a glyph', String(total));
  const points = readPoints(streams.flags, streams.glyphs, total);
  const instructions = streams.instructions.take(streams.glyphs.short255());
  const box = boxed ? readBox(streams.boxes) : boxOf(points);
  for (const value of [contours, ...box, ...ends, instructions.length]) glyf.u16(value);
  glyf.put(instructions);
  writePoints(points, streams.overlaps !== undefined && bitOf(streams.overlaps, glyph), glyf);
  return box[0];
}

function restoreComposite({ components, glyphs, instructions, boxes }: Streams, boxed: boolean, glyf: ByteWriter): number {
  if (!boxed) throw new BrokenFont('a box for every glyph made of others', 'one without');
  const { bytes, instructed } = componentBytes(components);
  const box = readBox(boxes);
  for (const value of [-1, ...box]) glyf.u16(value);
  glyf.put(bytes);
  if (!instructed) return box[0];
  const code = instructions.take(glyphs.short255());
  glyf.u16(code.length);
  glyf.put(code);
  return box[0];
}

const readBox = (boxes: ByteReader): GlyphBox => [boxes.i16(), boxes.i16(), boxes.i16(), boxes.i16()];

function boxOf(points: readonly GlyphPoint[]): GlyphBox {
  if (points.length === 0) return [0, 0, 0, 0];
  return points.reduce<GlyphBox>(([minX, minY, maxX, maxY], { x, y }) => [Math.min(minX, x), Math.min(minY, y), Math.max(maxX, x), Math.max(maxY, y)], [Infinity, Infinity, -Infinity, -Infinity]);
}
