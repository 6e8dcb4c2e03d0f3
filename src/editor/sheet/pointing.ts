import { editor } from '../state/editor.ts';
import { doubtsAt, doubtsOf } from './doubts.ts';
import { gripAt } from './grips.ts';
import { addPlace } from './gestures.ts';
import { aimAt, clickAt } from './hand/doing.ts';
import { probeSoon, stopProbing } from './probe.ts';
import { layersOf } from './shapes.ts';
import { aloneOf, layersSeen } from './set-ups.ts';
import { signAt, signsOf } from './signs.ts';
import { snapTo } from './snap.ts';
import { type Grip, frameOf, sheet } from './store.ts';
import { subject } from './subject.ts';
import { setEnd } from './tape.ts';
import { type Frame, type Point, RULER, toScreen, toSheet } from './view.ts';

/** Pixels within which something is taken hold of, and within which the tape holds on. */
const GRIP_REACH = 10;
const SNAP_REACH = 10;

/** Follows the pointer, or the keys' cursor, to a screen place; `free` lets the tape not hold on to anything. */
export function pointAt(screen: Point, options: { readonly free?: boolean; readonly byKeys?: boolean } = {}): void {
  const state = sheet.getState();
  const frame = frameOf(state);
  const cursor = toSheet(frame, screen);
  const snap = state.tool === 'tape' && options.free !== true ? snapAt(cursor) : undefined;
  const aimed = aimAt(cursor);
  const hovered = state.tool === 'look' && (!aimed || aimed.kind === 'anywhere') ? gripUnder(cursor) : undefined;
  stopProbing();
  sheet.setState({ cursor, snap, hovered, aimed, byKeys: options.byKeys ?? false });
  if ((state.tool === 'look' || state.tool === 'read') && screen.x > RULER && screen.y > RULER) probeSoon(cursor);
}

/** The pointer left the sheet. */
export function pointAway(): void {
  if (sheet.getState().byKeys) return;
  stopProbing();
  sheet.setState({ cursor: undefined, snap: undefined, hovered: undefined, aimed: undefined });
}

function snapAt(cursor: Point): ReturnType<typeof snapTo> {
  const { picture } = editor.getState();
  const { view, hidden, ground, around, setUp } = sheet.getState();
  const alone = aloneOf(picture, setUp);
  return picture && snapTo(layersSeen([...ground, ...layersOf(picture), ...around], alone).filter(({ name }) => !hidden.has(name)), cursor, SNAP_REACH / view.scale);
}

/** What can be taken hold of at a place of the sheet. */
export function gripUnder(at: Point): Grip | undefined {
  const shown = subject();
  const { view, hidden } = sheet.getState();
  return shown && gripAt(shown, at, GRIP_REACH / view.scale, hidden);
}

/** Does what the tool does at the cursor: sets an end of the tape, adds a place; looking, goes to a sign, takes what is worked on by hand, or lets go. */
export function act(): void {
  const { tool, tape, snap, cursor } = sheet.getState();
  if (!cursor) return;
  if (tool === 'tape') sheet.setState({ tape: setEnd(tape, snap?.at ?? cursor) });
  else if (tool === 'add') addPlace(cursor);
  else if (tool === 'look') lookAt(cursor);
}

function lookAt(cursor: Point): void {
  const frame = frameOf(sheet.getState());
  const sign = signAt(signsOf(editor.getState(), aloneOf(editor.getState().picture, sheet.getState().setUp)), frame, toScreen(frame, cursor));
  if (sign) editor.setState({ spot: sign });
  else if (!clickAt(cursor)) lookAtDoubt(cursor, frame);
}

function lookAtDoubt(cursor: Point, frame: Frame): void {
  const [doubt] = doubtsAt(doubtsOf(editor.getState().picture, sheet.getState().hidden), frame, toScreen(frame, cursor));
  const grip = gripUnder(cursor);
  if (doubt && !grip) editor.setState({ spot: doubt });
  else sheet.setState({ grip });
}
