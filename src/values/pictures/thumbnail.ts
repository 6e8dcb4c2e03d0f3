import { type Box, boxSize, unionBoxes } from '../../geometry/index.ts';
import type { Carried, LayerKind, Picture, PictureItem, PictureLayer } from '../picture.ts';
import { composed, shaped } from './picture-of.ts';
import { type Polyline, coarser, linesData, polylineData, polylinesOf } from './polyline.ts';
import { type ShapedLayer, arrangeLayers } from './shapes.ts';

/** Path data a thumbnail should stay under, characters: one that does not is drawn more coarsely. */
const MOST_CHARACTERS = 8000;
/** How often the tolerance is doubled for that. */
const MOST_DOUBLINGS = 4;
const MOST_LINES = 12;
const LONGEST_LINE = 120;

/** Drawn as lines: what lies in such a layer needs no item of its own to look the same. */
const LINES: ReadonlySet<LayerKind> = new Set(['strokes', 'passes', 'rapids', 'seams', 'unlit', 'lit', 'wires']);

/** Values drawn together, as small as `dots` dots across show them: one item for all lines of a layer, no titles, short lines of text. */
export function thumbnailOf(carried: readonly Carried[], dots: number): Picture {
  const shapes = calm(arrangeLayers(carried.flatMap((one) => shaped(one).layers)));
  const box = unionBoxes(carried.map((one) => shaped(one).box));
  const picture = composed(box ? coarseLayers(shapes, box, dots) : [], carried, MOST_LINES);
  return { ...picture, lines: picture.lines.map((line) => (line.length > LONGEST_LINE ? `${line.slice(0, LONGEST_LINE - 1)}…` : line)) };
}

/** Marks upon what is drawn would only clutter so small a picture; alone they are what there is to see. */
function calm<L extends Pick<PictureLayer, 'kind'>>(layers: readonly L[]): readonly L[] {
  const drawn = layers.filter(({ kind }) => !MARKS.has(kind));
  return drawn.length > 0 ? drawn : layers;
}

const MARKS: ReadonlySet<LayerKind> = new Set(['junctions', 'doubts']);

/** An item on its way to becoming small. */
interface CoarseItem extends Pick<PictureItem, 'fillRule' | 'image'> {
  readonly lines: readonly Polyline[];
}

interface CoarseLayer extends Omit<PictureLayer, 'items'> {
  readonly items: readonly CoarseItem[];
}

function coarseLayers(shapes: readonly ShapedLayer[], box: Box, dots: number): PictureLayer[] {
  const { width, height } = boxSize(box);
  // A single point has no size to go by.
  let tolerance = Math.max(width, height, 1e-3) / dots;
  let layers = shapes.map((layer): CoarseLayer => withLines(withSmallImages(layer), ({ shape }) => polylinesOf(shape, tolerance)));
  let drawn = layers.map((layer) => drawLayer(layer, tolerance));
  for (let i = 0; i < MOST_DOUBLINGS && characters(drawn) > MOST_CHARACTERS; i++) {
    tolerance *= 2;
    layers = layers.map((layer) => withLines(layer, ({ lines }) => lines.map((line) => coarser(line, tolerance))));
    drawn = layers.map((layer) => drawLayer(layer, tolerance));
  }
  return drawn;
}

const withSmallImages = (layer: ShapedLayer) => ({
  ...layer, items: layer.items.map(({ shape, fillRule, image }) => ({ shape, ...(fillRule && { fillRule }), ...(image && { image: { png: image.small, box: image.box } }) })),
});

function withLines<I extends Pick<PictureItem, 'fillRule' | 'image'>>(
  { kind, name, items }: Omit<PictureLayer, 'items'> & { readonly items: readonly I[] }, linesOf: (item: I) => readonly Polyline[],
): CoarseLayer {
  return { kind, name, items: items.map((item) => ({ lines: linesOf(item), ...(item.fillRule && { fillRule: item.fillRule }), ...(item.image && { image: item.image }) })) };
}

/** What lies on the same dots is drawn once. */
function drawLayer({ kind, name, items }: CoarseLayer, tolerance: number): PictureLayer {
  if (LINES.has(kind)) return { kind, name, items: [{ d: linesData(items.flatMap(({ lines }) => lines), tolerance) }] };
  const data = (lines: readonly Polyline[]) => lines.map((line) => polylineData(line, tolerance)).join('');
  const drawn = items.map(({ lines, fillRule, image }): PictureItem => ({ d: data(lines), ...(fillRule && { fillRule }), ...(image && { image }) }));
  return { kind, name, items: [...new Map(drawn.map((item) => [item.d, item])).values()] };
}

function characters(layers: readonly PictureLayer[]): number {
  return layers.reduce((sum, { items }) => sum + items.reduce((inner, { d }) => inner + d.length, 0), 0);
}
