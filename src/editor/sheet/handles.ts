import type { AnyParamValues, GraphNode, Handle, NodeShape, Param, ParamValue, PointsParam } from '../../runtime/index.ts';
import type { PictureLayer } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import type { Alone } from './set-ups.ts';
import type { Point } from './view.ts';

/** The node shown, with all a handle needs to know of it. */
export interface Subject {
  readonly node: GraphNode;
  readonly shape: NodeShape;
  readonly picture: NodePicture;
  /** The set-up that is looked at alone. */
  readonly alone?: Alone | undefined;
}

type HandleOf<K extends Handle['kind']> = Extract<Handle, { kind: K }>;

/** What one kind of handle offers. Changes are told as parameters to set, counted from the subject as it was when the gesture began. */
interface HandleKind<H> {
  /** Single places that can be taken hold of. */
  readonly places: (handle: H, subject: Subject) => readonly Point[];
  /** Whether a place is to be seen in the set-up that is looked at alone. */
  readonly seen?: (handle: H, subject: Subject, place: number) => boolean;
  /** Whether a layer of the outputs is taken hold of as a whole. */
  readonly takes: (handle: H, layer: PictureLayer, subject: Subject) => boolean;
  /** The parameters after what was taken hold of moved by `by`. */
  readonly moved: (handle: H, subject: Subject, place: number | undefined, by: Point) => AnyParamValues;
  readonly added?: (handle: H, subject: Subject, at: Point) => AnyParamValues;
  readonly removed?: (handle: H, subject: Subject, place: number) => AnyParamValues;
  /** What is moved, for the words "Undo: …". */
  readonly says: (handle: H, subject: Subject) => string;
}

const KINDS: { readonly [K in Handle['kind']]: HandleKind<HandleOf<K>> } = {
  places: {
    places: (handle, subject) => placesOf(handle, subject).map((at) => plus(at, originOf(handle, subject))),
    seen: isThere,
    takes: () => false,
    moved: (handle, subject, place, by) =>
      placed(handle, placesOf(handle, subject).map((at, index) => (index === place ? rounded(plus(at, by)) : at))),
    added: (handle, subject, at) => {
      const { x, y } = originOf(handle, subject);
      return placed(handle, [...placesOf(handle, subject), rounded({ x: at.x - x, y: at.y - y })]);
    },
    removed: (handle, subject, place) => placed(handle, placesOf(handle, subject).filter((_, index) => index !== place)),
    says: (handle, subject) => placeName(handle, subject),
  },
  // Edits are made otherwise than by moving what is there: see hand/.
  edits: {
    places: () => [],
    takes: () => false,
    moved: () => ({}),
    says: (handle, { shape }) => shape.params[handle.param]?.label ?? handle.param,
  },
  move: {
    places: () => [],
    takes: ({ outputs }, layer, { shape }) => outputs.some((port) => carries(layer, port, shape.outputs[port]?.type)),
    moved: ({ x, y }, { node, shape }, _place, by) => ({ [x]: shifted(node, shape, x, by.x), [y]: shifted(node, shape, y, by.y) }),
    says: ({ outputs }) => outputs.join(' and '),
  },
};

const kindOf = (handle: Handle): HandleKind<Handle> => KINDS[handle.kind] as HandleKind<Handle>;

export const handlesOf = ({ shape }: Subject): readonly Handle[] => shape.handles ?? [];

export const placesOfHandle = (handle: Handle, subject: Subject): readonly Point[] => kindOf(handle).places(handle, subject);

/** Whether one of its places is to be seen, and so can be taken hold of. */
export const placeIsSeen = (handle: Handle, subject: Subject, place: number): boolean => kindOf(handle).seen?.(handle, subject, place) ?? true;

/** The coordinate that alone counts of its places, as of lines across the sheet. */
export const axisOf = (handle: Handle): 'x' | 'y' | undefined => (handle.kind === 'places' ? handle.axis : undefined);

/** The part of a way that the handle can go. */
export function heldTo(handle: Handle, { x, y }: Point): Point {
  const axis = axisOf(handle);
  return { x: axis === 'y' ? 0 : x, y: axis === 'x' ? 0 : y };
}

/** Layers of the picture that this handle moves as a whole. */
export const layersOfHandle = (handle: Handle, subject: Subject): readonly PictureLayer[] =>
  subject.picture.outputs.layers.filter((layer) => kindOf(handle).takes(handle, layer, subject));

