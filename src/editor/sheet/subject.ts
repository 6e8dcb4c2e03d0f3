import { type GraphDocument, type GraphNode, type Handle, type NodeShape, paramsOfHandle } from '../../runtime/index.ts';
import { layout } from '../app/layout.ts';
import { editor, type EditorState } from '../state/editor.ts';
import type { Subject } from './handles.ts';
import { aloneOf } from './set-ups.ts';
import { sheet } from './store.ts';

/** The node whose picture the sheet shows, where it is in the document and its type is known; `setUp`: the one chosen to be looked at alone. */
export function subjectOf({ history, shapes, picture }: Pick<EditorState, 'history' | 'shapes' | 'picture'>, setUp?: number): Subject | undefined {
  const node = history.document.nodes.find(({ id }) => id === picture?.node);
  const shape = node && shapes.get(node.type);
  return node && shape && picture ? { node, shape: withAskedHandles(node, shape, history.document), picture, alone: aloneOf(picture, setUp) } : undefined;
}

/** While the recipe is a form only, nothing can be taken hold of but what the form asks for. */
function withAskedHandles({ id }: GraphNode, shape: NodeShape, { inputs }: GraphDocument): NodeShape {
  if (layout.getState().rooms !== 'form' || shape.handles === undefined) return shape;
  const asked = (handle: Handle) => paramsOfHandle(handle).every((name) => inputs.some(({ sets }) => sets === `${id}.${name}`));
  return { ...shape, handles: shape.handles.filter(asked) };
}

export const subject = (): Subject | undefined => subjectOf(editor.getState(), sheet.getState().setUp);
