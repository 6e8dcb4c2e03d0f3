import { bytesOfBase64, decodePicture, type PictureReading } from '../artwork/index.ts';
import type { FileValue } from '../runtime/params.ts';
import type { Problems } from '../runtime/problem.ts';

type PictureFile = Extract<PictureReading, { ok: true }> | { readonly ok: false; readonly problems: Problems };

/** The picture in a chosen PNG or JPEG file, or why there is none. */
export function pictureFile(file: FileValue | null, place: string): PictureFile {
  if (file === null) return { ok: false, problems: [{ place, expected: 'a PNG or JPEG picture', found: 'no file', advice: 'Choose a file.' }] };
  // No picture is text: its first bytes are made so that it cannot be.
  if ('text' in file) return { ok: false, problems: [{ place, expected: 'a PNG or JPEG picture', found: `“${file.name}”, which is text`, advice: 'Save the scan as PNG or JPEG; a drawing in text is for “Import outlines”.' }] };
  const reading = decodePicture(bytesOfBase64(file.base64));
  if (reading.ok) return reading;
  const [{ expected, found, advice }] = reading.problems;
  return { ok: false, problems: [{ place, expected, found: `“${file.name}”: ${found}`, advice }] };
}
