import { writeGraph } from '../../runtime/index.ts';
import { type EditorState, type OpenFile, editor, hasUnsaved } from '../state/editor.ts';
import { rememberText } from './recent.ts';
import { forget, keep, recallAll } from './storage.ts';

/** What a page had open, kept so that a crash or a closed tab loses nothing. */
export interface Work {
  readonly title: string;
  readonly name: string;
  readonly when: number;
  readonly text: string;
  readonly unsaved: boolean;
  readonly handle?: FileSystemFileHandle;
  readonly damage?: OpenFile['damage'];
}

const KEY = 'work:';
const MINE = 'groovewright-work';
/** How long a change may wait before it is kept, ms: long enough to take a gesture as one. */
const WAIT = 500;
/** How long a page being loaded again waits for its former self to let go of its work, ms. */
const PATIENCE = 500;

let id: string | undefined;

/**
 * The work this page is to go on with: its own when it was loaded again, else the newest that no other open page holds. What
 * else was left unsaved goes to the list of recent documents.
 */
export async function takeWork(): Promise<Work | undefined> {
  const all = [...(await recallAll<Work>(KEY))].sort(([, a], [, b]) => b.when - a.when);
  const own = readMine();
  const [mine] = own === undefined || !(await hold(own, PATIENCE)) ? [] : all.filter(([key]) => key === own);
  const free: (readonly [string, Work])[] = [];
  for (const entry of all) if (entry !== mine && entry[0] !== own && (await hold(entry[0]))) free.push(entry);
  const taken = mine ?? free.shift();
  for (const [key, work] of free) await setAside(key, work);
  id = taken?.[0] ?? crypto.randomUUID();
  writeMine(id);
  if (taken === undefined) await hold(id);
  return taken?.[1];
}

async function setAside(key: string, { title, name, when, text, unsaved, handle }: Work): Promise<void> {
  if (unsaved) await rememberText({ title, name, when, unsaved: true, ...(handle !== undefined && { handle }) }, text);
  await forget(KEY + key);
}

/**
 * Keeps the document from now on, after every change of it. What is open now was kept before, or can be opened as it came.
 * Gives a function that ends this.
 */
export function keepWork(): () => void {
  endKeeping();
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let kept = editor.getState();
  const now = () => {
    clearTimeout(waiting);
    waiting = undefined;
    const state = editor.getState();
    if (id === undefined || (kept.history.document === state.history.document && kept.file === state.file)) return;
    kept = state;
    void keep(KEY + id, workOf(state));
  };
  const soon = () => { waiting ??= setTimeout(now, WAIT); };
  const stop = editor.subscribe((state, before) => { if (state.history.document !== before.history.document || state.file !== before.file) soon(); });
  const hidden = () => { if (document.visibilityState === 'hidden') now(); };
  document.addEventListener('visibilitychange', hidden);
  addEventListener('pagehide', now);
  endKeeping = () => {
    clearTimeout(waiting);
    stop();
    document.removeEventListener('visibilitychange', hidden);
    removeEventListener('pagehide', now);
  };
  return endKeeping;
}

/** There is one page, and one who keeps its work. */
let endKeeping = (): void => undefined;

function workOf(state: EditorState): Work {
  const { history: { document }, file: { name, handle, damage } } = state;
  return {
    title: document.title, name, when: Date.now(), text: writeGraph(document), unsaved: hasUnsaved(state),
    ...(handle !== undefined && { handle }), ...(damage !== undefined && { damage }),
  };
}

/** Holds a piece of work until the page is gone. False when another page holds it and does not let go within `patience` ms. */
function hold(key: string, patience = 0): Promise<boolean> {
  const { locks } = navigator as { readonly locks?: LockManager | null };
  if (!locks) return Promise.resolve(true);
  const options: LockOptions = patience > 0 ? { signal: AbortSignal.timeout(patience) } : { ifAvailable: true };
  return new Promise((resolve) => {
    locks.request(`${MINE}:${key}`, options, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise(() => undefined);
    }).catch(() => { resolve(false); });
  });
}

/** A page loaded again knows what it had; a copy of a tab knows it too, but cannot hold it. */
function readMine(): string | undefined {
  try {
    return sessionStorage.getItem(MINE) ?? undefined;
  } catch {
    return undefined;
  }
}

function writeMine(key: string): void {
  try {
    sessionStorage.setItem(MINE, key);
  } catch {
    // Without it the page takes up the newest work instead.
  }
}
