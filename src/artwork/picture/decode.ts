import { readJpeg } from './jpeg.ts';
import { kindOf } from './kind.ts';
import { unfitFile } from './limits.ts';
import { type PictureReading, refused } from './picture.ts';
import { readPng } from './png.ts';

/** Reads a PNG or JPEG picture by what it is, whatever its name says. */
export function decodePicture(bytes: Uint8Array): PictureReading {
  const unfit = unfitFile(bytes.length);
  if (unfit !== undefined) return unfit;
  const found = kindOf(bytes);
  switch (found.kind) {
    case 'png': return readPng(bytes);
    case 'jpeg': return readJpeg(bytes);
    case 'other': return refused('a PNG or JPEG picture', found.says, 'Save the scan as PNG or JPEG.');
  }
}
