import type { Act, Edit, Handle, Param, PlaceOn } from '../../../runtime/index.ts';
import type { JunctionMap, PictureItem } from '../../../values/picture.ts';
import { type Subject, handlesOf, valueOf } from '../handles.ts';

/** One act of an `edits` handle, as a way of working by hand on the picture shown. */
export interface Way {
  readonly act: string;
  readonly label: string;
  readonly doc: string;
  /** The parameter that takes the edits. */
  readonly param: string;
  /** How many places it takes. */
  readonly least: number;
  readonly most: number;
  /** What the places are taken from, in their order; further ones as the last. */
  readonly on: readonly PlaceOn[];
  readonly map: JunctionMap;
  /** The strokes drawn, by the numbers that the map calls them by. */
  readonly strokes: readonly PictureItem[];
}

/** Every way of working by hand on what is shown, in the order it is declared; none while there is nothing to take hold of. */
export function waysOf(subject: Subject): readonly Way[] {
  return handlesOf(subject).flatMap((handle) => (handle.kind === 'edits' ? waysOfHandle(handle, subject) : []));
}

function waysOfHandle({ param: name, junctions }: Extract<Handle, { kind: 'edits' }>, { shape, picture }: Subject): readonly Way[] {
  const param = shape.params[name];
  const map = picture.junctions[junctions];
  if (param?.kind !== 'edits' || map === undefined) return [];
  const strokes = picture.outputs.layers.filter(({ kind }) => kind === 'strokes').flatMap(({ items }) => items);
  return Object.entries(param.acts).map(([act, { label, doc, places: [least, most], on }]: [string, Act]) =>
    ({ act, label, doc, param: name, least, most, on: on ?? ['anywhere'], map, strokes }));
}

/** The way that was chosen; else the first in which something is dragged, since it asks for no other click. */
export const wayOf = (ways: readonly Way[], chosen: string | undefined): Way | undefined =>
  ways.find(({ act }) => act === chosen) ?? ways.find(drags);

/** What the place with this number, counted from 0, is taken from. */
export const kindOfPlace = ({ on }: Way, place: number): PlaceOn => on[Math.min(place, on.length - 1)] ?? 'anywhere';

/** It takes as many places as a person likes to give. */
export const isOpen = ({ least, most }: Way): boolean => least < most;

/** Something is taken hold of and dragged to anywhere: the edit is seen while it is made. */
export const drags = (way: Way): boolean => !isOpen(way) && way.most === 2 && kindOfPlace(way, 0) !== 'anywhere' && kindOfPlace(way, 1) === 'anywhere';

/** The edits made so far. */
export function editsOf({ node, shape }: Subject, param: string): readonly Edit[] {
  const value = valueOf(node, shape, param);
  return isEditsParam(shape.params[param]) && Array.isArray(value) ? (value as readonly Edit[]) : [];
}

const isEditsParam = (param: Param | undefined): boolean => param?.kind === 'edits';
