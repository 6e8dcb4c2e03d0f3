import type { LayerKind, PictureItem, PictureLayer } from '../../values/picture.ts';
import { type Near, distance, nearestOn } from './near.ts';
import { shapeOf } from './shapes.ts';
import { type Point, middleOf } from './view.ts';

/** A place that a measurement holds on to, and what it is. */
export interface Snap {
  readonly at: Point;
  readonly says: string;
}

/** A place of an item a person may mean exactly. */
interface Mark extends Snap {
  /** Marks that say more come first among those near enough. */
  readonly rank: 0 | 1;
}

const marks = new WeakMap<PictureItem, readonly Mark[]>();

/** What the pointer holds on to within `within` mm: a start or a hole's centre, else an end of a piece, else the nearest place on a line. */
export function snapTo(layers: readonly PictureLayer[], to: Point, within: number): Snap | undefined {
  const found = layers.flatMap((layer) => layer.items.flatMap((item) => bestMark(layer, item, to, within)));
  const best = found.sort((a, b) => a.rank - b.rank || distance(a.at, to) - distance(b.at, to))[0];
  if (best) return { at: best.at, says: best.says };
  const near = layers.flatMap((layer) => layer.items.flatMap((item) => nearOf(layer, item, to, within)))
    .sort((a, b) => a.distance - b.distance)[0];
  return near && { at: near.at, says: `on ${near.on}` };
}

function bestMark(layer: PictureLayer, item: PictureItem, to: Point, within: number): Mark[] {
  const { box } = shapeOf(item);
  if (!box || to.x < box.minX - within || to.x > box.maxX + within || to.y < box.minY - within || to.y > box.maxY + within) return [];
  return marksOf(layer, item).filter(({ at }) => distance(at, to) <= within);
}

function nearOf(layer: PictureLayer, item: PictureItem, to: Point, within: number): (Near & { on: string })[] {
  const near = nearestOn(shapeOf(item), to, within);
  return near ? [{ ...near, on: item.title ?? layer.name }] : [];
}

function marksOf(layer: PictureLayer, item: PictureItem): readonly Mark[] {
  const known = marks.get(item);
  if (known) return known;
  const list = findMarks(layer, item);
  marks.set(item, list);
  return list;
}

/** Kinds of layer of which the middles count, not the edges. */
const ROUND: ReadonlySet<LayerKind> = new Set(['holes', 'dowels', 'pins', 'hold-downs']);

function findMarks(layer: PictureLayer, item: PictureItem): Mark[] {
  const name = item.title ?? layer.name;
  const { chains, box } = shapeOf(item);
  const centre: Mark[] = ROUND.has(layer.kind) && box ? [{ at: middleOf(box), says: `centre of ${name}`, rank: 0 }] : [];
  if (ROUND.has(layer.kind)) return centre;
  const start: Mark[] = item.start ? [{ at: { x: item.start.at[0], y: item.start.at[1] }, says: `start of ${name}`, rank: 0 }] : [];
  const points = chains.flatMap(({ pieces }) => [pieces[0]!.from, ...pieces.map(({ to }) => to)]);
  return [...start, ...points.map((at): Mark => ({ at, says: `point of ${name}`, rank: 1 }))];
}
