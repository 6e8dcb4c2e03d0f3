import { type FileParam, type FileValue, LIMITS, type Problem, checkValue } from '../../runtime/index.ts';

export type FileReading =
  | { readonly ok: true; readonly value: FileValue }
  | { readonly ok: false; readonly problem: Problem };

const MIB = 1024 * 1024;

/** A size in bytes as a person reads it. */
export function sizeText(bytes: number): string {
  if (bytes < 1024) return `${bytes} bytes`;
  return bytes < MIB ? `${(bytes / 1024).toFixed(1)} KiB` : `${(bytes / MIB).toFixed(1)} MiB`;
}

/** Reads a chosen file as a graph keeps it: text when its bytes are UTF-8, base64 otherwise. */
export async function readFileFor(param: FileParam, file: File): Promise<FileReading> {
  const fault = checkValue(param, { name: file.name, text: '' });
  if (fault !== undefined) return { ok: false, problem: fault };
  if (file.size > LIMITS.characters) return tooLarge(file.size);
  const bytes = await bytesOf(file);
  if (bytes === undefined)
    return { ok: false, problem: { expected: 'a file that can be read', found: `“${file.name}”, which could not be`, advice: 'Look whether it still exists and may be read, then choose it again.' } };
  const text = utf8(bytes);
  const value = text === undefined ? { name: file.name, base64: toBase64(bytes) } : { name: file.name, text };
  return 'base64' in value && value.base64.length > LIMITS.characters ? tooLarge(file.size) : { ok: true, value };
}

function tooLarge(size: number): FileReading {
  const advice = 'Leave out what the drawing does not need, or scan a picture at a lower resolution.';
  return { ok: false, problem: { expected: `at most ${sizeText(LIMITS.characters)} for a whole document`, found: sizeText(size), advice } };
}

async function bytesOf(file: File): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    return undefined;
  }
}

function utf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Bytes that are turned into characters at once: far below what a function takes as arguments, and a multiple of 3. */
const CHUNK = 24_576;

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += CHUNK) text += btoa(String.fromCharCode(...bytes.subarray(at, at + CHUNK)));
  return text;
}

/** The bytes of a kept file. */
export function bytesOfValue(value: FileValue): Uint8Array<ArrayBuffer> {
  if ('text' in value) return new TextEncoder().encode(value.text);
  return Uint8Array.from(atob(value.base64), (character) => character.charCodeAt(0));
}

/** How many bytes a kept file has. */
export function sizeOf(value: FileValue): number {
  if ('text' in value) return new Blob([value.text]).size;
  const padding = /=*$/.exec(value.base64.slice(-2))?.[0].length ?? 0;
  return (value.base64.length / 4) * 3 - padding;
}
