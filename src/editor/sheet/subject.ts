import { editor, type EditorState } from '../state/editor.ts';
import type { Subject } from './handles.ts';

/** The node whose picture the sheet shows, where it is in the document and its type is known. */
export function subjectOf({ history, shapes, picture }: Pick<EditorState, 'history' | 'shapes' | 'picture'>): Subject | undefined {
  const node = history.document.nodes.find(({ id }) => id === picture?.node);
  const shape = node && shapes.get(node.type);
  return node && shape && picture ? { node, shape, picture } : undefined;
}

export const subject = (): Subject | undefined => subjectOf(editor.getState());
