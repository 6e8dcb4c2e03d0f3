import { choose, edit, editor, present } from '../state/editor.ts';
import { renameGroup, setCollapsed } from '../model/groups.ts';
import { renameStep, setNote } from '../model/steps.ts';
import type { BenchCard } from './bench-graph.ts';
import type { Wire } from '../../runtime/index.ts';
import { type End, titleAt } from '../model/graph.ts';
import { connect, disconnect, rewire } from '../model/wiring.ts';
import { announce, bench } from './state.ts';

/** Opens a card in place, or folds it; a folded group is laid out again. */
export function toggleOpened(id: string): void {
  const group = present().groups.find((one) => one.id === id);
  if (group !== undefined) {
    edit('unfold a group', setCollapsed(id, false));
    chooseCards(group.nodes);
    return;
  }
  editor.setState(({ opened }) => ({ opened: opened.includes(id) ? opened.filter((other) => other !== id) : [...opened, id] }));
}

/** Chooses cards, and no wire. */
export function chooseCards(ids: readonly string[]): void {
  choose(ids);
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
export function rename(card: Pick<BenchCard, 'id' | 'kind' | 'title'>, title: string): void {
  if (title.trim() === card.title) return;
  edit('rename', card.kind === 'group' ? renameGroup(card.id, title) : renameStep(card.id, title));
}

/** Writes the note a teacher leaves on a step; what is typed in one go is one step to undo. */
export function writeNote(id: string, note: string, gesture: string): void {
  edit('write a note', setNote(id, note), gesture);
}

const portName = (end: End): string => `${titleAt(editor.getState().shapes, present(), end.node)}, ${end.port}`;

/** Lays a wire between two ends, whichever is named first. */
export function layWire(one: End, other: End): void {
  edit('lay a wire', connect(editor.getState().shapes, one, other));
  announce(`Wired ${portName(one)} to ${portName(other)}.`);
}

/** Takes the end of a wire to another port. */
export function moveWire(wire: Wire, end: End): void {
  edit('move a wire', rewire(editor.getState().shapes, wire, end));
  announce(`The wire now ends at ${portName(end)}.`);
}

export function removeWire(wire: Wire): void {
  edit('take a wire away', disconnect(wire));
  bench.setState({ chosenWire: undefined });
  announce('Wire taken away.');
}

/** Chooses new cards and puts the focus on the last once it stands. */
export function presentCards(ids: readonly string[]): void {
  chooseCards(ids);
  bench.setState({ focused: ids.at(-1), wantsFocus: ids.at(-1) });
}
