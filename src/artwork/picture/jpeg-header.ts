import type { Resolution } from './picture.ts';

/** What the segments of a JPEG file (ITU-T T.81) say before its pixels. */
export interface JpegHeader {
  readonly columns: number;
  readonly rows: number;
  readonly components: number;
  readonly bits: number;
  /** The number of its start-of-frame marker: 0 baseline, 1 extended, 2 progressive. */
  readonly process: number;
  /** How it is to be turned upright, 1 to 8 (Exif 2.3, tag 0x0112); 1 is as it lies. */
  readonly orientation: number;
  readonly resolution?: Resolution;
}

const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** Undefined where the file ends, or turns into something else, before its frame. */
export function jpegHeader(bytes: Uint8Array): JpegHeader | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let [orientation, resolution]: [number, Resolution | undefined] = [1, undefined];
  for (let at = 2; at + 4 <= bytes.length;) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) { at += 1; continue; }
    const [from, to] = [at + 4, at + 2 + view.getUint16(at + 2)];
    if (to > bytes.length || to < from) return undefined;
    if (isFrame(marker)) return to - from < 6 ? undefined : {
      process: marker - 0xc0, bits: bytes[from]!, rows: view.getUint16(from + 1), columns: view.getUint16(from + 3), components: bytes[from + 5]!, orientation,
      ...(resolution && { resolution }),
    };
    if (marker === 0xe0) resolution ??= densityOf(bytes.subarray(from, to));
    if (marker === 0xe1) orientation = orientationOf(bytes.subarray(from, to)) ?? orientation;
    at = to;
  }
  return undefined;
}

const isText = (bytes: Uint8Array, text: string): boolean => [...text].every((letter, i) => bytes[i] === letter.charCodeAt(0));

/** Of the JFIF segment: dots per inch or per centimetre. */
function densityOf(data: Uint8Array): Resolution | undefined {
  if (data.length < 12 || !isText(data, 'JFIF\0')) return undefined;
  const perUnit = data[7] === 1 ? 25.4 : data[7] === 2 ? 10 : undefined;
  const [across, down] = [(data[8]! << 8) | data[9]!, (data[10]! << 8) | data[11]!];
  return perUnit === undefined || across === 0 || down === 0 ? undefined : { across: across / perUnit, down: down / perUnit };
}

/** Of the Exif segment: a TIFF file in small, whose first directory may hold the orientation. */
function orientationOf(data: Uint8Array): number | undefined {
  if (data.length < 20 || !isText(data, 'Exif\0\0')) return undefined;
  const view = new DataView(data.buffer, data.byteOffset + 6, data.length - 6);
  const little = view.getUint16(0) === 0x4949;
  const directory = view.getUint32(4, little);
  if (directory + 2 > view.byteLength) return undefined;
  const entries = view.getUint16(directory, little);
  for (let i = 0, at = directory + 2; i < entries && at + 12 <= view.byteLength; i++, at += 12) {
    if (view.getUint16(at, little) !== 0x0112) continue;
    const value = view.getUint16(at + 8, little);
    return value >= 1 && value <= 8 ? value : undefined;
  }
  return undefined;
}
