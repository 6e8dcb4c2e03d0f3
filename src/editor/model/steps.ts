import { type Draft, current, isDraft } from 'immer';
import { type GraphDocument, type NodeGroup, type ParamValue, type Shapes, deepEqual } from '../../runtime/index.ts';
import { splitReference } from '../../runtime/names.ts';
import { type End, keepOnly, membersOf, nodeOf, sourceOf, targetOf } from './graph.ts';
import type { Edit } from './history.ts';
import { freshId, idsOf } from './ids.ts';
import { connect } from './wiring.ts';

/** An edit that makes something new, and the id it gets. */
export interface Made {
  readonly edit: Edit;
  readonly id: string;
}

/** Adds a step of a type with all parameters at their defaults. Its id is the type's name, numbered when it is not the first. */
export function addStep(document: GraphDocument, type: string, position: readonly [number, number]): Made {
  const id = freshId(idsOf(document), type);
  return { id, edit: (draft) => void draft.nodes.push({ id, type, position: [...position], params: {} }) };
}

/** Adds a step and wires its port to an end, where a wire was let go. */
export function addStepAt(shapes: Shapes, document: GraphDocument, type: string, position: readonly [number, number], ends: { readonly port: string; readonly to: End }): Made {
  const { id, edit } = addStep(document, type, position);
  const own: End = { side: ends.to.side === 'output' ? 'input' : 'output', node: id, port: ends.port };
  return {
    id,
    edit: (draft) => {
      edit(draft);
      connect(shapes, ends.to, own)(draft);
    },
  };
}

/** Takes steps away, those in the groups named among them, with their wires, the inputs that set their parameters, and groups left empty. */
export function removeSteps(ids: readonly string[]): Edit {
  return (draft) => {
    const gone = new Set(membersOf(draft, ids));
    keepOnly(draft.nodes, ({ id }) => !gone.has(id));
    keepOnly(draft.wires, (wire) => !gone.has(sourceOf(wire)) && !gone.has(targetOf(wire)));
    keepOnly(draft.inputs, ({ sets }) => !gone.has(splitReference(sets)?.node ?? ''));
    leaveGroups(draft, gone, new Set(ids));
  };
}

/** Takes nodes out of their groups; groups that this leaves empty go, and those `named` if they were empty before. */
export function leaveGroups(draft: Draft<GraphDocument>, leaving: ReadonlySet<string>, named: ReadonlySet<string> = new Set()): void {
  const isLeft = ({ id, nodes }: NodeGroup) => named.has(id) || nodes.some((node) => leaving.has(node));
  const left = new Set(draft.groups.filter(isLeft).map(({ id }) => id));
  for (const group of draft.groups) keepOnly(group.nodes, (node) => !leaving.has(node));
  keepOnly(draft.groups, ({ id, nodes }) => nodes.length > 0 || !left.has(id));
}

/** Moves cards; a folded group moves with all it holds. */
export function moveSteps(ids: readonly string[], dx: number, dy: number): Edit {
  return (draft) => {
    const moved = new Set(membersOf(draft, ids));
    if (dx === 0 && dy === 0) return;
    for (const node of draft.nodes) if (moved.has(node.id)) node.position = [node.position[0] + dx, node.position[1] + dy];
  };
}

/** Sets a parameter of a node; a value equal to the one it has is no change. */
export function setParam(node: string, name: string, value: ParamValue): Edit {
  return changeNode(node, ({ params }) => {
    if (!Object.hasOwn(params, name) || !deepEqual(plain(params[name]!), value)) params[name] = value as Draft<ParamValue>;
  });
}

/** Lets a parameter have its declaration's default again. */
export function resetParam(node: string, name: string): Edit {
  return changeNode(node, ({ params }) => {
    if (Object.hasOwn(params, name)) Reflect.deleteProperty(params, name);
  });
}

/** Gives a step a title of its own; with blank text it is called after its type again. */
export function renameStep(node: string, title: string): Edit {
  return changeNode(node, (draft) => setText(draft, 'title', title.trim()));
}

/** Sets the note of a step; blank text takes it away. */
export function setNote(node: string, note: string): Edit {
  return changeNode(node, (draft) => setText(draft, 'note', note.trim() === '' ? '' : note));
}

/** Sets the title of the graph; blank text is none, since a graph must have one. */
export function setTitle(title: string): Edit {
  return (draft) => {
    if (title.trim() !== '') draft.title = title.trim();
  };
}

/** Sets the notes of the graph. */
export function setNotes(notes: string): Edit {
  return (draft) => {
    draft.notes = notes;
  };
}

type NodeDraft = Draft<GraphDocument>['nodes'][number];

function changeNode(id: string, change: (node: NodeDraft) => void): Edit {
  return (draft) => {
    const node = nodeOf(draft, id) as NodeDraft | undefined;
    if (node !== undefined) change(node);
  };
}

function setText(node: NodeDraft, key: 'title' | 'note', text: string): void {
  if (text === '') Reflect.deleteProperty(node, key);
  else node[key] = text;
}

/** A value of a draft without the draft's wrapping, which would be slow to go through. */
const plain = (value: unknown): unknown => (isDraft(value) ? current<unknown>(value) : value);
