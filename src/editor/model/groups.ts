import type { GraphDocument, NodeGroup } from '../../runtime/index.ts';
import { keepOnly, membersOf } from './graph.ts';
import type { Edit } from './history.ts';
import { freshId, idsOf } from './ids.ts';
import { type Made, leaveGroups } from './steps.ts';

/** Puts steps into a group of their own, taking them out of the groups they are in. Groups named among them are dissolved into it. */
export function groupSteps(document: GraphDocument, ids: readonly string[], title: string): Made {
  const id = freshId(idsOf(document), 'group');
  return {
    id,
    edit: (draft) => {
      const members = membersOf(draft, ids);
      if (members.length === 0) return;
      leaveGroups(draft, new Set(members), new Set(ids));
      draft.groups.push({ id, title: title.trim() === '' ? 'Group' : title.trim(), nodes: [...members], collapsed: false });
    },
  };
}

/** Dissolves groups; their steps stay where they are. */
export function ungroup(...ids: readonly string[]): Edit {
  return (draft) => keepOnly(draft.groups, ({ id }) => !ids.includes(id));
}

/** Folds a group into one card, or unfolds it. */
export function setCollapsed(id: string, collapsed: boolean): Edit {
  return (draft) => {
    const group = draft.groups.find((one) => one.id === id);
    if (group !== undefined) group.collapsed = collapsed;
  };
}

export function renameGroup(id: string, title: string): Edit {
  return (draft) => {
    const group = draft.groups.find((one) => one.id === id);
    if (group !== undefined && title.trim() !== '') group.title = title.trim();
  };
}

/** The groups that ids of cards mean: those named, and those that all or some named steps are in. */
export function groupsOf({ groups }: GraphDocument, ids: readonly string[]): readonly NodeGroup[] {
  return groups.filter(({ id, nodes }) => ids.includes(id) || nodes.some((node) => ids.includes(node)));
}
