import { membersOf, nodeOf, titleOf } from '../model/graph.ts';
import { editor, present } from './editor.ts';

export const counted = (steps: number): string => `${steps} ${steps === 1 ? 'step' : 'steps'}`;

/** What cards are called in a sentence: one by its title, several by their number. */
export function called(ids: readonly string[]): string {
  const { shapes, history: { document } } = editor.getState();
  const group = ids.length === 1 ? document.groups.find(({ id }) => id === ids[0]) : undefined;
  if (group !== undefined) return `the group “${group.title}”`;
  const members = membersOf(document, ids);
  const only = members.length === 1 ? nodeOf(document, members[0]!) : undefined;
  return only === undefined ? counted(members.length) : `“${titleOf(shapes, only)}”`;
}

/** Why nothing can be done to what is chosen: too little is. */
export function refusalOfFewer(least: number): string | undefined {
  if (editor.getState().chosen.length >= least) return undefined;
  return least === 1 ? 'No step is chosen. Choose one on the bench first.' : `Choose ${least} or more steps on the bench first.`;
}

export const refusalOfEmpty = (): string | undefined => (present().nodes.length > 0 ? undefined : 'There are no steps yet. Add one first.');
