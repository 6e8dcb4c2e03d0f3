import { editor, type EditorState } from '../state/editor.ts';
import type { Subject } from './handles.ts';
import { aloneOf } from './set-ups.ts';
import { sheet } from './store.ts';

/** The node whose picture the sheet shows, where it is in the document and its type is known; `setUp`: the one chosen to be looked at alone. */
export function subjectOf({ history, shapes, picture }: Pick<EditorState, 'history' | 'shapes' | 'picture'>, setUp?: number): Subject | undefined {
  const node = history.document.nodes.find(({ id }) => id === picture?.node);
  const shape = node && shapes.get(node.type);
  return node && shape && picture ? { node, shape, picture, alone: aloneOf(picture, setUp) } : undefined;
}

export const subject = (): Subject | undefined => subjectOf(editor.getState(), sheet.getState().setUp);
