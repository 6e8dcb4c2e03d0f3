import { type Box, endTangents, pathSegmentsWithStarts, type Path, unionBoxes } from '../../geometry/index.ts';
import { describeValue } from '../describe.ts';
import type { Carried, Picture, PictureItem, PictureLayer } from '../picture.ts';
import { loopData, pathData } from './pen.ts';
import { rememberedByValue } from './remember.ts';
import { shapeValue } from './shape-value.ts';
import { type ShapedItem, type ShapedLayer, arrangeLayers, boxOfLayers } from './shapes.ts';
import { writeLines } from './write-lines.ts';

/** Most lines of text in a picture. */
const MOST_LINES = 400;

/** A value as curves, with the box around them. */
export const shaped = rememberedByValue((carried): { readonly layers: readonly ShapedLayer[]; readonly box: Box | undefined } => {
  const layers = shapeValue(carried);
  return { layers, box: boxOfLayers(layers) };
});

/** Values drawn together, exactly. Each value is drawn once, however often it is asked for. */
export function pictureOf(carried: readonly Carried[]): Picture {
  return composed(arrangeLayers(carried.flatMap(exactLayers)), carried, MOST_LINES);
}

const exactLayers = rememberedByValue((carried) => shaped(carried).layers.map((layer): PictureLayer => ({
  kind: layer.kind, name: layer.name, items: layer.items.map(exactItem),
})));

/** Puts layers, the lines of the values and the box around them together; values that show nothing at all are told in a line each. */
export function composed(layers: readonly PictureLayer[], carried: readonly Carried[], mostLines: number): Picture {
  const box = unionBoxes(carried.map((one) => shaped(one).box));
  const written = carried.flatMap(writeLines);
  const lines = layers.length > 0 || written.length > 0 ? written : carried.map(({ type, value }) => describeValue(type, value as never));
  return { layers, lines: shortened(lines, mostLines), ...(box && { box }) };
}

function shortened(lines: readonly string[], most: number): readonly string[] {
  return lines.length <= most ? lines : [...lines.slice(0, most - 1), `and ${lines.length - most + 1} more`];
}

function exactItem({ shape, fillRule, title, directed, label, setUps, run, image, fixed }: ShapedItem): PictureItem {
  const start = directed && 'paths' in shape ? startOf(shape.paths[0]) : undefined;
  return {
    d: shapeData(shape), ...(fillRule && { fillRule }), ...(title && { title: title() }), ...(start && { start }),
    ...(label !== undefined && { label }), ...(setUps && { setUps }), ...(run !== undefined && { run }), ...(image && { image: { png: image.png, box: image.box } }), ...(fixed && { fixed }),
  };
}

function shapeData(shape: ShapedItem['shape']): string {
  return ('loops' in shape ? shape.loops.map(loopData) : shape.paths.map(pathData)).join('');
}

/** Where a path begins and which way it sets off; undefined for a single point. */
function startOf(path: Path | undefined): PictureItem['start'] | undefined {
  for (const { start, segment } of path === undefined ? [] : pathSegmentsWithStarts(path)) {
    const { first } = endTangents({ start, segments: [segment], closed: false });
    if (first.x !== 0 || first.y !== 0) return { at: [path!.start.x, path!.start.y], along: [first.x, first.y] };
  }
  return undefined;
}
