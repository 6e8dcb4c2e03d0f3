import { type UseStore, createStore, del, entries, get, set } from 'idb-keyval';
import { notify } from '../state/editor.ts';

/**
 * What the browser keeps between visits. Private windows and full disks refuse it: that is told once, and the page works
 * on without.
 */
let opened: UseStore | undefined;
let told = false;

const store = (): UseStore => (opened ??= createStore('groovewright', 'kept'));

export const keep = (key: string, value: unknown): Promise<boolean> => attempt(async () => {
  await set(key, value, store());
  return true;
}, false);

export const recall = <T>(key: string): Promise<T | undefined> => attempt(() => get<T>(key, store()), undefined);

export const forget = (key: string): Promise<void> => attempt(() => del(key, store()), undefined);

/** Everything kept whose key begins so, without the beginning. */
export const recallAll = <T>(beginning: string): Promise<readonly (readonly [string, T])[]> => attempt(async () => {
  const all = await entries<string, T>(store());
  return all.filter(([key]) => key.startsWith(beginning)).map(([key, value]) => [key.slice(beginning.length), value] as const);
}, []);

async function attempt<T>(action: () => Promise<T>, otherwise: T): Promise<T> {
  try {
    return await action();
  } catch (error) {
    tell(error);
    return otherwise;
  }
}

function tell(error: unknown): void {
  if (told) return;
  told = true;
  const full = error instanceof DOMException && error.name === 'QuotaExceededError';
  notify({
    kind: 'caution',
    says: full
      ? 'The browser has no room left to keep unsaved work: after a crash it would be gone. Save the recipe to a file, and free some space.'
      : 'This window keeps nothing between visits (a private one, perhaps): after a crash unsaved work would be gone. Save the recipe to a file.',
  });
}

/** Begins anew, as a page just loaded would. */
export function resetStorage(): void {
  opened = undefined;
  told = false;
}
