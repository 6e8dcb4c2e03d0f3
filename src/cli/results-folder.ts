import { randomBytes } from 'node:crypto';
import * as nodeFs from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import type { ResultFile } from '../values/index.ts';
import { faulty, found, type Found } from './fault.ts';
import { errorCode, troubleWords } from './trouble.ts';

/** The file system calls a results folder makes; tests put a full disk in their place. */
export type FileSystem = Pick<typeof nodeFs,
  'closeSync' | 'existsSync' | 'fsyncSync' | 'mkdirSync' | 'openSync' | 'readdirSync' | 'realpathSync' | 'renameSync' | 'rmSync' | 'rmdirSync' | 'writeFileSync'>;

/**
 * A results folder that is being written. Its files gather in a hidden folder beside the place where it will stand;
 * `commit` renames that folder, so that the results are there whole or not at all.
 */
export interface ResultsFolder {
  /** Where the results will stand, as an absolute path. */
  readonly path: string;
  /** Writes one file; after a fault nothing is left of the folder. */
  readonly write: (file: ResultFile) => Found<void>;
  readonly commit: () => Found<void>;
  /** Removes all that was written. */
  readonly discard: () => void;
}

/** A path that cannot leave its folder: no empty part, no `.` or `..`. */
const INSIDE = /^(?!\.{1,2}(\/|$))[^/\\\0]+(\/(?!\.{1,2}(\/|$))[^/\\\0]+)*$/;

/** Begins a results folder at `out`: refused when something is there already, or nothing can be made there. */
export function beginResults(out: string, fs: FileSystem = nodeFs): Found<ResultsFolder> {
  const place = `--out ${out}`;
  return attempt(place, () => {
    const path = fs.existsSync(out) ? fs.realpathSync(out) : resolve(out);
    const taken = whyTaken(path, fs);
    if (taken) return faulty(place, 'a folder that is absent or empty', taken, 'Name another one, or remove that one first.');
    const gathering = join(nearestFolder(path, fs), `.groovewright-unfinished-${randomBytes(6).toString('hex')}`);
    fs.mkdirSync(gathering);
    return found(folderAt(path, gathering, place, fs));
  });
}

/** Says early, before anything is computed, whether results could be written to `out`; leaves nothing behind. */
export function tryResults(out: string, fs: FileSystem = nodeFs): Found<void> {
  const folder = beginResults(out, fs);
  if (folder.ok) folder.value.discard();
  return folder.ok ? found(undefined) : folder;
}

function whyTaken(path: string, fs: FileSystem): string | undefined {
  if (!fs.existsSync(path)) return undefined;
  try {
    if (fs.readdirSync(path).length > 0) return 'a folder with something in it';
  } catch (error) {
    if (errorCode(error) === 'ENOTDIR') return 'a file';
    throw error;
  }
  return `${process.cwd()}${sep}`.startsWith(`${path}${sep}`) ? 'the folder you are in' : undefined;
}

/** The folder that is there, nearest above `path`: on the disk where the results will be. */
function nearestFolder(path: string, fs: FileSystem): string {
  const above = dirname(path);
  return above === path || fs.existsSync(above) ? above : nearestFolder(above, fs);
}

function folderAt(path: string, gathering: string, place: string, fs: FileSystem): ResultsFolder {
  const folders = new Set([gathering]);
  const discard = () => { fs.rmSync(gathering, { recursive: true, force: true, maxRetries: 3 }); };
  return {
    path,
    discard,
    write: (file) => attempt(place, () => found(writeWhole(gathering, file, folders, fs)), discard),
    commit: () => attempt(place, () => found(moveInto(gathering, path, folders, fs)), discard),
  };
}

function writeWhole(gathering: string, result: ResultFile, folders: Set<string>, fs: FileSystem): void {
  const { path } = result;
  if (!INSIDE.test(path)) throw new RangeError(`a result's path must stay inside its folder: ${path}`);
  const target = join(gathering, path);
  for (let folder = dirname(target); !folders.has(folder); folder = dirname(folder)) folders.add(folder);
  fs.mkdirSync(dirname(target), { recursive: true });
  const file = fs.openSync(target, 'wx');
  try {
    fs.writeFileSync(file, 'text' in result ? result.text : Buffer.from(result.base64, 'base64'));
    fs.fsyncSync(file);
  } finally {
    fs.closeSync(file);
  }
}

/** Folders missing above are made now, and taken away again if the last step fails. */
function moveInto(gathering: string, path: string, folders: ReadonlySet<string>, fs: FileSystem): void {
  for (const folder of folders) syncFolder(folder, fs);
  const topmostMade = fs.mkdirSync(dirname(path), { recursive: true });
  try {
    fs.renameSync(gathering, path);
  } catch (error) {
    if (topmostMade !== undefined) removeUpTo(topmostMade, dirname(path), fs);
    throw error;
  }
  syncFolder(dirname(path), fs);
}

function removeUpTo(topmost: string, folder: string, fs: FileSystem): void {
  fs.rmdirSync(folder);
  if (folder !== topmost) removeUpTo(topmost, dirname(folder), fs);
}

/** Makes names last through a power failure; some file systems refuse to do so for folders, and need not. */
function syncFolder(path: string, fs: FileSystem): void {
  const folder = fs.openSync(path, 'r');
  try {
    fs.fsyncSync(folder);
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'EISDIR', 'EBADF'].includes(errorCode(error) ?? '')) throw error;
  } finally {
    fs.closeSync(folder);
  }
}

/** Turns what the file system refuses into a fault, after clearing up. */
function attempt<T>(place: string, action: () => Found<T>, clearUp: () => void = () => undefined): Found<T> {
  try {
    return action();
  } catch (error) {
    clearUp();
    const words = troubleWords(error);
    if (words === undefined) throw error;
    return faulty(place, 'a place that can be written to', words, 'Nothing was left there. Make room, or choose another place.');
  }
}
