import { programsToPlay } from '../state/shown.ts';
import { type EditorState, useEditor } from '../state/editor.ts';

/** The step whose programs are played: the one on the sheet if it has any, else the one that knows most of them, once computed. */
export function playedNode({ picture, history, shapes, reports }: Pick<EditorState, 'picture' | 'history' | 'shapes' | 'reports'>): string | undefined {
  if (picture?.playable === true) return picture.node;
  const node = programsToPlay(history.document, shapes);
  return node !== undefined && reports.get(node)?.state === 'ready' ? node : undefined;
}

export const usePlayed = (): string | undefined => useEditor(playedNode);
