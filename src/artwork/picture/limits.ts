import { type PictureRefusal, refused } from './picture.ts';

/** Greatest sizes of a picture. A scan of an A3 page at 300 dots per inch has 17 million pixels. */
export const PICTURE_LIMITS = {
  /** Bytes of the file, MiB. */
  fileMiB: 24,
  /** Pixels, in millions: more cost memory and bring nothing, as ten pixels across a stroke are enough. */
  megapixels: 40,
  /** The same for JPEG, whose decoder needs thirty bytes for each. */
  jpegMegapixels: 24,
  /** Bytes of unpacked pixels, MiB. */
  unpackedMiB: 160,
  /** Pixels that are worked on, in millions: a larger picture is averaged down first. */
  workedMegapixels: 12,
} as const;

const SMALLER = 'Scan at a lower resolution, or scale the picture down: ten pixels across a stroke are plenty.';

/** Why a picture of that size is not taken, if it is not. */
export function unfitSize(columns: number, rows: number, bytesPerPixel: number, megapixels: number = PICTURE_LIMITS.megapixels): PictureRefusal | undefined {
  const size = `${columns} x ${rows} pixels`;
  if (columns < 1 || rows < 1) return refused('a picture with pixels', size, 'The file is damaged or empty: scan or save it again.');
  if (columns * rows > megapixels * 1e6) return refused(`at most ${megapixels} million pixels`, size, SMALLER);
  if (columns * rows * bytesPerPixel <= PICTURE_LIMITS.unpackedMiB * 2 ** 20) return undefined;
  return refused(`at most ${PICTURE_LIMITS.unpackedMiB} MiB of pixels`, `${size} of ${bytesPerPixel} bytes`, 'Save it with 8 bits per channel, or in grey.');
}

export function unfitFile(bytes: number): PictureRefusal | undefined {
  const { fileMiB } = PICTURE_LIMITS;
  return bytes <= fileMiB * 2 ** 20 ? undefined : refused(`at most ${fileMiB} MiB`, `${(bytes / 2 ** 20).toFixed(1)} MiB`, SMALLER);
}
