import type { AnyParamValues, GraphNode, Handle, NodeShape, Param, ParamValue, PointsParam } from '../../runtime/index.ts';
import type { PictureLayer } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import type { Point } from './view.ts';

/** The node shown, with all a handle needs to know of it. */
export interface Subject {
  readonly node: GraphNode;
  readonly shape: NodeShape;
  readonly picture: NodePicture;
}

type HandleOf<K extends Handle['kind']> = Extract<Handle, { kind: K }>;

/** What one kind of handle offers. Changes are told as parameters to set, counted from the subject as it was when the gesture began. */
interface HandleKind<H> {
  /** Single places that can be taken hold of. */
  readonly places: (handle: H, subject: Subject) => readonly Point[];
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
    places: placesOf,
    takes: () => false,
    moved: (handle, subject, place, by) =>
      placed(handle, placesOf(handle, subject).map((at, index) => (index === place ? rounded({ x: at.x + by.x, y: at.y + by.y }) : at))),
    added: (handle, subject, at) => placed(handle, [...placesOf(handle, subject), rounded(at)]),
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

/** Layers of the picture that this handle moves as a whole. */
export const layersOfHandle = (handle: Handle, subject: Subject): readonly PictureLayer[] =>
  subject.picture.outputs.layers.filter((layer) => kindOf(handle).takes(handle, layer, subject));

/** A change of parameters a gesture makes, and how the undo list names it. */
export interface HandleEdit {
  readonly says: string;
  readonly params: AnyParamValues;
}

export function moveEdit(handle: Handle, subject: Subject, place: number | undefined, by: Point): HandleEdit {
  return { says: `Move ${kindOf(handle).says(handle, subject)}`, params: kindOf(handle).moved(handle, subject, place, by) };
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
