import type { ResultFile } from '../../values/check.ts';
import { type Outcome } from '../worker/protocol.ts';
import { ask as askWorker } from '../worker/client.ts';
import { type EditorState, editor, notify } from '../state/editor.ts';
import { baseName } from './names.ts';
import { download } from './system.ts';
import { counted } from './words.ts';
import { bytesOf, zipped } from './zip.ts';

const PROGRAMS = 'programs/';
const isProgram = ({ path }: { readonly path: string }): boolean => path.startsWith(PROGRAMS);

/** The programs that a run hands out, and those it keeps back. */
export function programsOf({ files, keptBack }: Outcome): { readonly ready: readonly string[]; readonly keptBack: readonly string[] } {
  return { ready: files.filter(isProgram).map(({ path }) => path), keptBack };
}

/** Why results cannot be taken now; undefined when they can. */
export function whyNoResults({ outcome, running }: Pick<EditorState, 'outcome' | 'running'>): string | undefined {
  if (outcome !== undefined) return undefined;
  return running.state === 'computing' ? 'Still computing.' : 'Nothing has been computed yet.';
}

/** Why no programs are handed out; undefined when they are. */
export function whyNoPrograms(state: Pick<EditorState, 'outcome' | 'running'>): string | undefined {
  const waiting = whyNoResults(state);
  if (waiting !== undefined) return waiting;
  const { ready, keptBack } = programsOf(state.outcome!);
  if (keptBack.length > 0) return `${keptBackBecause(state.outcome!)}: ${counted(keptBack.length, 'program')} kept back`;
  return ready.length === 0 ? 'No programs came out' : undefined;
}

function keptBackBecause({ checks }: Outcome): string {
  const fails = checks.filter(({ status }) => status === 'fail').length;
  return fails === 1 ? '1 check fails' : `${String(fails)} checks fail`;
}

/** Hands out the programs: one as it is, several as an archive. Drafts are programs that a failing check keeps back. */
export const takePrograms = (draft: boolean): Promise<void> => take(draft, isProgram, draft ? 'programs-draft' : 'programs');

/** Hands out every file of a run as an archive laid out as its folder. */
export const takeAll = (): Promise<void> => take(false, () => true, 'results');

export const takeOne = (path: string): Promise<void> => take(false, (file) => file.path === path, 'results');

async function take(draft: boolean, wanted: (file: ResultFile) => boolean, what: string): Promise<void> {
  const graph = editor.getState().file.name;
  try {
    const files = (await askWorker('files', { graph, draft })).filter(wanted);
    const [first] = files;
    if (first === undefined) return notify({ kind: 'failed', says: 'The run no longer makes that file. Look at the list again.' });
    if (files.length === 1) download(first.path.replace(/^.*\//, ''), new Blob([bytesOf(first)], { type: typeOf(first) }));
    else download(`${baseName(graph)}-${what}.zip`, new Blob([zipped(files)], { type: 'application/zip' }));
    notify({ kind: 'done', says: files.length === 1 ? `${first.path} is in your downloads.` : `${counted(files.length, 'file')} are in your downloads, as one archive.` });
  } catch (error) {
    notify({ kind: 'failed', says: `The results could not be put together. ${adviceOf(error)}` });
  }
}

/** The media type of a file: text unless its ending is known to be something else. */
const typeOf = (file: ResultFile): string => ('text' in file ? 'text/plain' : file.path.endsWith('.pdf') ? 'application/pdf' : 'application/octet-stream');

/** What the worker refuses comes as a problem. */
function adviceOf(error: unknown): string {
  const told = typeof error === 'object' && error !== null ? error as { readonly advice?: unknown; readonly expected?: unknown; readonly found?: unknown; readonly message?: unknown } : {};
  if (typeof told.advice === 'string') return `Expected ${String(told.expected)}, found ${String(told.found)}. ${told.advice}`;
  return typeof told.message === 'string' && told.message !== '' ? told.message : 'Change nothing, and try again.';
}
