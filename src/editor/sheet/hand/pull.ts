import { notify, editor, setGesturing, undoStep } from '../../state/editor.ts';
import { LIMITS } from '../../../runtime/index.ts';
import { type Hold, apply, newHold } from '../gestures.ts';
import type { Subject } from '../handles.ts';
import { EMPTY_HANDED, frameOf, sheet } from '../store.ts';
import type { Point } from '../view.ts';
import { editOf, isFull, withTarget } from './picking.ts';
import { type Target, aimedAt } from './targets.ts';
import { type Way, drags, editsOf } from './ways.ts';

/** What is being pulled on the sheet: from where, to where the pointer or the keys are, mm, and what it would be let go on. */
export interface Pull {
  readonly from: Point;
  readonly to: Point;
  readonly onto: Target | undefined;
}

/** A hold that can also rest where it is while everything is computed, and be given up as if nothing had happened. */
export interface HandHold extends Hold {
  readonly rest: () => void;
  readonly undo: () => void;
}

/** Adds the edit that the places taken make: one step to undo, or part of the gesture's step. */
export function addEdit(subject: Subject, way: Way, picked: readonly Target[], gesture?: { readonly name: string; readonly before: ReturnType<typeof editsOf> }): boolean {
  const before = gesture?.before ?? editsOf(subject, way.param);
  if (before.length >= LIMITS.edits) {
    notify({ kind: 'caution', says: `There are ${before.length} edits already, which is the most a list holds. Take some back first.` });
    return false;
  }
  apply(subject, { says: way.label, params: { [way.param]: [...before, editOf(way, picked)] } }, gesture?.name);
  return true;
}

/** Adds the whole edit and begins anew. */
export function finish(subject: Subject, way: Way, picked: readonly Target[]): void {
  const count = editsOf(subject, way.param).length;
  if (addEdit(subject, way, picked)) sheet.setState({ ...EMPTY_HANDED, told: doneWords(way, count + 1) });
}

const doneWords = ({ label }: Way, count: number): string => `${label}: done, as edit ${count}. Undo takes it back.`;

/** Takes hold of a target by the pointer, pressed at `start`, mm; undefined where the way is not to pull anything from it. */
export function holdTarget(subject: Subject, way: Way, target: Target, start: Point): HandHold | undefined {
  if (target.kind === 'anywhere') return undefined;
  if (drags(way)) return dragHold(subject, way, target);
  const picked = withTarget(way, sheet.getState().picked, target);
  return isFull(way, picked) || target.kind === 'stroke' ? undefined : pullHold(subject, way, picked, start);
}

/** Drags a place to anywhere: the edit is made while it moves. */
export function dragHold(subject: Subject, way: Way, target: Target): HandHold {
  const gesture = { name: newHold(subject), before: editsOf(subject, way.param) };
  let made = false;
  const rest = () => {
    if (editor.getState().gesturing) setGesturing(false);
  };
  const release = () => {
    rest();
    if (made) sheet.setState({ ...EMPTY_HANDED, told: doneWords(way, gesture.before.length + 1) });
  };
  return {
    moveTo: (by) => {
      const to = { x: target.at.x + by.x, y: target.at.y + by.y };
      setGesturing(true);
      made = addEdit(subject, way, [target, { kind: 'anywhere', at: to }], gesture);
      sheet.setState({ pull: { from: target.at, to, onto: undefined }, aimed: undefined });
    },
    release, rest, cancel: release,
    undo: () => {
      rest();
      if (editor.getState().history.past.at(-1)?.gesture === gesture.name) undoStep();
      sheet.setState(EMPTY_HANDED);
    },
  };
}

/** Pulls from one thing to another: the edit is made when it is let go on one that is offered. */
function pullHold(subject: Subject, way: Way, picked: readonly Target[], start: Point): HandHold {
  let onto: Target | undefined;
  const drop = () => sheet.setState({ pull: undefined });
  return {
    moveTo: (by) => {
      const to = { x: start.x + by.x, y: start.y + by.y };
      onto = aimedAt(way, picked, to, frameOf(sheet.getState()));
      sheet.setState({ pull: { from: picked.at(-1)!.at, to, onto }, picked, aimed: onto });
    },
    release: () => {
      drop();
      if (onto) takeAll(subject, way, withTarget(way, picked, onto));
    },
    rest: () => undefined, cancel: drop, undo: drop,
  };
}

/** Goes on with these places taken: the edit is made when it is whole. */
export function takeAll(subject: Subject, way: Way, picked: readonly Target[]): void {
  if (isFull(way, picked)) finish(subject, way, picked);
  else sheet.setState({ picked, target: undefined, aimed: undefined, told: '' });
}
