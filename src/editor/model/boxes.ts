import type { GraphDocument } from '../../runtime/index.ts';

/** Extent of a card in canvas units. */
export interface Size {
  readonly width: number;
  readonly height: number;
}
/** Extents of cards by id, as they are drawn now. A card not in it counts as `CARD`. */
export type Sizes = ReadonlyMap<string, Size>;

/** A folded card. */
export const CARD: Size = { width: 208, height: 196 };
/** Space kept between cards side by side, wide enough for two port words and a piece of wire. */
export const GAP = { x: 148, y: 48 } as const;

/** A rectangle on the canvas: x right, y down. */
export interface Box extends Size {
  readonly x: number;
  readonly y: number;
}

export const sizeOf = (sizes: Sizes, id: string): Size => sizes.get(id) ?? CARD;

export function boxAt([x, y]: readonly [number, number], { width, height }: Size): Box {
  return { x, y, width, height };
}

/** Whether two boxes share more than an edge, each grown by `gap`. */
export const overlap = (a: Box, b: Box, gap = 0): boolean =>
  a.x < b.x + b.width + gap && b.x < a.x + a.width + gap && a.y < b.y + b.height + gap && b.y < a.y + a.height + gap;

/** The smallest box around all; undefined around none. */
export function around(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b));
  const [x, y] = [least(boxes.map((box) => box.x)), least(boxes.map((box) => box.y))];
  return { x, y, width: most(boxes.map((box) => box.x + box.width)) - x, height: most(boxes.map((box) => box.y + box.height)) - y };
}

/** The cards as they lie: nodes outside folded groups, and folded groups at the upper left corner of their members. */
export function cardBoxes({ nodes, groups }: GraphDocument, sizes: Sizes): ReadonlyMap<string, Box> {
  const folded = groups.filter(({ collapsed, nodes: members }) => collapsed && members.length > 0);
  const hidden = new Set(folded.flatMap((group) => group.nodes));
  const boxes = new Map(nodes.flatMap(({ id, position }): [string, Box][] => (hidden.has(id) ? [] : [[id, boxAt(position, sizeOf(sizes, id))]])));
  const positions = new Map(nodes.map(({ id, position }) => [id, position]));
  for (const { id, nodes: members } of folded) {
    const corner = around(members.flatMap((member) => (positions.has(member) ? [boxAt(positions.get(member)!, CARD)] : [])));
    if (corner !== undefined) boxes.set(id, boxAt([corner.x, corner.y], sizeOf(sizes, id)));
  }
  return boxes;
}

/** Where a box can lie nearest to where it is wanted, clear of the others. Looks along their edges, so it always finds a place. */
export function freePlace(others: readonly Box[], wanted: Box): readonly [number, number] {
  const near = others.filter((box) => overlap(box, { ...wanted, x: wanted.x - REACH, y: wanted.y - REACH, width: wanted.width + 2 * REACH, height: wanted.height + 2 * REACH }));
  const clear = ([x, y]: readonly [number, number]) => !near.some((box) => overlap(box, { ...wanted, x, y }, GAP.y - 1));
  if (clear([wanted.x, wanted.y])) return [wanted.x, wanted.y];
  const xs = [wanted.x, ...near.flatMap((box) => [box.x + box.width + GAP.y, box.x - wanted.width - GAP.y])];
  const ys = [wanted.y, ...near.flatMap((box) => [box.y + box.height + GAP.y, box.y - wanted.height - GAP.y])];
  const distance = ([x, y]: readonly [number, number]) => Math.hypot(x - wanted.x, y - wanted.y);
  const places = xs.flatMap((x) => ys.map((y): readonly [number, number] => [x, y])).sort((a, b) => distance(a) - distance(b));
  return places.find(clear) ?? [wanted.x, wanted.y];
}

/** How far around the wanted place other cards are looked at: beyond it a clear place is found sooner than all could be compared. */
const REACH = 1200;
