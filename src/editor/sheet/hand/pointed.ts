import type { EditorState } from '../../state/editor.ts';
import { subjectOf } from '../subject.ts';
import type { Point } from '../view.ts';
import { fromFraction } from './frame.ts';
import { editsOf, waysOf } from './ways.ts';

/** Places, in mm, of the edit that is pointed at in a list; none where another node is shown. */
export function pointedPlaces(state: Pick<EditorState, 'history' | 'shapes' | 'picture' | 'pointed'>): readonly Point[] {
  const { pointed } = state;
  const shown = pointed && subjectOf(state);
  if (!pointed || !shown || shown.node.id !== pointed.node) return [];
  const frame = waysOf(shown).find(({ param }) => param === pointed.param)?.map.frame;
  const edit = editsOf(shown, pointed.param)[pointed.index];
  return frame && edit ? edit.places.map((place) => fromFraction(frame, place)) : [];
}
