import { strToU8, zipSync } from 'fflate';

export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** A zip archive of texts. The same files give the same bytes on every machine and on every day. */
export function zipped(files: readonly TextFile[]): Uint8Array<ArrayBuffer> {
  // The format keeps local time: made here, the date is the same in every zone.
  const mtime = new Date(1980, 0, 1);
  return zipSync(Object.fromEntries(files.map(({ path, text }) => [path, [strToU8(text), { mtime, os: 0, level: 6 as const }]])));
}
