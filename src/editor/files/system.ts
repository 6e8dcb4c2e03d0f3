/** Files of the person's machine: through the browser's file pickers where it has them, else an upload and a download. */

/** What the DOM types do not know yet (File System Access, a draft of the web platform's community group). */
interface Pickers {
  readonly showOpenFilePicker?: (options: object) => Promise<readonly FileSystemFileHandle[]>;
  readonly showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
}
interface AskedHandle {
  readonly queryPermission?: (options: { mode: 'read' | 'readwrite' }) => Promise<PermissionState>;
  readonly requestPermission?: (options: { mode: 'read' | 'readwrite' }) => Promise<PermissionState>;
}

export interface PickedFile {
  readonly file: File;
  readonly handle?: FileSystemFileHandle;
}

export interface Place {
  readonly name: string;
  readonly handle?: FileSystemFileHandle;
}

const pickers = (): Pickers => globalThis as unknown as Pickers;

const GRAPHS = [{ description: 'Recipe', accept: { 'application/json': ['.json'] } }];

/** Lets the person choose a recipe's file; undefined when they choose none. */
export async function pickGraph(): Promise<PickedFile | undefined> {
  const { showOpenFilePicker } = pickers();
  if (showOpenFilePicker === undefined) return pickByInput('.json,application/json');
  const handles = await unlessAborted(showOpenFilePicker.call(globalThis, { types: GRAPHS, id: 'recipes' }));
  const handle = handles?.[0];
  return handle === undefined ? undefined : { file: await handle.getFile(), handle };
}

function pickByInput(accept: string): Promise<PickedFile | undefined> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  input.hidden = true;
  document.body.append(input);
  return new Promise((resolve) => {
    const done = () => {
      const file = input.files?.[0];
      input.remove();
      resolve(file === undefined ? undefined : { file });
    };
    input.addEventListener('change', done);
    input.addEventListener('cancel', done);
    input.click();
  });
}

/** Lets the person choose where a recipe is written, and writes it there; undefined when they choose no place. */
export async function saveNew(name: string, text: string): Promise<Place | undefined> {
  const { showSaveFilePicker } = pickers();
  if (showSaveFilePicker === undefined) {
    download(name, new Blob([text], { type: 'application/json' }));
    return { name };
  }
  const handle = await unlessAborted(showSaveFilePicker.call(globalThis, { suggestedName: name, types: GRAPHS, id: 'recipes' }));
  if (handle === undefined) return undefined;
  await writeTo(handle, text);
  return { name: handle.name, handle };
}

/** Writes to a place chosen before. The browser replaces the file only once the whole text is there. */
export async function writeTo(handle: FileSystemFileHandle, text: string): Promise<void> {
  const stream = await handle.createWritable();
  try {
    await stream.write(text);
  } catch (error) {
    await stream.abort().catch(() => undefined);
    throw error;
  }
  await stream.close();
}

/** Whether the page may use a file it was given earlier; asks the person where the browser wants them asked. */
export async function allowed(handle: FileSystemFileHandle, mode: 'read' | 'readwrite'): Promise<boolean> {
  const asked: AskedHandle = handle as unknown as AskedHandle;
  const state = (await asked.queryPermission?.({ mode })) ?? 'granted';
  return state === 'granted' || (state === 'prompt' && (await asked.requestPermission?.({ mode })) === 'granted');
}

/** How long the browser is given to begin a download before its source is let go, ms. */
const DOWNLOAD_TIME = 60_000;

export function download(name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => { URL.revokeObjectURL(link.href); }, DOWNLOAD_TIME);
}

/** A picker that is closed without a choice rejects; that is no fault. */
async function unlessAborted<T>(picking: Promise<T>): Promise<T | undefined> {
  try {
    return await picking;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return undefined;
    throw error;
  }
}
