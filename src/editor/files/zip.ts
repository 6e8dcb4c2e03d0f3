import { strToU8, zipSync } from 'fflate';
import type { ResultFile } from '../../values/check.ts';

/** A zip archive of files. The same files give the same bytes on every machine and on every day. */
export function zipped(files: readonly ResultFile[]): Uint8Array<ArrayBuffer> {
  // The format keeps local time: made here, the date is the same in every zone.
  const mtime = new Date(1980, 0, 1);
  return zipSync(Object.fromEntries(files.map((file) => [file.path, [bytesOf(file), { mtime, os: 0, level: 6 as const }]])));
}

/** A file's content as it is written to the disk. */
export const bytesOf = (file: ResultFile): Uint8Array<ArrayBuffer> =>
  ('text' in file ? strToU8(file.text) : Uint8Array.from(atob(file.base64), (character) => character.charCodeAt(0))) as Uint8Array<ArrayBuffer>;
