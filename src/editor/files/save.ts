import { writeGraph } from '../../runtime/index.ts';
import { editor, notify, present } from '../state/editor.ts';
import { UNTITLED, fileNameOf } from './names.ts';
import { remember } from './recent.ts';
import { files } from './state.ts';
import { type Place, allowed, download, saveNew, writeTo } from './system.ts';
import { failed } from './told.ts';

const COULD_NOT = 'The recipe could not be saved. It is still open here: save it to another place.';

/** Writes the document where it was last written, or asks for a place. Tells whether it is saved. */
export async function save(): Promise<boolean> {
  const { handle } = editor.getState().file;
  if (handle === undefined) return saveAs();
  const document = present();
  const done = (async (): Promise<Place | undefined> => {
    if (!(await allowed(handle, 'readwrite'))) return saveNew(handle.name, writeGraph(document));
    await writeTo(handle, writeGraph(document));
    return { name: handle.name, handle };
  })();
  return settle(document, await done.catch(failed(COULD_NOT)));
}

/** Asks for a place and writes the document there. Tells whether it is saved. */
export async function saveAs(): Promise<boolean> {
  const document = present();
  const { name } = editor.getState().file;
  const suggested = name === UNTITLED ? fileNameOf(document.title) : name;
  return settle(document, await saveNew(suggested, writeGraph(document)).catch(failed(COULD_NOT)));
}

/** What was changed while the file was being written stays unsaved. */
function settle(document: ReturnType<typeof present>, place: Place | undefined): boolean {
  if (place === undefined) return false;
  editor.setState(({ file }) => ({ file: { saved: document, ...place, ...(file.damage !== undefined && { damage: file.damage }) } }));
  files.setState({ saved: { document, at: new Date() } });
  void remember(document, place);
  if (place.handle === undefined) notify({ kind: 'done', says: `${place.name} is in your downloads.` });
  return true;
}

/** Gives back the text of a damaged file as it was. */
export function saveOriginal(): void {
  const { damage, name } = editor.getState().file;
  if (damage !== undefined) download(name.replace(/-mended\.json$/, '-as-found.json'), new Blob([damage.text], { type: 'application/json' }));
}
