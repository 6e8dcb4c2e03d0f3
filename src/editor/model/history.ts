import { type Draft, type Patch, applyPatches, enablePatches, produceWithPatches } from 'immer';
import { type GraphDocument, deepEqual } from '../../runtime/index.ts';

enablePatches();

/** A change of a document, told as what to do to a draft of it. */
export type Edit = (draft: Draft<GraphDocument>) => void;

/** One entry of the undo list. */
export interface Step {
  /** What was done, for the words "Undo …": "move 2 steps". */
  readonly says: string;
  /** Edits with the same gesture that follow one another are one step: all moves of one drag. */
  readonly gesture: string | undefined;
  readonly forward: readonly Patch[];
  readonly back: readonly Patch[];
}

/** A document with the ways back and forth. Plain data. */
export interface History {
  readonly document: GraphDocument;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** Steps kept; the oldest are forgotten first, so that a long session does not grow without bound. */
export const MOST_STEPS = 500;

export const historyOf = (document: GraphDocument): History => ({ document, past: [], future: [] });

/** Applies an edit as a new step, or as part of the last step when both belong to the same gesture. An edit that changes nothing is no step. */
export function applyEdit(history: History, says: string, edit: Edit, gesture?: string): History {
  const [document, forward, back] = produceWithPatches(history.document, edit);
  if (forward.length === 0) return history;
  const last = history.past.at(-1);
  const joins = gesture !== undefined && last?.gesture === gesture && history.future.length === 0;
  const step: Step = { says, gesture, ...(joins ? joined(last, { forward, back }) : { forward, back }) };
  const past = joins ? [...history.past.slice(0, -1), step] : [...history.past, step];
  return { document, past: past.slice(-MOST_STEPS), future: [] };
}

type Patches = Pick<Step, 'forward' | 'back'>;

/**
 * The patches of two edits as those of one. When the later one only gives new values to the places the earlier one set last,
 * it takes their place: a slider dragged for a minute leaves one value, not thousands.
 */
function joined(earlier: Patches, later: Patches): Patches {
  const kept = earlier.forward.length - later.forward.length;
  const tail = earlier.forward.slice(Math.max(0, kept));
  const setsAgain = kept >= 0 && later.forward.every((patch, i) => patch.op === 'replace' && tail[i]!.op !== 'remove' && samePath(patch, tail[i]!));
  if (!setsAgain) return { forward: [...earlier.forward, ...later.forward], back: [...later.back, ...earlier.back] };
  const forward = later.forward.map((patch, i) => ({ ...patch, op: tail[i]!.op }));
  return { forward: [...earlier.forward.slice(0, kept), ...forward], back: earlier.back };
}

const samePath = (a: Patch, b: Patch): boolean => a.path.length === b.path.length && a.path.every((key, i) => key === b.path[i]);

/** The history one step earlier; the same when there is none. */
export function undo(history: History): History {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return { document: applyPatches(history.document, step.back), past: history.past.slice(0, -1), future: [...history.future, step] };
}

/** The history one undone step later; the same when there is none. */
export function redo(history: History): History {
  const step = history.future.at(-1);
  if (step === undefined) return history;
  return { document: applyPatches(history.document, step.forward), past: [...history.past, step], future: history.future.slice(0, -1) };
}

let compared: { readonly a: GraphDocument; readonly b: GraphDocument; readonly same: boolean } | undefined;

/**
 * Whether two documents say the same, whatever objects they are made of: undoing back to a saved document builds a new one.
 * The last answer is kept, since a page asks at every change of its state.
 */
export function sameDocument(a: GraphDocument, b: GraphDocument): boolean {
  if (a === b) return true;
  if (compared?.a !== a || compared.b !== b) compared = { a, b, same: deepEqual(a, b) };
  return compared.same;
}
