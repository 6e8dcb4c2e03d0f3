import type { EditorState, Spot } from '../state/editor.ts';
import { type Alone, inBox } from './set-ups.ts';
import { nodesOnSheet } from './space.ts';
import { type Frame, type Point, toScreen } from './view.ts';

/** Half the width of a sign on the screen, CSS pixels. */
export const SIGN = 8;

/** Places of the checks that did not pass and belong to the coordinates of what is shown; of a set-up looked at alone those it cuts. */
export function signsOf({ outcome, picture, history, shapes }: Pick<EditorState, 'outcome' | 'picture' | 'history' | 'shapes'>, alone?: Alone): readonly Spot[] {
  if (!outcome || !picture) return [];
  const onSheet = nodesOnSheet(history.document, shapes);
  const space = onSheet.has(picture.node);
  return outcome.checks.flatMap(({ at, status, says, node }): Spot[] =>
    (at && status !== 'pass' && onSheet.has(node) === space && (!alone || inBox(alone.setUp.window, { x: at[0], y: at[1] })) ? [{ at, says, status, node }] : []));
}

/** The place one was sent to, where it belongs to the coordinates of what is shown. */
export function spotHere({ spot, picture, history, shapes }: Pick<EditorState, 'spot' | 'picture' | 'history' | 'shapes'>): Spot | undefined {
  if (!spot || !picture) return undefined;
  const onSheet = nodesOnSheet(history.document, shapes);
  return onSheet.has(spot.node) === onSheet.has(picture.node) ? spot : undefined;
}

/** The sign under a screen place, the last drawn first. */
export function signAt(signs: readonly Spot[], frame: Frame, { x, y }: Point): Spot | undefined {
  return signs.findLast(({ at }) => {
    const place = toScreen(frame, { x: at[0], y: at[1] });
    return Math.abs(place.x - x) <= SIGN + 4 && Math.abs(place.y - y) <= SIGN + 4;
  });
}
