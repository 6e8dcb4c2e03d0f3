import { edit, editor, setGesturing } from '../state/editor.ts';
import { type HandleEdit, type Subject, addEdit, canAdd, handlesOf, heldTo, moveEdit, removeEdit } from './handles.ts';
import { type Grip, sheet } from './store.ts';
import { subject } from './subject.ts';
import type { Point } from './view.ts';

let gestures = 0;

/** Something held, from taking hold of it to letting go. All of it is one step to undo. */
export interface Hold {
  /** Moves what is held to `by` mm from where it was taken. */
  readonly moveTo: (by: Point) => void;
  readonly release: () => void;
  /** Gives up what only letting go would have done. */
  readonly cancel: () => void;
}

/** Takes hold of a grip of the node shown; undefined when it is gone. Nothing is changed before it is moved. */
export function takeHold(grip: Grip): Hold | undefined {
  const held = subject();
  const handle = held && handlesOf(held)[grip.handle];
  if (!held || !handle) return undefined;
  const gesture = newHold(held);
  sheet.setState({ grip });
  let moved = false;
  const release = () => {
    if (editor.getState().gesturing) setGesturing(false);
  };
  return {
    moveTo: (by) => {
      const { x, y } = heldTo(handle, by);
      // Pushed only where it cannot go, it does not move.
      if (!moved && x === 0 && y === 0) return;
      moved = true;
      setGesturing(true);
      apply(held, moveEdit(handle, held, grip.place, by), gesture);
    },
    release, cancel: release,
  };
}

/** A name for all edits of one hold, which are one step to undo. */
export function newHold({ node }: Subject): string {
  gestures += 1;
  return `hold ${node.id} ${gestures}`;
}

/** The handle that takes new places, where the node shown has one: the one asked for, else that of the place last chosen, else the first. */
export function addingHandle(): number | undefined {
  const shown = subject();
  const handles = shown ? handlesOf(shown) : [];
  const { adding, grip } = sheet.getState();
  const chosen = adding ?? grip?.handle ?? -1;
  const index = handles[chosen] && canAdd(handles[chosen]) ? chosen : handles.findIndex(canAdd);
  return index === -1 ? undefined : index;
}

/** Adds a place; it is the chosen one from then on. */
export function addPlace(at: Point): void {
  const shown = subject();
  const index = addingHandle();
  if (!shown || index === undefined) return;
  const change = addEdit(handlesOf(shown)[index]!, shown, at);
  if (!change) return;
  apply(shown, change);
  const places = Object.values(change.params).find((value) => Array.isArray(value)) as readonly Point[] | undefined;
  sheet.setState({ grip: { handle: index, place: (places?.length ?? 1) - 1 } });
}

/** Takes the place of a grip away; a whole layer stays. */
export function removePlace({ handle, place }: Grip): void {
  const shown = subject();
  const found = shown && handlesOf(shown)[handle];
  if (!shown || !found || place === undefined) return;
  const change = removeEdit(found, shown, place);
  if (change) apply(shown, change);
  sheet.setState({ grip: undefined, hovered: undefined });
}

/** Sets parameters of the node shown. */
export function apply({ node }: Subject, { says, params }: HandleEdit, gesture?: string): void {
  edit(says, (draft) => {
    const found = draft.nodes.find(({ id }) => id === node.id);
    if (found) Object.assign(found.params, structuredClone(params));
  }, gesture);
}
