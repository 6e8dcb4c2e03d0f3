import { pan, zoom } from './camera.ts';
import { type Hold, takeHold } from './gestures.ts';
import { holdUnder } from './hand/doing.ts';
import { dropHand } from './hand/hand-keys.ts';
import { act, gripUnder, pointAt, pointAway } from './pointing.ts';
import { stopProbing } from './probe.ts';
import { frameOf, sheet } from './store.ts';
import { type Point, toSheet } from './view.ts';

/** A press that moved less than this, in pixels, is a click. */
const CLICK = 4;

/** What a pressed pointer does: it pushes the view, or what it holds. */
interface Press {
  readonly from: Point;
  last: Point;
  moved: boolean;
  readonly hold: Hold | undefined;
  /** Whether letting go without having moved does what the tool does. */
  readonly acts: boolean;
}

/** Pointers, touches and the wheel on the sheet. Returns how to stop. */
export function listenToPointers(element: HTMLElement): () => void {
  const touches = new Map<number, Point>();
  let press: Press | undefined;
  const placeOf = (event: MouseEvent): Point => {
    const { left, top } = element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };

  const down = (event: PointerEvent) => {
    if (event.button > 1) return;
    const at = placeOf(event);
    touches.set(event.pointerId, at);
    element.setPointerCapture?.(event.pointerId);
    if (event.button === 1) event.preventDefault();
    press?.hold?.cancel();
    dropHand();
    press = touches.size === 1 ? pressAt(at, event.button === 1) : undefined;
  };
  const move = (event: PointerEvent) => {
    const at = placeOf(event);
    if (touches.size >= 2) pinch(touches, event.pointerId, at);
    else if (press) drag(press, at);
    if (touches.has(event.pointerId)) touches.set(event.pointerId, at);
    if (touches.size < 2 && !press?.moved) pointAt(at, { free: event.shiftKey });
  };
  const up = (event: PointerEvent) => {
    touches.delete(event.pointerId);
    if (!press) return;
    const ended = press;
    press = undefined;
    if (event.type === 'pointercancel') ended.hold?.cancel();
    else ended.hold?.release();
    if (event.type === 'pointercancel' || ended.moved || !ended.acts) return;
    pointAt(placeOf(event), { free: event.shiftKey });
    act();
  };
  const wheel = (event: WheelEvent) => {
    event.preventDefault();
    if (event.shiftKey && !event.ctrlKey) pan(-(event.deltaX || event.deltaY), 0);
    else zoom(wheelFactor(event), placeOf(event));
    pointAt(placeOf(event), { free: true });
  };
  const listeners = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: up, pointerleave: pointAway, wheel } as const;
  for (const [name, listener] of Object.entries(listeners)) element.addEventListener(name, listener as EventListener, { passive: false });
  return () => {
    for (const [name, listener] of Object.entries(listeners)) element.removeEventListener(name, listener as EventListener);
  };
}

function pressAt(at: Point, pushes: boolean): Press {
  const { tool } = sheet.getState();
  const hold = tool === 'look' && !pushes ? holdAt(toSheet(frameOf(sheet.getState()), at)) : undefined;
  return { from: at, last: at, moved: false, hold, acts: !pushes };
}

function holdAt(at: Point): Hold | undefined {
  const hand = holdUnder(at);
  const grip = hand ? undefined : gripUnder(at);
  return hand ?? (grip && takeHold(grip));
}

function drag(press: Press, at: Point): void {
  if (!press.moved && Math.hypot(at.x - press.from.x, at.y - press.from.y) < CLICK) return;
  if (!press.moved) stopProbing();
  press.moved = true;
  const { scale } = sheet.getState().view;
  if (press.hold) press.hold.moveTo({ x: (at.x - press.from.x) / scale, y: (press.from.y - at.y) / scale });
  else pan(at.x - press.last.x, at.y - press.last.y);
  press.last = at;
  sheet.setState({ cursor: toSheet(frameOf(sheet.getState()), at), snap: undefined, byKeys: false });
}

/** Two touches hold on to two places of the sheet: it moves and grows with them. */
function pinch(touches: ReadonlyMap<number, Point>, moved: number, to: Point): void {
  const from = touches.get(moved);
  const other = [...touches].find(([id]) => id !== moved)?.[1];
  if (!from || !other) return;
  const before = Math.hypot(from.x - other.x, from.y - other.y);
  const after = Math.hypot(to.x - other.x, to.y - other.y);
  const middle = { x: (to.x + other.x) / 2, y: (to.y + other.y) / 2 };
  pan((to.x - from.x) / 2, (to.y - from.y) / 2);
  if (before > 0 && after > 0) zoom(after / before, middle);
}

/** Pixels per line and page of a wheel that counts in those. */
const WHEEL_UNITS = [1, 16, 400];
/** A notch of a common wheel, 100 pixels, zooms by about a sixth; a pinch on a touch pad sends small steps and counts more. */
const PER_PIXEL = { wheel: 0.0015, pinch: 0.01 } as const;

export function wheelFactor({ deltaY, deltaMode, ctrlKey }: Pick<WheelEvent, 'deltaY' | 'deltaMode' | 'ctrlKey'>): number {
  const pixels = deltaY * (WHEEL_UNITS[deltaMode] ?? 1);
  return Math.min(4, Math.max(0.25, Math.exp(-pixels * (ctrlKey && Math.abs(pixels) < 50 ? PER_PIXEL.pinch : PER_PIXEL.wheel))));
}
