import { editor, hasUnsaved, notify, openDocument, present } from '../state/editor.ts';
import { readDamaged } from '../../runtime/index.ts';
import { keepOffline } from '../offline/register.ts';
import { openRecipe, unlessUnsaved } from './open.ts';
import { FIRST_RECIPE } from './recipes.ts';
import { type Work, keepWork, takeWork } from './work.ts';
import { clock } from './words.ts';

/** Opens what the person left when the page was closed, or a shipped recipe. Call it once the node types are known. */
export async function openFirst(): Promise<void> {
  const work = await takeWork();
  if (work === undefined || !restore(work)) await openRecipe(FIRST_RECIPE);
  keepWork();
  addEventListener('beforeunload', warn);
  keepOffline();
}

function restore({ name, text, handle, damage, unsaved, when }: Work): boolean {
  const { document } = readDamaged(text, editor.getState().shapes);
  if (document === undefined) return false;
  openDocument(document, { name, saved: unsaved ? undefined : document, ...(handle !== undefined && { handle }), ...(damage !== undefined && { damage }) });
  if (unsaved) notify({
    kind: 'caution',
    says: `Your unsaved work of ${clock(new Date(when))} on “${present().title}” is open again. Save it to keep it.`,
    action: { label: 'Open the recipe as shipped instead', run: () => void unlessUnsaved(() => openRecipe(FIRST_RECIPE)) },
  });
  return true;
}

/** The browser asks whether to leave; its words are its own. */
function warn(event: BeforeUnloadEvent): void {
  if (hasUnsaved(editor.getState())) event.preventDefault();
}
