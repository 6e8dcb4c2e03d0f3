import { choose, edit, editor } from '../state/editor.ts';
import { bench } from './state.ts';

/** Opens a card in place, or folds it. */
export function toggleOpened(id: string): void {
  editor.setState(({ opened }) => ({ opened: opened.includes(id) ? opened.filter((other) => other !== id) : [...opened, id] }));
}

/** Chooses cards, the last of which is what the sheet shows; with none chosen the page chooses what it shows. */
export function chooseCards(ids: readonly string[]): void {
  const { nodes } = editor.getState().history.document;
  const last = ids.at(-1);
  choose(ids);
  editor.setState({ shown: nodes.some(({ id }) => id === last) ? last : undefined });
  bench.setState({ chosenWire: undefined });
}

/** Adds a card to what is chosen, or takes it away. */
export function toggleChosen(id: string): void {
  const { chosen } = editor.getState();
  chooseCards(chosen.includes(id) ? chosen.filter((other) => other !== id) : [...chosen, id]);
}

export function chooseWire(key: string): void {
  chooseCards([]);
  bench.setState({ chosenWire: key });
}

/** Gives a step or a group another title; an empty one gives a step its type's title back. */
export function rename(id: string, title: string): void {
  const words = title.trim();
  edit('rename', (draft) => {
    const group = draft.groups.find((one) => one.id === id);
    const node = draft.nodes.find((one) => one.id === id);
    if (group !== undefined && words !== '') group.title = words;
    if (node === undefined) return;
    if (words === '') delete node.title;
    else if (node.title !== words) node.title = words;
  });
}

/** Writes the note a teacher leaves on a step. */
export function writeNote(id: string, note: string, gesture: string): void {
  edit('write a note', (draft) => {
    const node = draft.nodes.find((one) => one.id === id);
    if (node === undefined) return;
    if (note.trim() === '') delete node.note;
    else node.note = note;
  }, gesture);
}
