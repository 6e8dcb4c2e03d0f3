import { GRAPH_FORMAT, LIMITS } from '../../runtime/index.ts';
import { editor, notify } from '../state/editor.ts';
import { endings, fileValue, isArtwork, putArtwork } from './artwork.ts';
import { openFile } from './open.ts';
import { files } from './state.ts';
import { failed } from './told.ts';
import { sized } from './words.ts';

/** A larger file could not be saved with the recipe. */
const LARGEST = LIMITS.characters / 2;

/** Lets files be dropped and pasted anywhere on the page. Gives a function that ends this. */
export function takeDrops(): () => void {
  const listeners = { dragover, dragleave, drop, paste, dragend: endDrag };
  for (const [name, listener] of Object.entries(listeners)) addEventListener(name, listener as EventListener);
  return () => { for (const [name, listener] of Object.entries(listeners)) removeEventListener(name, listener as EventListener); };
}

/** Only files from outside: what is dragged within the page is none of our business. */
const carriesFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') === true;

function dragover(event: DragEvent): void {
  if (!carriesFiles(event)) return;
  event.preventDefault();
  event.dataTransfer!.dropEffect = 'copy';
  const over = cardAt(event);
  if (files.getState().dragged?.over !== over || files.getState().dragged === undefined) files.setState({ dragged: { over } });
}

/** Leaving the window enters no other element. */
function dragleave(event: DragEvent): void {
  if (event.relatedTarget === null) endDrag();
}

function endDrag(): void {
  if (files.getState().dragged !== undefined) files.setState({ dragged: undefined });
}

function drop(event: DragEvent): void {
  endDrag();
  if (!carriesFiles(event)) return;
  event.preventDefault();
  const { items, files: dropped } = event.dataTransfer!;
  // The handle must be asked for while the drop is being told; later the browser gives none.
  const handle = (items[0] as { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> } | undefined)?.getAsFileSystemHandle?.();
  void takeFiles([...dropped], { on: cardAt(event), handle: handle?.then(fileHandle, () => undefined) });
}

const fileHandle = (handle: FileSystemHandle | null) => (handle?.kind === 'file' ? handle as FileSystemFileHandle : undefined);

function cardAt({ target }: Event): string | undefined {
  return target instanceof Element ? target.closest('[data-node]')?.getAttribute('data-node') ?? undefined : undefined;
}

/** Files, a recipe's text or a drawing's text; anything else is for whoever else listens. Fields keep what is pasted into them. */
function paste(event: ClipboardEvent): void {
  const typing = event.target instanceof Element && event.target.closest('input, textarea, [contenteditable]') !== null;
  if (event.defaultPrevented || event.clipboardData === null || typing) return;
  const found = pasted(event.clipboardData);
  if (found.length === 0) return;
  event.preventDefault();
  void takeFiles(found, {});
}

function pasted(data: DataTransfer): readonly File[] {
  if (data.files.length > 0) return [...data.files];
  const text = data.getData('text/plain').trimStart();
  if (/^(<\?xml|<!--|<svg)/.test(text) && text.includes('<svg')) return [new File([text], 'pasted.svg')];
  const isGraph = text.startsWith('{') && new RegExp(`"format"\\s*:\\s*"${GRAPH_FORMAT}"`).test(text.slice(0, 1000));
  return isGraph ? [new File([text], 'pasted.json')] : [];
}

interface Dropped {
  /** The card it was dropped on. */
  readonly on?: string | undefined;
  readonly handle?: Promise<FileSystemFileHandle | undefined> | undefined;
}

/** Opens a recipe, or puts a drawing into a step. One file at a time, since several would have to be told apart by guessing. */
export async function takeFiles(dropped: readonly File[], { on, handle }: Dropped): Promise<void> {
  const [file, ...others] = dropped;
  if (file === undefined) return;
  const { shapes } = editor.getState();
  if (others.length > 0) return notify({ kind: 'failed', says: `${String(dropped.length)} files came at once. Drop them one by one: a recipe (.json) is opened, a drawing goes into a step.` });
  if (file.size > LARGEST) return notify({ kind: 'failed', says: `${file.name} has ${sized(file.size)}; at most ${sized(LARGEST)} can be taken. Simplify the drawing, or scan a picture at a lower resolution.` });
  if (isArtwork(file.name, shapes)) return putFile(file, on);
  if (file.name.toLowerCase().endsWith('.json')) return openFile(file, await handle);
  notify({ kind: 'failed', says: `No step takes ${file.name}. Drop a recipe (.json) or a file ending in ${endings(shapes).join(', ')}.` });
}

async function putFile(file: File, on: string | undefined): Promise<void> {
  const bytes = await file.arrayBuffer().catch(failed(`${file.name} could not be read. See whether it is still there and may be read.`));
  if (bytes !== undefined) putArtwork(fileValue(file.name, bytes), on);
}
