import { editor } from '../state/editor.ts';
import { pan } from './camera.ts';
import { nextGrip, placeOf } from './grips.ts';
import { type Hold, removePlace, takeHold } from './gestures.ts';
import { dropHand, pressHandKey, restHand, walkTargets } from './hand/hand-keys.ts';
import { act, pointAt } from './pointing.ts';
import { type Grip, frameOf, sheet, takeTool } from './store.ts';
import { subject } from './subject.ts';
import { roundStep } from './ticks.ts';
import { type Point, RULER, toScreen, visibleBox } from './view.ts';

/** The part of a keyboard event that counts. */
export type Key = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey' | 'repeat'>;

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 }, ArrowRight: { x: 1, y: 0 }, ArrowUp: { x: 0, y: 1 }, ArrowDown: { x: 0, y: -1 },
};

/** Pixels an arrow key pushes the view by. */
const PUSH = 48;

/** Does what a key means on the sheet; whether it meant anything. Keys with Control or Command belong to the page. */
export function pressKey(key: Key): boolean {
  if (key.ctrlKey || key.metaKey) return false;
  const arrow = ARROWS[key.key];
  if (pressHandKey(key, arrow && stepOf(arrow, key))) return true;
  if (arrow) return pressArrow(arrow, key);
  const action = ACTIONS[key.key];
  return action !== undefined && action(key);
}

/** Each says whether there was something to do. */
const ACTIONS: Readonly<Record<string, (key: Key) => boolean>> = {
  Escape: () => letGo(),
  Enter: (key) => set(key),
  ' ': (key) => set(key),
  Delete: () => remove(),
  Backspace: () => remove(),
};

function pressArrow(arrow: Point, key: Key): boolean {
  const { tool, grip } = sheet.getState();
  if (tool !== 'look') moveCursor(arrow, key);
  else if (grip) nudgeBy(grip, stepOf(arrow, key), key.repeat);
  else pan(-arrow.x * PUSH * (key.shiftKey ? 5 : 1), arrow.y * PUSH * (key.shiftKey ? 5 : 1));
  return true;
}

/** What is held moves by 1 mm, or by 10, or by 0.1. */
const millimetres = ({ shiftKey, altKey }: Key): number => (shiftKey ? 10 : altKey ? 0.1 : 1);

const stepOf = ({ x, y }: Point, key: Key): Point => ({ x: x * millimetres(key), y: y * millimetres(key) });

/** A key that is held down and repeats is one gesture, as one drag is. */
let held: { readonly grip: Grip; readonly hold: Hold; by: Point } | undefined;

function nudgeBy(grip: Grip, step: Point, repeat: boolean): void {
  if (!held || !repeat || held.grip !== sheet.getState().grip) {
    const hold = takeHold(grip);
    if (!hold) return;
    held = { grip, hold, by: { x: 0, y: 0 } };
  }
  held.by = { x: held.by.x + step.x, y: held.by.y + step.y };
  held.hold.moveTo(held.by);
}

/** A key was let go: what it held is let go too; what keys drag until Enter rests. */
export function releaseKey(): void {
  held?.hold.release();
  held = undefined;
  restHand();
}

/** The focus left the sheet: nothing is held any more. */
export function leaveKeys(): void {
  releaseKey();
  dropHand();
}

/** Pixels the cursor goes by at least with one arrow key: it stops at round places. */
const CURSOR_STEP = 8;

/** Moves the cursor to the next round place, ten of them with Shift, a tenth with Alt, and keeps it in sight. */
function moveCursor(arrow: Point, { shiftKey, altKey }: Key): void {
  const state = sheet.getState();
  const frame = frameOf(state);
  const { mantissa, exponent } = roundStep(frame.scale, CURSOR_STEP);
  const step = mantissa * 10 ** exponent * (altKey ? 0.1 : 1);
  const from = state.cursor ?? { x: frame.x, y: frame.y };
  const go = (value: number, along: number) => (along === 0 ? value : (Math.round(value / step) + along * (shiftKey ? 10 : 1)) * step);
  const to = { x: go(from.x, arrow.x), y: go(from.y, arrow.y) };
  keepInSight(to);
  pointAt(toScreen(frameOf(sheet.getState()), to), { byKeys: true });
}

function keepInSight({ x, y }: Point): void {
  const frame = frameOf(sheet.getState());
  const { minX, minY, maxX, maxY } = visibleBox(frame, -2 * RULER);
  const beyond = (value: number, least: number, most: number) => Math.min(0, value - least) + Math.max(0, value - most);
  const [right, up] = [beyond(x, minX, maxX), beyond(y, minY, maxY)];
  if (right !== 0 || up !== 0) pan(-right * frame.scale, up * frame.scale);
}

/** Sets an end of the tape or adds a place at the cursor; with Shift the tape does not hold on to what is near. */
function set({ shiftKey }: Key): boolean {
  const { tool, cursor } = sheet.getState();
  if (tool === 'look') return false;
  const frame = frameOf(sheet.getState());
  pointAt(toScreen(frame, cursor ?? { x: frame.x, y: frame.y }), { free: shiftKey, byKeys: true });
  act();
  return true;
}

/** Puts down the tool, else clears what was pointed out, else lets go of what is held. */
function letGo(): boolean {
  const { tool, grip } = sheet.getState();
  if (tool !== 'look') takeTool('look');
  else if (editor.getState().spot) editor.setState({ spot: undefined });
  else if (grip) sheet.setState({ grip: undefined });
  else return false;
  return true;
}

function remove(): boolean {
  const { grip } = sheet.getState();
  if (grip?.place === undefined) return false;
  removePlace(grip);
  return true;
}

/** Takes hold of the next thing that can be moved, and brings it in sight. */
export function takeNext(step: 1 | -1): boolean {
  const shown = subject();
  const { x, y } = frameOf(sheet.getState());
  const target = walkTargets(step, { x, y });
  if (target) keepInSight(target);
  if (target) return true;
  const next = shown && nextGrip(shown, sheet.getState().grip, step);
  if (!shown || !next) return false;
  sheet.setState({ grip: next });
  const at = placeOf(shown, next);
  if (at) keepInSight(at);
  return true;
}
