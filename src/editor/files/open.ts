import type { GraphDocument, GraphProblem } from '../../runtime/index.ts';
import { editor, hasUnsaved, initialState, notify, openDocument, present } from '../state/editor.ts';
import { UNTITLED, mendedName } from './names.ts';
import { type FileText, isWhole, readFile, textOf } from './read-text.ts';
import { remember } from './recent.ts';
import { readRecipe } from './recipes.ts';
import { ask } from './state.ts';
import { allowed, pickGraph } from './system.ts';
import { failed } from './told.ts';
import { counted } from './words.ts';

/** A recipe's file as it comes from wherever it was kept. */
export interface Source extends FileText {
  readonly name: string;
  readonly handle?: FileSystemFileHandle;
}

/** Does it at once, or after asking what is to become of unsaved work. */
export function unlessUnsaved(next: () => void | Promise<void>): void | Promise<void> {
  if (!hasUnsaved(editor.getState())) return next();
  return ask({ kind: 'unsaved', next });
}

export function openNew(): void {
  openDocument(initialState.history.document, { name: UNTITLED, saved: initialState.history.document });
}

/** Opens a recipe that came with the page, as it came. */
export async function openRecipe(id: string): Promise<void> {
  const text = await readRecipe(id).catch(failed(`The recipe ${id} could not be loaded. Load the page anew and try again.`));
  if (text !== undefined) openSource({ name: `${id}.json`, text, problems: [] });
}

export async function openPicked(): Promise<void> {
  const picked = await pickGraph().catch(failed('The browser could not open the file. Try again, or drag the file onto the page.'));
  if (picked !== undefined) await openFile(picked.file, picked.handle);
}

/** Opens a file after the question about unsaved work; one that is no recipe is refused before that question. */
export async function openFile(file: File, handle?: FileSystemFileHandle): Promise<void> {
  const bytes = await file.arrayBuffer().catch(failed(`${file.name} could not be read. See whether it is still there and may be read.`));
  if (bytes === undefined) return;
  const source: Source = { ...textOf(bytes), name: file.name, ...(handle !== undefined && { handle }) };
  const found = readFile(source, editor.getState().shapes);
  if (!isWhole(found)) return refuse(source, found.problems, found.document);
  await unlessUnsaved(() => {
    openSource(source);
    void remember(present(), editor.getState().file);
  });
}

/** Opens a file kept from an earlier visit: from its place where the browser still lets us read there, else from the text kept. */
export async function openKept({ name, text, handle }: { readonly name: string; readonly text: string; readonly handle?: FileSystemFileHandle }): Promise<void> {
  const file = handle !== undefined && (await allowed(handle, 'read').catch(() => false)) ? await handle.getFile().catch(() => undefined) : undefined;
  if (file !== undefined) return openFile(file, handle);
  if (handle !== undefined) notify({ kind: 'caution', says: `${name} is not where it was, or may not be read: this is the copy the browser kept. Save it to keep it.` });
  openSource({ name, text, problems: [] });
  void remember(present(), editor.getState().file);
}

/** Puts a recipe in the place of the present one. What is wrong with it is told and stays listed. */
function openSource(source: Source): void {
  const found = readFile(source, editor.getState().shapes);
  if (found.document === undefined) return refuse(source, found.problems, undefined);
  const [first, ...rest] = found.problems;
  if (first === undefined) openDocument(found.document, { name: source.name, saved: found.document, ...(source.handle !== undefined && { handle: source.handle }) });
  else openDamaged(source, found.document, [first, ...rest]);
}

function openDamaged({ name, text }: Source, document: GraphDocument, problems: readonly GraphProblem[]): void {
  openDocument(document, { name: mendedName(name), saved: document, damage: { text, problems } });
  notify({
    kind: 'caution',
    says: `${name} has ${counted(problems.length, 'problem')}. What can be read is open; the file stays as it is, and saving writes ${mendedName(name)}.`,
    action: { label: 'List the problems', run: () => { ask({ kind: 'damage' }); } },
  });
}

function refuse(source: Source, problems: readonly GraphProblem[], document: GraphDocument | undefined): void {
  const steps = document?.nodes.length ?? 0;
  const open = () => unlessUnsaved(() => { openSource(source); });
  ask({ kind: 'refused', name: source.name, problems, ...(steps > 0 && { salvage: { steps, open: () => void open() } }) });
}
