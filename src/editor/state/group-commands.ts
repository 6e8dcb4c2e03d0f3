import type { NodeGroup } from '../../runtime/index.ts';
import { pieceOfGroup } from '../model/clipboard.ts';
import { groupSteps, groupsOf, setCollapsed, ungroup } from '../model/groups.ts';
import type { Command } from './commands.ts';
import { choose, edit, editor, notify, present } from './editor.ts';
import { called, refusalOfFewer } from './step-words.ts';
import { surroundings } from './step-surroundings.ts';

const groups = (): readonly NodeGroup[] => groupsOf(present(), editor.getState().chosen);
const namesOf = (some: readonly NodeGroup[]): string => (some.length === 1 ? `the group “${some[0]!.title}”` : `${some.length} groups`);
const refusal = () => (groups().length > 0 ? undefined : 'No group is chosen. Choose a step of one first.');
/** A group is folded when any of the chosen ones lies open, so that doing it again undoes it. */
const folds = () => groups().some(({ collapsed }) => !collapsed);

function group(): void {
  const ids = editor.getState().chosen;
  const says = called(ids);
  const made = groupSteps(present(), ids, `Group ${present().groups.length + 1}`);
  edit(`group ${says}`, made.edit);
  choose(present().groups.find(({ id }) => id === made.id)?.nodes ?? []);
}

function dissolve(): void {
  const some = groups();
  edit(`dissolve ${namesOf(some)}`, ungroup(...some.map(({ id }) => id)));
  choose(some.flatMap(({ nodes }) => nodes));
}

function fold(): void {
  const some = groups();
  const collapsed = folds();
  edit(`${collapsed ? 'fold' : 'unfold'} ${namesOf(some)}`, (draft) => {
    for (const { id } of some) setCollapsed(id, collapsed)(draft);
  });
  choose(some.flatMap(({ id, nodes }) => (collapsed ? [id] : nodes)));
}

async function keep(): Promise<void> {
  for (const { id } of groups()) {
    const piece = pieceOfGroup(present(), id);
    if (piece !== undefined && await surroundings().pieces.keep(piece.title, piece.text) !== undefined)
      notify({ kind: 'done', says: `The group “${piece.title}” is kept. Find it where steps are added, in any graph.` });
  }
}

/** What is done to groups of steps. */
export const groupCommands: readonly Command[] = [
  { id: 'group', label: 'Group', group: 'Steps', keys: ['Mod+G'], labelNow: () => (editor.getState().chosen.length > 0 ? `Group ${called(editor.getState().chosen)}` : 'Group'), refusal: () => refusalOfFewer(1), run: group },
  { id: 'ungroup', label: 'Dissolve the group', group: 'Steps', keys: ['Mod+Shift+G'], refusal, run: dissolve },
  {
    id: 'fold-group', label: 'Fold or unfold the group', group: 'Steps', keys: ['Mod+Alt+G'], refusal, run: fold,
    labelNow: () => (groups().length === 0 ? 'Fold or unfold the group' : `${folds() ? 'Fold' : 'Unfold'} ${namesOf(groups())}`),
  },
  { id: 'keep-group', label: 'Keep the group for other graphs', group: 'Steps', refusal, run: keep },
];
