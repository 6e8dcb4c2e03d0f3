import type { EditorState } from '../state/editor.ts';

/** What the sheet shows: the step's name, and what came out of it in a line. */
export interface ShownWords {
  readonly title: string;
  readonly says: string | undefined;
}

/** Nobody chose a step: what is shown stands for all of them. */
const isWhole = ({ picture, shown }: Pick<EditorState, 'picture' | 'shown'>): boolean => shown === undefined && picture !== undefined;

export function shownTitle(state: EditorState): string | undefined {
  const { picture, shown, history, shapes } = state;
  if (isWhole(state)) return 'The whole sign';
  const id = picture?.node ?? shown;
  const node = history.document.nodes.find((each) => each.id === id);
  return node && (node.title ?? shapes.get(node.type)?.title ?? node.type);
}

export function shownWords(state: EditorState): ShownWords {
  const title = shownTitle(state) ?? 'The sheet';
  const report = state.reports.get(state.picture?.node ?? '');
  const says = isWhole(state) && report?.state === 'ready' ? undefined : report?.says;
  return { title, says };
}

/** Whether what is shown is about to be replaced by something newer. */
export const isStale = ({ running, picture, shown }: EditorState): boolean =>
  running.state === 'computing' || (picture !== undefined && shown !== undefined && picture.node !== shown);
