import type { LayerKind, PictureItem, PictureLayer, PictureSetUp, PictureSetUps } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import { shapeOf } from './shapes.ts';
import { type Box, type Frame, type Point, middleOf } from './view.ts';

/** A set-up that is looked at by itself, as its sheet lies on the machine. Places stay in drawing coordinates; only what is read of them is told in program coordinates. */
export interface Alone {
  /** Its place in the tiling. */
  readonly place: number;
  readonly setUp: PictureSetUp;
  readonly setUps: PictureSetUps;
}

/** The set-up looked at alone, where the picture has the one that was chosen. */
export function aloneOf(picture: NodePicture | undefined, chosen: number | undefined): Alone | undefined {
  const setUp = chosen === undefined ? undefined : picture?.setUps?.list[chosen];
  return picture?.setUps && setUp ? { place: chosen!, setUp, setUps: picture.setUps } : undefined;
}

/** Layers of what is planned and cut: clear of a set-up's own window there is nothing of it yet, or what earlier ones left. */
const WORK: ReadonlySet<LayerKind> = new Set(['outlines', 'strokes', 'region', 'groove', 'holes', 'dowels', 'tabs', 'passes', 'rapids', 'lit', 'unlit', 'wires']);
/** What stays in the sheet once it is cut. */
const STAYS: ReadonlySet<LayerKind> = new Set(['holes', 'dowels', 'passes', 'tabs']);
/** Beneath everything, or told by how machine and set-up are drawn. */
const LEFT_OUT: ReadonlySet<LayerKind> = new Set(['travel', 'sheet', 'tiles']);

/** A layer as it is to be seen in one set-up: what is done or is there in it, what earlier ones did, and what belongs to none alone. */
export interface Share {
  readonly own: PictureLayer;
  readonly earlier: PictureLayer;
  /** Seen within the windows of this set-up and of those before it. */
  readonly common: PictureLayer;
}

const shares = new WeakMap<PictureLayer, Map<PictureSetUp, Share>>();

/** Remembered for as long as the layer is, as the paths drawn of it are. */
export function shareOf(layer: PictureLayer, alone: Alone): Share {
  const known = shares.get(layer) ?? new Map<PictureSetUp, Share>();
  shares.set(layer, known);
  const found = known.get(alone.setUp) ?? makeShare(layer, alone);
  known.set(alone.setUp, found);
  return found;
}

function makeShare(layer: PictureLayer, alone: Alone): Share {
  const told = LEFT_OUT.has(layer.kind) ? [] : layer.items.map((item) => ({ item, part: partOf(layer.kind, item, alone) }));
  const share = (wanted: keyof Share): PictureLayer => ({ ...layer, items: told.filter(({ part }) => part === wanted).map(({ item }) => item) });
  return { own: share('own'), earlier: share('earlier'), common: share('common') };
}

function partOf(kind: LayerKind, item: PictureItem, { place, setUps }: Alone): keyof Share | undefined {
  const among = item.setUps ?? (kind === 'holes' ? ownersOf(item, setUps) : undefined);
  if (among === undefined) return WORK.has(kind) ? 'common' : 'own';
  if (among.includes(place)) return 'own';
  return STAYS.has(kind) && among.some((one) => one < place) ? 'earlier' : undefined;
}

/** A hole is made by the one set-up whose part of the sheet its middle lies in. */
function ownersOf(item: PictureItem, { list }: PictureSetUps): readonly number[] | undefined {
  const { box } = shapeOf(item);
  const owner = box ? placeOn(list, middleOf(box)) : -1;
  return owner === -1 ? undefined : [owner];
}

export const inBox = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point): boolean => x >= minX && x <= maxX && y >= minY && y <= maxY;

/** Place of the set-up that a place of the sheet belongs to; -1 for one beside all of them. */
export const placeOn = (list: readonly PictureSetUp[], at: Point): number => list.findIndex(({ core }) => inBox(core, at));

/** Layers of which something is to be seen, as they are seen: all of them unless a set-up is looked at alone. */
export function layersSeen(layers: readonly PictureLayer[], alone: Alone | undefined): readonly PictureLayer[] {
  if (!alone) return layers;
  return layers.flatMap((layer) => (layer.kind === 'sheet' ? [layer] : [...partsSeen([layer], alone, ['earlier']), ...partsSeen([layer], alone, ['common', 'own'])]));
}

/** Some parts of layers in a set-up, those with nothing in them left out. */
export function partsSeen(layers: readonly PictureLayer[], alone: Alone, parts: readonly (keyof Share)[]): readonly PictureLayer[] {
  return layers.flatMap((layer) => parts.map((part) => shareOf(layer, alone)[part])).filter(({ items }) => items.length > 0);
}

/** A place in drawing coordinates as it is read: in program coordinates of the set-up looked at alone. */
export function read({ x, y }: Point, alone: Alone | undefined): Point {
  const [dx, dy] = alone?.setUp.shift ?? [0, 0];
  return { x: x - dx, y: y - dy };
}

/** The frame in which program coordinates take the place of those of the drawing. */
export function frameOnMachine(frame: Frame, alone: Alone | undefined): Frame {
  return { ...frame, ...read(frame, alone) };
}

/** A box of program coordinates where it lies on the drawing. */
export function boxOnSheet({ minX, minY, maxX, maxY }: Box, { setUp: { shift: [dx, dy] } }: Alone): Box {
  return { minX: minX + dx, minY: minY + dy, maxX: maxX + dx, maxY: maxY + dy };
}

/** How the sheet lies against the first set-up, in words. */
export function lyingWords({ place, setUp: { shift: [x, y] }, setUps: { list } }: Alone): string {
  const [fromX, fromY] = place === 0 ? [0, 0] : list[place - 1]!.shift;
  const ways = [wayWords(x - fromX, 'left', 'right'), wayWords(y - fromY, 'to the front', 'to the back')].filter((words) => words !== undefined);
  if (place === 0) return 'The sheet’s lower left corner lies at X0 Y0.';
  return ways.length === 0 ? `The sheet lies where it lay in ${list[place - 1]!.name}.` : `After ${list[place - 1]!.name} the sheet is moved ${ways.join(' and ')}.`;
}

function wayWords(by: number, on: string, back: string): string | undefined {
  return by === 0 ? undefined : `${String(Math.round(Math.abs(by) * 100) / 100)} mm ${by > 0 ? on : back}`;
}

/** "Set-up 2": a name as it begins a button's words. */
export const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
