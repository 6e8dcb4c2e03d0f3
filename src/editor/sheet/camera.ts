import { type EditorState, type Spot, editor, show } from '../state/editor.ts';
import type { PictureLayer } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import { offersHands } from './grips.ts';
import { aloneOf, boxOnSheet, inBox, placeOn } from './set-ups.ts';
import { contentBox, sheetBox } from './shapes.ts';
import { spotHere } from './signs.ts';
import { nodesOnSheet } from './space.ts';
import { frameOf, look, sheet } from './store.ts';
import { subject } from './subject.ts';
import { type Box, type Point, RULER, type Size, type View, between, fit, middleOf, panBy, showsBox, toScreen, unite, zoomAt } from './view.ts';

/** Views of the two kinds of coordinates, those of the sheet and those of a drawing, as they were last looked at. */
const views = new Map<boolean, View>();
let lastNode: string | undefined;
let onSheet = true;

/** Whether the node's values lie on the sheet. */
const liesOnSheet = ({ history, shapes }: EditorState, node: string): boolean => nodesOnSheet(history.document, shapes).has(node);

/** A place in other coordinates than those shown, to be flown to once its own are. */
let awaited: Spot | undefined;

/** Goes to a spot; where it lies in other coordinates than what is shown, its own step is shown first. */
function lookFor(state: EditorState, spot: Spot): void {
  awaited = undefined;
  if (spotHere(state)) {
    showSetUpAt(state, { x: spot.at[0], y: spot.at[1] });
    flyToSpot(spot.at);
    return;
  }
  awaited = spot;
  if (state.picture) show(spot.node);
}

/** A place that the set-up looked at alone does not cut is shown in the one it belongs to. */
function showSetUpAt({ picture }: EditorState, at: Point): void {
  const alone = aloneOf(picture, sheet.getState().setUp);
  if (!alone || inBox(alone.setUp.window, at)) return;
  const place = placeOn(alone.setUps.list, at);
  lookAtSetUp(place === -1 ? undefined : place);
}

/** Looks at one set-up alone, or at all of them. The machine stays where it is on the screen, and the sheet moves as it does on the bench. */
export function lookAtSetUp(place: number | undefined): void {
  const { picture } = editor.getState();
  const { setUp, fitted, view } = sheet.getState();
  if (place === setUp) return;
  const shiftOf = (one: number | undefined) => aloneOf(picture, one)?.setUp.shift ?? [0, 0];
  const [from, to] = [shiftOf(setUp), shiftOf(place)];
  sheet.setState({ setUp: place, grip: undefined, hovered: undefined });
  if (fitted !== undefined) fitTo(fitted);
  else sheet.setState({ view: { ...view, x: view.x + to[0] - from[0], y: view.y + to[1] - from[1] } });
}

/** Keeps the view where it is as values change; fits the first picture, and one that would not be found in the present view. Returns how to stop. */
export function followPictures(): () => void {
  if (editor.getState().picture) arrived(editor.getState().picture!);
  return editor.subscribe((state, before) => {
    if (state.picture !== before.picture) {
      if (state.picture) arrived(state.picture);
      else if (state.outcome === undefined && state.reports.size === 0) forget();
    }
    if (state.spot !== before.spot && state.spot) lookFor(state, state.spot);
  });
}

function arrived(picture: NodePicture): void {
  const box = contentBox(picture);
  if (!box) return;
  const space = liesOnSheet(editor.getState(), picture.node);
  const state = sheet.getState();
  if (lastNode === undefined) fitTo('sheet');
  else if (space !== onSheet) {
    views.set(onSheet, state.view);
    const known = views.get(space);
    if (known && showsBox({ ...known, ...state.size }, box)) look(known);
    else fitTo('sheet');
  } else if (picture.node !== lastNode && !showsBox(frameOf(state), box)) fitTo('sheet');
  lastNode = picture.node;
  onSheet = space;
  const spot = spotHere(editor.getState());
  if (spot && spot === awaited) lookFor(editor.getState(), spot);
}

/** Puts what is shown on a sheet. A view fitted to the sheet is fitted anew. */
export function setGround(ground: readonly PictureLayer[]): void {
  const { fitted, ground: before } = sheet.getState();
  if (ground.length === 0 && before.length === 0) return;
  sheet.setState({ ground });
  if (fitted === 'sheet') fitTo('sheet');
}

