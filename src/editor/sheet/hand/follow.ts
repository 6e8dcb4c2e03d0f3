import { type EditorState, editor } from '../../state/editor.ts';
import type { JunctionMap } from '../../../values/picture.ts';
import { flyToBox } from '../camera.ts';
import { EMPTY_HANDED, sheet } from '../store.ts';
import { subjectOf } from '../subject.ts';
import { unite } from '../view.ts';
import { dropHand } from './hand-keys.ts';
import { pointedPlaces } from './pointed.ts';
import { waysOf } from './ways.ts';

/** Gives up what was begun once the picture it was begun on is another one; goes to the places of an edit that is pointed at. Returns how to stop. */
export function followHand(): () => void {
  return editor.subscribe((state, before) => {
    if (state.picture !== before.picture) arrived(state, before);
    if (state.pointed !== before.pointed || state.picture !== before.picture) goTo(state);
  });
}

function arrived(state: EditorState, before: EditorState): void {
  if (state.picture?.node !== before.picture?.node) {
    dropHand();
    sheet.setState({ way: undefined, ...EMPTY_HANDED });
    return;
  }
  const [now, last] = [mapsOf(state), mapsOf(before)];
  if (JSON.stringify(now) === JSON.stringify(last)) return;
  const { picked, target } = sheet.getState();
  // Numbers of strokes and junctions mean others now; bare places mean the same while the frame is the same.
  const same = JSON.stringify(now.map(({ frame }) => frame)) === JSON.stringify(last.map(({ frame }) => frame));
  const kept = same && picked.every(({ kind }) => kind === 'anywhere') ? picked : [];
  sheet.setState({ picked: kept, aimed: undefined, target: same && target?.kind === 'anywhere' && kept === picked ? target : undefined });
}

/** Every map that is worked on, once. */
function mapsOf(state: EditorState): readonly JunctionMap[] {
  const shown = subjectOf(state);
  return shown ? [...new Set(waysOf(shown).map(({ map }) => map))] : [];
}

let gone: EditorState['pointed'];

/** Once for each time it is asked for, as soon as the picture of its node is there. */
function goTo(state: EditorState): void {
  const { pointed } = state;
  if (!pointed?.goes || pointed === gone) return;
  const box = unite(pointedPlaces(state).map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
  if (!box) return;
  gone = pointed;
  flyToBox(box);
}
