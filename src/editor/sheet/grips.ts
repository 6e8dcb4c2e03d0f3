import type { Handle } from '../../runtime/index.ts';
import { type Subject, axisOf, canAdd, handlesOf, layersOfHandle, placeIsSeen, placesOfHandle } from './handles.ts';
import { contains, distance, nearestOn } from './near.ts';
import { inBox } from './set-ups.ts';
import { boxOfLayers, shapeOf, sheetBox } from './shapes.ts';
import type { Grip } from './store.ts';
import { type Box, type Point } from './view.ts';

/** Everything of the node shown that can be taken hold of, in the order keys walk through it. */
export function allGrips(subject: Subject): readonly Grip[] {
  return handlesOf(subject).flatMap((handle, index): Grip[] => {
    const places = placesOfHandle(handle, subject).map((_, place) => ({ handle: index, place })).filter(({ place }) => placeIsSeen(handle, subject, place));
    return layersOfHandle(handle, subject).length > 0 ? [...places, { handle: index }] : places;
  });
}

/** Whether there is anything to be said of moving or adding by hand. */
export const offersHands = (subject: Subject): boolean => handlesOf(subject).some(canAdd) || allGrips(subject).length > 0;

/** What can be taken hold of at a place, within `within` mm of it: single places before whole layers. */
export function gripAt(subject: Subject, at: Point, within: number, hidden: ReadonlySet<string>): Grip | undefined {
  return placeAt(subject, at, within) ?? wholeAt(subject, at, within, hidden);
}

function placeAt(subject: Subject, at: Point, within: number): Grip | undefined {
  const near = handlesOf(subject).flatMap((handle, index) =>
    placesOfHandle(handle, subject).map((place, number) => ({ grip: { handle: index, place: number }, far: distance(place, at), beside: besideLine(handle, subject, place, at) }))
      .filter(({ grip: { place } }) => placeIsSeen(handle, subject, place)));
  const direct = near.filter(({ far }) => far <= within).sort((a, b) => a.far - b.far)[0];
  return (direct ?? near.filter(({ beside }) => beside <= within).sort((a, b) => a.beside - b.beside)[0])?.grip;
}

/** How far a place is from the line across the sheet that a handle's place stands for. */
function besideLine(handle: Handle, subject: Subject, place: Point, at: Point): number {
  const axis = axisOf(handle);
  const box = sheetBox(subject.picture, []);
  return axis && box && inBox(box, at) ? Math.abs(place[axis] - at[axis]) : Infinity;
}

/** The ends of the line across the sheet that a grip stands for; undefined for a single place. */
export function lineOf(subject: Subject, grip: Grip): readonly [Point, Point] | undefined {
  const found = handlesOf(subject)[grip.handle];
  const at = placeOf(subject, grip);
  const box = sheetBox(subject.picture, []);
  if (!found || !at || !box || axisOf(found) === undefined) return undefined;
  return axisOf(found) === 'x' ? [{ x: at.x, y: box.minY }, { x: at.x, y: box.maxY }] : [{ x: box.minX, y: at.y }, { x: box.maxX, y: at.y }];
}

function wholeAt(subject: Subject, at: Point, within: number, hidden: ReadonlySet<string>): Grip | undefined {
  const index = handlesOf(subject).findIndex((handle) =>
    layersOfHandle(handle, subject).some(({ kind, name, items }) => !hidden.has(name) && items.some((item) => {
      const shape = shapeOf(item);
      return nearestOn(shape, at, within) !== undefined || (FILLED.has(kind) && contains(shape, at));
    })));
  return index === -1 ? undefined : { handle: index };
}

/** Kinds of layer that are taken hold of by their inside too. */
const FILLED: ReadonlySet<string> = new Set(['outlines', 'groove']);

/** Where a single place of a grip is; undefined for a whole layer or a place that is gone. */
export function placeOf(subject: Subject, { handle, place }: Grip): Point | undefined {
  const found = handlesOf(subject)[handle];
  return found && place !== undefined ? placesOfHandle(found, subject)[place] : undefined;
}

/** The box around what a grip moves as a whole. */
export function wholeBox(subject: Subject, { handle, place }: Grip): Box | undefined {
  const found = handlesOf(subject)[handle];
  return found && place === undefined ? boxOfLayers(layersOfHandle(found, subject)) : undefined;
}

/** The next thing to take hold of after the present one, or before it; undefined when there is none. */
export function nextGrip(subject: Subject, present: Grip | undefined, step: 1 | -1): Grip | undefined {
  const all = allGrips(subject);
  const index = all.findIndex(({ handle, place }) => handle === present?.handle && place === present.place);
  const from = index === -1 && step === -1 ? 0 : index;
  return all[(from + step + all.length) % all.length];
}
