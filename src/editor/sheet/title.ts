import type { EditorState } from '../state/editor.ts';

/** What the sheet shows: the step's name, and what came out of it in a line. */
export interface ShownWords {
  readonly title: string;
  readonly says: string | undefined;
}

export function shownTitle({ picture, shown, history, shapes }: EditorState): string | undefined {
  const id = picture?.node ?? shown;
  const node = history.document.nodes.find((each) => each.id === id);
  return node && (node.title ?? shapes.get(node.type)?.title ?? node.type);
}

export function shownWords(state: EditorState): ShownWords {
  const title = shownTitle(state) ?? 'The sheet';
  const says = state.picture && state.reports.get(state.picture.node)?.says;
  return { title, says };
}

/** Whether what is shown is about to be replaced by something newer. */
export const isStale = ({ running, picture, shown }: EditorState): boolean =>
  running.state === 'computing' || (picture !== undefined && shown !== undefined && picture.node !== shown);
