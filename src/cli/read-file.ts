import { readFileSync, statSync, type Stats } from 'node:fs';
import { basename } from 'node:path';
import type { FileValue } from '../runtime/index.ts';
import { faulty, found, type Found } from './fault.ts';
import { troubleWords } from './trouble.ts';

const MIB = 1024 * 1024;
/** The largest file that is read, bytes: far above any drawing, well below what memory bears. */
const LARGEST_FILE = 32 * MIB;

/** A file's bytes; its kind and size are looked at before it is opened. `place` is where the user named it. */
function readBytes(path: string, place: string): Found<Uint8Array> {
  try {
    const trouble = unfit(statSync(path));
    if (trouble) return faulty(place, trouble.expected, trouble.found, trouble.advice);
    return found(readFileSync(path));
  } catch (error) {
    const words = troubleWords(error);
    if (words === undefined) throw error;
    return faulty(place, `a file that can be read at ${path}`, words, 'Check the path and its permissions.');
  }
}

function unfit(stats: Stats): { expected: string; found: string; advice: string } | undefined {
  if (stats.isDirectory()) return { expected: 'a file', found: 'a folder', advice: 'Name the file inside it.' };
  if (!stats.isFile()) return { expected: 'a file', found: 'a pipe or a device', advice: 'Save it as a file first.' };
  if (stats.size <= LARGEST_FILE) return undefined;
  return {
    expected: `at most ${LARGEST_FILE / MIB} MiB`,
    found: `${(stats.size / MIB).toFixed(1)} MiB`,
    advice: 'Leave out what the drawing does not need, or scan a picture at a lower resolution.',
  };
}

/** A file as a graph keeps it: text when its bytes are UTF-8, base64 otherwise. */
export function readFileValue(path: string, place: string): Found<FileValue> {
  const bytes = readBytes(path, place);
  if (!bytes.ok) return bytes;
  const name = basename(path);
  const text = utf8(bytes.value);
  return found(text === undefined ? { name, base64: Buffer.from(bytes.value).toString('base64') } : { name, text });
}

/** A file that must be text. */
export function readText(path: string, place: string): Found<string> {
  const bytes = readBytes(path, place);
  if (!bytes.ok) return bytes;
  const text = utf8(bytes.value);
  return text === undefined ? faulty(place, 'UTF-8 text', 'other bytes', 'Save the file as UTF-8.') : found(text);
}

function utf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
