import type { Draft } from 'immer';
import { type GraphDocument, type GraphNode, LIMITS, type NodeGroup, type Wire } from '../../runtime/index.ts';
import { splitReference } from '../../runtime/names.ts';
import { CARD, GAP, around, boxAt } from './boxes.ts';
import { membersOf, sourceOf, targetOf } from './graph.ts';
import type { Edit } from './history.ts';
import { freshId, idsOf } from './ids.ts';
import { type Piece, writePiece } from './pieces.ts';

/** What a paste makes: the edit, and the ids of the new cards, which are to be chosen after it. */
export interface Pasted {
  readonly edit: Edit;
  readonly ids: readonly string[];
}

/** The named steps as text, with the wires among them and the groups that are copied whole. What sets their parameters from outside stays behind. */
export const pieceOf = (document: GraphDocument, ids: readonly string[], title = document.title): string => writePiece(cutOut(document, ids, title));

/** A group as a piece that can be kept and put in again; undefined when there is no such group. */
export function pieceOfGroup(document: GraphDocument, id: string): { readonly title: string; readonly text: string } | undefined {
  const group = document.groups.find((one) => one.id === id);
  return group && { title: group.title, text: pieceOf(document, [id], group.title) };
}

/** As `pieceOf`, not yet as text. */
export function cutOut(document: GraphDocument, ids: readonly string[], title = document.title): Piece {
  const inside = new Set(membersOf(document, ids));
  return {
    title,
    nodes: document.nodes.filter(({ id }) => inside.has(id)),
    wires: document.wires.filter((wire) => inside.has(sourceOf(wire)) && inside.has(targetOf(wire))),
    groups: document.groups.filter(({ nodes }) => nodes.length > 0 && nodes.every((node) => inside.has(node))),
  };
}

/** Why a piece cannot be put in as well. */
export function refusalOfPaste(document: GraphDocument, piece: Piece): string | undefined {
  const over = (['nodes', 'wires', 'groups'] as const).find((key) => document[key].length + piece[key].length > LIMITS[key]);
  const name = over === 'nodes' ? 'steps' : over;
  return over && `A graph holds at most ${LIMITS[over]} ${name}; this one has ${document[over].length}, and ${piece[over].length} would be added. Take some away, or divide the graph.`;
}

/** Puts a piece in with its upper left corner at `at`, under ids that nothing has yet. */
export function pastePiece(document: GraphDocument, piece: Piece, at: readonly [number, number]): Pasted {
  const corner = around(piece.nodes.map(({ position }) => boxAt(position, CARD))) ?? { x: 0, y: 0 };
  return placed(renamed(document, piece), [at[0] - corner.x, at[1] - corner.y]);
}

/** Copies steps, moved by `by`. Wires that come in from outside lead to the copies too; those that go out do not. */
export function duplicate(document: GraphDocument, ids: readonly string[], by: readonly [number, number] = [GAP.y, GAP.y]): Pasted {
  const piece = cutOut(document, ids);
  const inside = new Set(piece.nodes.map(({ id }) => id));
  const outside = new Set(document.nodes.flatMap(({ id }) => (inside.has(id) ? [] : [id])));
  const entering = document.wires.filter((wire) => inside.has(targetOf(wire)) && outside.has(sourceOf(wire)));
  return placed(renamed(document, { ...piece, wires: [...piece.wires, ...entering] }), by);
}

/** The piece with ids that are free in the document. Ends of wires outside the piece keep theirs. */
function renamed(document: GraphDocument, { title, nodes, wires, groups }: Piece): Piece {
  const taken = idsOf(document);
  const claim = (id: string) => {
    const fresh = freshId(taken, id);
    taken.add(fresh);
    return fresh;
  };
  const names = new Map(nodes.map(({ id }) => [id, claim(id)]));
  const end = (text: string) => {
    const { node, name } = splitReference(text) ?? { node: '', name: '' };
    return names.has(node) ? `${names.get(node)}.${name}` : text;
  };
  return {
    title,
    nodes: nodes.map((node): GraphNode => ({ ...node, id: names.get(node.id)! })),
    wires: wires.map(({ from, to }): Wire => ({ from: end(from), to: end(to) })),
    groups: groups.map((group): NodeGroup => ({ ...group, id: claim(group.id), nodes: group.nodes.map((node) => names.get(node) ?? node) })),
  };
}

function placed({ nodes, wires, groups }: Piece, [dx, dy]: readonly [number, number]): Pasted {
  const folded = groups.filter(({ collapsed }) => collapsed);
  const hidden = new Set(folded.flatMap((group) => group.nodes));
  return {
    ids: [...nodes.map(({ id }) => id).filter((id) => !hidden.has(id)), ...folded.map(({ id }) => id)],
    edit: (draft) => {
      const moved = nodes.map((node) => ({ ...node, position: [node.position[0] + dx, node.position[1] + dy] }));
      draft.nodes.push(...(moved as Draft<GraphNode>[]));
      draft.wires.push(...(wires as Draft<Wire>[]));
      draft.groups.push(...(groups as Draft<NodeGroup>[]));
    },
  };
}
