import { strToU8, zipSync } from 'fflate';

export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** Local time, as the format wants it: the same date everywhere, hence the same bytes. */
const ALWAYS = new Date(1980, 0, 1);

/** A zip archive of texts. The same files give the same bytes on every machine and on every day. */
export const zipped = (files: readonly TextFile[]): Uint8Array<ArrayBuffer> =>
  zipSync(Object.fromEntries(files.map(({ path, text }) => [path, [strToU8(text), { mtime: ALWAYS, os: 0, level: 6 as const }]])));
