import decode from 'jpeg-js/lib/decoder.js';
import { type JpegHeader, jpegHeader } from './jpeg-header.ts';
import { PICTURE_LIMITS, unfitSize } from './limits.ts';
import { damaged, type Picture, type PictureReading, type PictureRefusal, refused } from './picture.ts';
import { lightOf, luma } from './tone.ts';

/** What the decoder may use: coefficients of the largest picture in three full channels, and what becomes of them. */
const MEMORY_MIB = 1024;

/** Reads a JPEG picture, baseline or progressive, and turns it upright as its Exif data says. */
export function readJpeg(bytes: Uint8Array): PictureReading {
  const header = jpegHeader(bytes);
  if (header === undefined) return damaged('JPEG', 'a file that ends before its pixels');
  const unfit = unfitSize(header.columns, header.rows, 3, PICTURE_LIMITS.jpegMegapixels) ?? unknownForm(header);
  if (unfit !== undefined) return unfit;
  try {
    const { width, height, data } = decode(bytes, { useTArray: true, formatAsRGBA: false, tolerantDecoding: false, maxResolutionInMP: PICTURE_LIMITS.jpegMegapixels, maxMemoryUsageInMB: MEMORY_MIB });
    const light = new Float32Array(width * height);
    for (let i = 0, at = 0; i < light.length; i++, at += 3) light[i] = lightOf(luma(data[at]!, data[at + 1]!, data[at + 2]!) / 255);
    return { ok: true, picture: upright({ columns: width, rows: height, light, ...(header.resolution && { resolution: header.resolution }) }, header.orientation) };
  } catch {
    return damaged('JPEG', 'one that ends too early or contradicts itself');
  }
}

function unknownForm({ process, bits, components }: JpegHeader): PictureRefusal | undefined {
  const again = 'Save it again as an ordinary JPEG, or as PNG.';
  if (process > 2 || bits !== 8) return refused('a baseline or progressive JPEG of 8 bits', `one of another kind (process ${process}, ${bits} bits)`, again);
  return components === 1 || components === 3 ? undefined : refused('a JPEG in grey or in colour', `one of ${components} channels, as for printing`, 'Save it again in RGB or grey.');
}

/** The picture as it is to be seen: orientations 5 to 8 lie on their side, 2, 4, 5 and 7 are mirrored. */
export function upright(picture: Picture, orientation: number): Picture {
  if (orientation === 1) return picture;
  const { columns, rows, light, resolution } = picture;
  const onSide = orientation > 4;
  const [width, height] = onSide ? [rows, columns] : [columns, rows];
  const [fromRight, fromBelow] = [[2, 3, 7, 8].includes(orientation), [3, 4, 6, 7].includes(orientation)];
  const turned = new Float32Array(light.length);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const [column, row] = onSide ? [y, x] : [x, y];
      turned[i] = light[(fromBelow ? rows - 1 - row : row) * columns + (fromRight ? columns - 1 - column : column)]!;
    }
  }
  return { columns: width, rows: height, light: turned, ...(resolution && { resolution: onSide ? { across: resolution.down, down: resolution.across } : resolution }) };
}
