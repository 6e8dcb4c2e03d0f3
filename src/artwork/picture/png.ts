import { decode, type DecodedPng } from 'fast-png';
import { Unzlib } from 'fflate';
import { unfitSize } from './limits.ts';
import { damaged, type Picture, type PictureReading, type PictureRefusal, refused, type Resolution } from './picture.ts';
import { bareOf, channelsOf, type Chunk, chunksOf, headerOf, pixelBytes, type PngHeader } from './png-chunks.ts';
import { samplesOf } from './png-samples.ts';

/** Reads a PNG picture: grey, colour or palette, 1 to 16 bits, with or without transparency, interlaced or not. */
export function readPng(bytes: Uint8Array): PictureReading {
  const header = headerOf(bytes);
  if (header === undefined) return damaged('PNG', 'a file that ends before its header');
  const unfit = unfitSize(header.columns, header.rows, pixelBytes(header)) ?? unknownForm(header);
  if (unfit !== undefined) return unfit;
  const chunks = chunksOf(bytes);
  if (chunks === undefined) return damaged('PNG', `${bytes.length} bytes, which end too early`);
  const trouble = unpackedTrouble(bytes, chunks, header);
  if (trouble !== undefined) return trouble;
  const png = decoded(bareOf(bytes, chunks));
  return 'ok' in png ? png : pictureOf(png, header, resolutionOf(bytes, chunks));
}

function unknownForm(header: PngHeader): PictureRefusal | undefined {
  const { depth, interlaced, colour } = header;
  if (channelsOf(header) === 0 || ![1, 2, 4, 8, 16].includes(depth)) return damaged('PNG', `colour type ${colour} with ${depth} bits, which does not exist`);
  // The decoder takes bits for bytes there, and would give a garbled picture.
  if (interlaced && depth < 8) return refused('a picture without interlacing, or with 8 bits', `an interlaced one with ${depth} ${depth === 1 ? 'bit' : 'bits'}`, 'Save it again without interlacing.');
  return undefined;
}

/**
 * Unpacks the pixels once only to count them: a file may be made so that it unpacks to a thousand times its size, and one that ends
 * early would give a picture with a black rest.
 */
function unpackedTrouble(bytes: Uint8Array, chunks: readonly Chunk[], header: PngHeader): PictureRefusal | undefined {
  const { columns, rows, depth, interlaced } = header;
  const least = rows * (1 + Math.ceil((columns * channelsOf(header) * depth) / 8));
  const most = interlaced ? 2 * least + 64 : least;
  let total = 0;
  const unpacking = new Unzlib((data) => { total += data.length; });
  const packed = chunks.filter(({ type }) => type === 'IDAT');
  try {
    for (const { from, length } of packed) {
      for (let at = 0; at < length && total <= most; at += PORTION) unpacking.push(bytes.subarray(from + at, from + Math.min(length, at + PORTION)));
    }
  } catch {
    return damaged('PNG', 'pixels that cannot be unpacked');
  }
  if (total > most) return damaged('PNG', `more pixels than the ${columns} x ${rows} it speaks of`);
  return total < least ? damaged('PNG', `only ${Math.floor((100 * total) / least)} % of its pixels`) : undefined;
}

/** Bytes unpacked at a time: they may become a thousand times as many. */
const PORTION = 16_384;

function decoded(bytes: Uint8Array): DecodedPng | PictureRefusal {
  try {
    return decode(bytes, { checkCrc: true });
  } catch {
    return damaged('PNG', 'one whose parts or check sums contradict each other');
  }
}

function pictureOf(png: DecodedPng, header: PngHeader, resolution: Resolution | undefined): PictureReading {
  const light = samplesOf(png, header);
  if (light === undefined) return damaged('PNG', 'pixels of a colour that its palette does not have');
  const picture: Picture = { columns: png.width, rows: png.height, light, ...(resolution && { resolution }) };
  return { ok: true, picture };
}

/** Pixels per metre, where the file states them in metres. */
function resolutionOf(bytes: Uint8Array, chunks: readonly Chunk[]): Resolution | undefined {
  const chunk = chunks.find(({ type, length }) => type === 'pHYs' && length === 9);
  if (chunk === undefined || bytes[chunk.from + 8] !== 1) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [across, down] = [view.getUint32(chunk.from) / 1000, view.getUint32(chunk.from + 4) / 1000];
  return across > 0 && down > 0 ? { across, down } : undefined;
}