/** A change of parameters a gesture makes, and how the undo list names it. */
export interface HandleEdit {
  readonly says: string;
  readonly params: AnyParamValues;
}

export function moveEdit(handle: Handle, subject: Subject, place: number | undefined, by: Point): HandleEdit {
  return { says: `Move ${kindOf(handle).says(handle, subject)}`, params: kindOf(handle).moved(handle, subject, place, heldTo(handle, by)) };
}

/** Undefined where this kind of handle has nothing to add. */
export function addEdit(handle: Handle, subject: Subject, at: Point): HandleEdit | undefined {
  const params = kindOf(handle).added?.(handle, subject, at);
  return params && { says: `Add ${kindOf(handle).says(handle, subject)}`, params };
}

/** Undefined where this kind of handle has nothing to take away. */
export function removeEdit(handle: Handle, subject: Subject, place: number): HandleEdit | undefined {
  const params = kindOf(handle).removed?.(handle, subject, place);
  return params && { says: `Remove ${kindOf(handle).says(handle, subject)}`, params };
}

export const canAdd = (handle: Handle): boolean => kindOf(handle).added !== undefined;

/** The parameter's places; while nothing was put there by hand, or the parameters that go with it say otherwise, those that came out. */
function placesOf({ param, from, sets }: HandleOf<'places'>, { node, shape, picture }: Subject): readonly Point[] {
  const given = valueOf(node, shape, param) as PointsParam['default'] | undefined;
  const holds = Object.entries(sets ?? {}).every(([name, value]) => valueOf(node, shape, name) === value);
  if (given !== undefined && given.length > 0 && holds) return given;
  return from === undefined ? (given ?? []) : (picture.spots[from] ?? []).map(([x, y]) => ({ x, y }));
}

/** Where the coordinates of its places count from: those on the machine lie elsewhere on the sheet in every set-up. */
function originOf({ on }: HandleOf<'places'>, { alone }: Subject): Point {
  const [x, y] = (on === 'machine' && alone?.setUp.shift) || [0, 0];
  return { x, y };
}

/** Places known to belong to other set-ups alone are not seen; one that is being moved is not known yet. */
function isThere(handle: HandleOf<'places'>, subject: Subject, place: number): boolean {
  const { from, axis } = handle;
  const at = placesOf(handle, subject)[place];
  if (!subject.alone || !at || from === undefined) return true;
  const spot = subject.picture.spots[from]?.find(([x, y]) => (axis === 'y' || Math.abs(x - at.x) < SAME) && (axis === 'x' || Math.abs(y - at.y) < SAME));
  return spot?.[2]?.includes(subject.alone.place) ?? true;
}

/** Places this near, mm, are one: those put by hand are rounded. */
const SAME = 0.01;

const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

const placed = ({ param, sets }: HandleOf<'places'>, places: readonly Point[]): AnyParamValues => ({ ...sets, [param]: places });

/** What a place of this handle is called: the output it comes from, as one of them; the parameter where it is only a part of that output. */
const placeName = ({ from, param }: HandleOf<'places'>, { shape }: Subject): string =>
  `one of the ${from?.includes('.') === false ? from : shape.params[param]?.label.toLowerCase() ?? param}`;

/** A parameter's value: the default where the document has none; undefined for a file that was not chosen. */
export function valueOf(node: GraphNode, shape: NodeShape, name: string): ParamValue | undefined {
  const param = shape.params[name];
  return Object.hasOwn(node.params, name) ? node.params[name] : param && param.kind !== 'file' ? param.default : undefined;
}

function shifted(node: GraphNode, shape: NodeShape, name: string, by: number): number {
  const value = Number(valueOf(node, shape, name) ?? 0) + by;
  return hundredth(within(shape.params[name], value));
}

const within = (param: Param | undefined, value: number): number => (param?.kind === 'number' ? Math.min(param.max, Math.max(param.min, value)) : value);

/** By hand nothing is put finer than 0.01 mm: a pixel is seldom less, and the numbers stay readable. */
const hundredth = (value: number): number => Math.round(value * 100) / 100 || 0;

const rounded = ({ x, y }: Point): Point => ({ x: hundredth(x), y: hundredth(y) });

/** Whether a layer shows what an output carries: layers are named by their port or by the type of value. */
function carries({ kind, name }: PictureLayer, port: string, type: string | undefined): boolean {
  return name === port || name === type || kind === type || (type === 'channel' && (kind === 'groove' || kind === 'strokes'));
}