/** Another document: nothing of how the last one was looked at is kept. */
function forget(): void {
  lastNode = undefined;
  onSheet = true;
  views.clear();
  sheet.setState({ setUp: undefined, around: [] });
}

/** Shows the whole sheet, or everything drawn. Until the view is moved by hand it stays fitted when the window changes. */
export function fitTo(what: 'sheet' | 'all'): void {
  const { picture } = editor.getState();
  const { size, ground, setUp } = sheet.getState();
  const drawn = picture && (what === 'sheet' ? sheetBox(picture, ground) : contentBox(picture));
  const alone = aloneOf(picture, setUp);
  const box = drawn && alone ? unite([drawn, boxOnSheet(alone.setUps.bed ?? alone.setUps.reach, alone)]) : drawn;
  stopFlying();
  if (box) sheet.setState({ view: fitAboveHint(size, box), fitted: what });
}

/** Room the words about moving things by hand take at the sheet's lower edge, CSS pixels: nothing fitted hides behind them. */
const HINT = 48;

function fitAboveHint(size: Size, box: Box): View {
  const shown = subject();
  const hint = shown && offersHands(shown) ? Math.min(HINT, size.height / 4) : 0;
  const whole = fit(size, box);
  if (toScreen({ ...whole, ...size }, { x: box.minX, y: box.minY }).y <= size.height - hint) return whole;
  const view = fit({ ...size, height: size.height - hint }, box);
  return { ...view, y: view.y - hint / 2 / view.scale };
}

/** Without room, as while the sheet is hidden, the last size and view are kept for when it comes back. */
export function setSize(size: Size): void {
  const { fitted, size: before } = sheet.getState();
  const same = size.width === before.width && size.height === before.height;
  if (same || size.width === 0 || size.height === 0) return;
  sheet.setState({ size });
  // A view chosen while there was no room to show anything in means nothing.
  if (fitted !== undefined || before.width === 0) fitTo(fitted ?? 'sheet');
}

/** Zooms by a factor about a screen place; without one about the middle. */
export function zoom(factor: number, at?: Point): void {
  stopFlying();
  const frame = frameOf(sheet.getState());
  look(zoomAt(frame, at ?? { x: (frame.width + RULER) / 2, y: (frame.height + RULER) / 2 }, factor));
}

export function pan(right: number, down: number): void {
  stopFlying();
  look(panBy(sheet.getState().view, right, down));
}

let flight = 0;

function stopFlying(): void {
  cancelAnimationFrame(flight);
}

const FLIGHT_MILLISECONDS = 350;

const wantsLittleMotion = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Goes to a view in a short flight, so that one sees where on the sheet it is; at once for those who want little motion. */
export function flyTo(to: View): void {
  stopFlying();
  if (wantsLittleMotion()) {
    look(to);
    return;
  }
  const from = sheet.getState().view;
  const start = performance.now();
  const step = (now: number) => {
    const part = Math.min(1, Math.max(0, (now - start) / FLIGHT_MILLISECONDS));
    look(part === 1 ? to : between(from, to, part * part * (3 - 2 * part)));
    if (part < 1) flight = requestAnimationFrame(step);
  };
  flight = requestAnimationFrame(step);
}

/** Pixels a flight makes of a millimetre at least, so that a place is seen with what is around it: about 250 mm across a window of 1000. */
const SPOT_SCALE = 4;

/** Goes to a place with what is around it; no nearer than the person already is. */
const flyToSpot = ([x, y]: readonly [number, number]): void => flyToBox({ minX: x, minY: y, maxX: x, maxY: y });

/** Goes to places with what is around them, so near that all of them are seen. */
export function flyToBox(places: Box): void {
  const { view, size } = sheet.getState();
  const { picture } = editor.getState();
  const box = picture && contentBox(picture);
  const whole = box ? fit(size, box).scale : view.scale;
  const near = Math.max(view.scale, Math.min(SPOT_SCALE, 6 * whole));
  const single = places.minX === places.maxX && places.minY === places.maxY;
  flyTo({ ...middleOf(places), scale: single ? near : Math.min(near, fit(size, places).scale) });
}
