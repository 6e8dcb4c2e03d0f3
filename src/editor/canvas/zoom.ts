import { editor, present } from '../state/editor.ts';
import { type Box, around } from '../model/boxes.ts';
import { currentView } from './current.ts';
import { lie } from './lie.ts';
import { viewport } from './state.ts';
import { LEAST_ZOOM } from './view.ts';

/** Room left around what is fitted into view, in pixels: also for the words that reach out of the cards. */
const RIM = 56;
/** A few cards are not blown up beyond this. */
const FULL = 1;

/** The transform that shows a box whole and in the middle. */
export function fitting(box: Box, { width, height }: { readonly width: number; readonly height: number }): { readonly x: number; readonly y: number; readonly k: number } {
  const room = { width: Math.max(1, width - 2 * RIM), height: Math.max(1, height - 2 * RIM) };
  const k = Math.max(LEAST_ZOOM, Math.min(FULL, room.width / box.width, room.height / box.height));
  return { k, x: width / 2 - (box.x + box.width / 2) * k, y: height / 2 - (box.y + box.height / 2) * k };
}

function show(box: Box | undefined): void {
  if (box === undefined) return;
  const { x, y, k } = fitting(box, viewport.getState());
  currentView()?.show(x, y, k);
}

export const zoomToFit = (): void => show(around([...lie.getState().boxes.values()]));

export function zoomToChosen(): void {
  const { boxes } = lie.getState();
  show(around(editor.getState().chosen.flatMap((id) => boxes.get(id) ?? [])));
}

export function zoomBy(factor: number): void {
  currentView()?.zoomTo(viewport.getState().k * factor);
}

/** Moves the bench as little as needed for the card to be seen. */
export function bringIntoView(id: string): void {
  const box = lie.getState().boxes.get(id);
  const { x, y, k, width, height } = viewport.getState();
  if (box === undefined || width === 0) return;
  const dx = needed(box.x * k + x, (box.x + box.width) * k + x, width);
  const dy = needed(box.y * k + y, (box.y + box.height) * k + y, height);
  if (dx !== 0 || dy !== 0) currentView()?.panBy(dx, dy);
}

/** Shows an opened card at its full size at least: its fields are then large enough to read and to hit. */
export function showOpened(id: string): void {
  const box = lie.getState().boxes.get(id);
  const { x, y, k } = viewport.getState();
  if (box === undefined) return;
  if (k < FULL) currentView()?.zoomTo(FULL, [box.x * k + x, box.y * k + y]);
  bringIntoView(id);
}

/** How far the span from a to b has to go to lie within 0 and `room`, its beginning if it is too long. */
function needed(a: number, b: number, room: number): number {
  const rim = Math.min(RIM, room / 8);
  if (a < rim) return rim - a;
  return b > room - rim ? Math.max(room - rim - b, rim - a) : 0;
}

/** Cards are opened no smaller than they can be read. */
const READABLE = 0.62;

/** Shows the whole graph, or where that would be too small to read its upper left, where it begins. */
function showBeginning(): void {
  const box = around([...lie.getState().boxes.values()]);
  const room = viewport.getState();
  if (box === undefined) return;
  const whole = fitting(box, room);
  if (whole.k >= READABLE) currentView()?.show(whole.x, whole.y, whole.k);
  else currentView()?.show(RIM - box.x * READABLE, RIM - box.y * READABLE, READABLE);
}

/** Shows the beginning of each document when it is opened: as soon as the bench has a size and there are cards. Returns what ends that. */
export function watchFirstFit(): () => void {
  let fitted: unknown;
  const look = () => {
    const { history: { document, past, future }, shapes } = editor.getState();
    if (fitted === undefined || isOpenedAnew(past, future)) tryFit(document, shapes.size);
  };
  const isOpenedAnew = (past: readonly unknown[], future: readonly unknown[]) => past.length === 0 && future.length === 0 && fitted !== present();
  const tryFit = (document: unknown, known: number) => {
    if (known === 0 || viewport.getState().width === 0 || lie.getState().boxes.size === 0) return;
    fitted = document;
    showBeginning();
  };
  const ends = [editor.subscribe(look), viewport.subscribe(look), lie.subscribe(look)];
  look();
  return () => {
    for (const end of ends) end();
  };
}
