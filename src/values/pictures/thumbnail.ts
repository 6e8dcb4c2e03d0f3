import { type Box, boxSize, unionBoxes } from '../../geometry/index.ts';
import type { Carried, LayerKind, Picture, PictureItem, PictureLayer } from '../picture.ts';
import { type Pen, coarsePen } from './pen.ts';
import { composed, pathData, shaped } from './picture-of.ts';
import { type ShapedLayer, arrangeLayers } from './shapes.ts';

/** Path data a thumbnail should stay under, characters: one that does not is drawn more coarsely. */
const MOST_CHARACTERS = 8000;
/** How often the tolerance is doubled for that. */
const MOST_DOUBLINGS = 4;
const MOST_LINES = 12;
const LONGEST_LINE = 120;

/** Drawn as lines: what lies in such a layer needs no item of its own to look the same. */
const LINES: ReadonlySet<LayerKind> = new Set(['strokes', 'passes', 'rapids', 'seams']);

/** Values drawn together, as small as `dots` dots across show them: one item for all lines of a layer, no titles, short lines of text. */
export function thumbnailOf(carried: readonly Carried[], dots: number): Picture {
  const shapes = arrangeLayers(carried.flatMap((one) => shaped(one).layers));
  const box = unionBoxes(carried.map((one) => shaped(one).box));
  const picture = composed(box ? coarseLayers(shapes, box, dots) : [], carried, MOST_LINES);
  return { ...picture, lines: picture.lines.map((line) => (line.length > LONGEST_LINE ? `${line.slice(0, LONGEST_LINE - 1)}…` : line)) };
}

function coarseLayers(shapes: readonly ShapedLayer[], box: Box, dots: number): PictureLayer[] {
  const { width, height } = boxSize(box);
  // A single point has no size to go by.
  let tolerance = Math.max(width, height, 1e-3) / dots;
  let layers = drawAll(shapes, coarsePen(tolerance));
  for (let i = 0; i < MOST_DOUBLINGS && characters(layers) > MOST_CHARACTERS; i++) {
    tolerance *= 2;
    layers = drawAll(shapes, coarsePen(tolerance));
  }
  return layers;
}

function drawAll(shapes: readonly ShapedLayer[], pen: Pen): PictureLayer[] {
  return shapes.map(({ kind, name, items }) => {
    const drawn = items.map(({ shape, fillRule }): PictureItem => ({ d: pathData(shape, pen), ...(fillRule && { fillRule }) }));
    const different = [...new Map(drawn.map((item) => [item.d, item])).values()];
    return { kind, name, items: LINES.has(kind) ? [{ d: different.map(({ d }) => d).join('') }] : different };
  });
}

function characters(layers: readonly PictureLayer[]): number {
  return layers.reduce((sum, { items }) => sum + items.reduce((inner, { d }) => inner + d.length, 0), 0);
}
