import { type GraphDocument, writeGraph } from '../../runtime/index.ts';
import type { OpenFile } from '../state/editor.ts';
import { forget, keep, recall } from './storage.ts';

/** A document opened, saved or left behind before; its text is kept apart, so that the list stays small. */
export interface Recent {
  readonly id: string;
  readonly title: string;
  readonly name: string;
  readonly when: number;
  readonly handle?: FileSystemFileHandle;
  /** It holds changes that are in no file. */
  readonly unsaved?: true;
}

const MOST = 12;
const LIST = 'recent';
const textKey = (id: string) => `recent-text:${id}`;

export const recentDocuments = async (): Promise<readonly Recent[]> => (await recall<readonly Recent[]>(LIST)) ?? [];

export const recentText = ({ id }: Recent): Promise<string | undefined> => recall<string>(textKey(id));

export function remember(document: GraphDocument, { name, handle }: Pick<OpenFile, 'name' | 'handle'>, unsaved = false): Promise<void> {
  const entry: Omit<Recent, 'id'> = { title: document.title, name, when: Date.now(), ...(handle !== undefined && { handle }), ...(unsaved && { unsaved: true }) };
  return rememberText(entry, writeGraph(document));
}

let queue: Promise<void> = Promise.resolve();

/** One after the other: two at once would each write a list without the other's entry. */
export function rememberText(entry: Omit<Recent, 'id'>, text: string): Promise<void> {
  queue = queue.then(() => add(entry, text));
  return queue;
}

async function add(entry: Omit<Recent, 'id'>, text: string): Promise<void> {
  const list = await recentDocuments();
  const same = await Promise.all(list.map((other) => isSame(entry, other)));
  const id = crypto.randomUUID();
  const next = [{ ...entry, id }, ...list.filter((_, i) => !same[i])];
  if (!(await keep(textKey(id), text))) return;
  await keep(LIST, next.slice(0, MOST));
  const gone = [...list.filter((_, i) => same[i]), ...next.slice(MOST)];
  for (const { id: old } of gone) await forget(textKey(old));
}

/** Two entries of the same file. Without a place to compare, files of one name count as one; unsaved work is its own. */
async function isSame(a: Omit<Recent, 'id'>, b: Recent): Promise<boolean> {
  if (a.unsaved !== b.unsaved || a.name !== b.name) return false;
  if (a.handle === undefined || b.handle === undefined) return a.handle === b.handle;
  return a.handle.isSameEntry(b.handle).catch(() => false);
}
