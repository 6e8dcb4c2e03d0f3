import type { NodePicture } from '../worker/protocol.ts';
import type { PictureItem, PictureLayer } from '../../values/picture.ts';
import { type Chain, pieceBox, readPath } from './path.ts';
import { type Box, unite } from './view.ts';

/** An item's path, read once. */
export interface Shape {
  readonly chains: readonly Chain[];
  readonly box: Box | undefined;
}

const shapes = new WeakMap<PictureItem, Shape>();

/** The item's path as lines and cubics; remembered for as long as the item is. */
export function shapeOf(item: PictureItem): Shape {
  const known = shapes.get(item);
  if (known) return known;
  const chains = readPath(item.d);
  const shape = { chains, box: unite(chains.flatMap(({ pieces }) => pieces.map(pieceBox))) };
  shapes.set(item, shape);
  return shape;
}

/** All layers of a node's picture: what came in, then what leaves it. */
export const layersOf = (picture: NodePicture): readonly PictureLayer[] => [...picture.inputs, ...picture.outputs.layers];

export function boxOfLayers(layers: readonly PictureLayer[]): Box | undefined {
  return unite(layers.flatMap(({ items }) => items.flatMap((item) => shapeOf(item).box ?? [])));
}

const boxes = new WeakMap<NodePicture, Box | undefined>();

/** Around everything a node's picture shows. */
export function contentBox(picture: NodePicture): Box | undefined {
  if (!boxes.has(picture)) {
    const outputs = picture.outputs.box;
    const inputs = boxOfLayers(picture.inputs);
    boxes.set(picture, unite([outputs ?? boxOfLayers(picture.outputs.layers), inputs].filter((box) => box !== undefined)));
  }
  return boxes.get(picture);
}

/** Around the sheet, where the picture has one or lies on one; else around all of it. */
export function sheetBox(picture: NodePicture, ground: readonly PictureLayer[]): Box | undefined {
  return boxOfLayers([...ground, ...layersOf(picture)].filter(isGround)) ?? contentBox(picture);
}

/** Whether a layer is the sheet itself, beneath everything else. */
export const isGround = ({ kind }: PictureLayer): boolean => kind === 'sheet';
