import { type Box, type Loop, type Path, type Point, loopsBounds, pathBounds, unionBoxes } from '../../geometry/index.ts';
import type { PlacedImage } from '../../lit/image.ts';
import { LAYER_ORDER } from '../layer-kinds.ts';
import type { LayerKind } from '../picture.ts';

/** Something to draw, still as curves: how finely they are written is for a pen to say. Lengths mm. */
export interface ShapedItem {
  readonly shape: { readonly paths: readonly Path[] } | { readonly loops: readonly Loop[] };
  readonly fillRule?: 'nonzero';
  /** Called only where titles are shown: some of them measure. */
  readonly title?: () => string;
  /** Whether it matters which way the first path runs. */
  readonly directed?: true;
  /** See PictureItem. */
  readonly label?: string;
  readonly setUps?: readonly number[];
  readonly run?: number;
  /** Fills the box of the shape. */
  readonly image?: PlacedImage;
  readonly fixed?: true;
}

export interface ShapedLayer {
  readonly kind: LayerKind;
  readonly name: string;
  readonly items: readonly ShapedItem[];
}

export function circlePath({ x, y }: Point, radius: number): Path {
  const start = { x: x + radius, y };
  return { start, segments: [{ kind: 'arc', end: start, centre: { x, y }, clockwise: false }], closed: true };
}

export function boxLoop({ minX, minY, maxX, maxY }: Box): Loop {
  return [{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }];
}

export function rectangleLoop(width: number, height: number): Loop {
  return boxLoop({ minX: 0, minY: 0, maxX: width, maxY: height });
}

/** Layers of one kind and name as one, in drawing order; layers with nothing in them are left out. */
export function arrangeLayers<I>(layers: readonly { readonly kind: LayerKind; readonly name: string; readonly items: readonly I[] }[]): {
  readonly kind: LayerKind; readonly name: string; readonly items: readonly I[];
}[] {
  const merged = new Map<string, { kind: LayerKind; name: string; items: readonly I[] }>();
  for (const layer of layers) {
    const key = layerKey(layer);
    const known = merged.get(key);
    if (known !== undefined) merged.set(key, { ...known, items: [...known.items, ...layer.items] });
    else if (layer.items.length > 0) merged.set(key, layer);
  }
  return [...merged.values()].sort((a, b) => LAYER_ORDER.indexOf(a.kind) - LAYER_ORDER.indexOf(b.kind));
}

export function layerKey({ kind, name }: { readonly kind: LayerKind; readonly name: string }): string {
  return `${kind} ${name}`;
}

/** The box around everything in the layers; undefined when there is nothing. */
export function boxOfLayers(layers: readonly ShapedLayer[]): Box | undefined {
  return unionBoxes(layers.flatMap(({ items }) => items.flatMap(({ shape }) =>
    ('loops' in shape ? [loopsBounds(shape.loops)] : shape.paths.map(pathBounds)))));
}
