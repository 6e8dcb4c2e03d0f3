import { edgeWidth } from './edges.ts';
import { evened } from './evening.ts';
import { averaged, blurred, type Grid, withoutOutliers } from './grid.ts';
import { PICTURE_LIMITS } from './limits.ts';
import { noiseOf } from './noise.ts';
import { fittedOutlines, roomFor } from './outlines.ts';
import { type Picture, type PictureRefusal, refused } from './picture.ts';
import { ringsAt } from './contour.ts';
import { scaleOf } from './scale.ts';
import { type Shape, shapesOf, strokeWidth, without } from './shapes.ts';
import type { PictureOptions, PictureTracing } from './tracing.ts';

/** Specks are smaller than a disc this share of the strokes' width across. */
const SPECK_SHARE = 0.25;

/** A picture in more pieces than this is no lettering, and would take minutes. */
const MOST_SHAPES = 3000;

/** Noise that blurring leaves, as a share of the step from ground to lettering: an edge then moves by few hundredths of a pixel. */
const CALM = 0.03;

/** Standard deviations of the blur in pixels: the least takes the steps off hard pixels, the most still leaves strokes of five pixels. */
const LEAST_BLUR = 0.9;
const MOST_BLUR = 1.6;

/** Ground and lettering nearer than this share of the lighter one are one tone. */
const LEAST_CONTRAST = 0.04;

/** Noise beyond this share of the step is no writing but grain: splitting nothing but noise gives 0.6. */
const MOST_NOISE = 0.45;

/** An edge wider than so many pixels is no edge of lettering; a blur of four pixels makes it five. */
const SOFTEST = 6;

/**
 * Finds the outlines of lettering in a picture: lighting evened out, noise calmed no more than it asks for, specks and pinholes taken
 * out, and the edge followed between the pixels. Time and memory grow with the pixels, `PICTURE_LIMITS.workedMegapixels` at most.
 */
export function tracePicture(picture: Picture, options: PictureOptions, checkpoint: (done: number) => void): PictureTracing | PictureRefusal {
  const factor = Math.ceil(Math.sqrt((picture.columns * picture.rows) / (PICTURE_LIMITS.workedMegapixels * 1e6)));
  const light = averaged({ columns: picture.columns, rows: picture.rows, values: picture.light }, factor);
  checkpoint(0.3);
  const even = evened(light, options.lettering);
  checkpoint(0.5);
  if (even === undefined) return nothing('one tone all over');
  const contrast = Math.abs(even.levels[0] - even.levels[1]) / Math.max(...even.levels);
  const noise = noiseOf(even.cover);
  if (contrast < LEAST_CONTRAST) return nothing(`a contrast of ${(100 * contrast).toFixed(1)} %`);
  if (noise > MOST_NOISE) return nothing('nothing but grain');
  // White noise that a Gaussian blur leaves is 1 / (2 sqrt(pi) sigma) of what it was.
  const cover = blurred(withoutOutliers(even.cover), Math.min(MOST_BLUR, Math.max(LEAST_BLUR, noise / (2 * Math.sqrt(Math.PI) * CALM))));
  checkpoint(0.65);
  return outlined({ picture, factor, cover, contrast, noise, rest: noiseOf(cover), lettering: even.lettering }, options, checkpoint);
}

const nothing = (found: string): PictureRefusal =>
  refused('lettering that stands out from its ground', found, 'Scan with more contrast, or crop the picture to the lettering.');

interface Looked {
  readonly picture: Picture;
  /** Pixels of the picture that make one pixel worked on, across and down. */
  readonly factor: number;
  readonly cover: Grid;
  readonly contrast: number;
  readonly noise: number;
  /** The noise that blurring has left. */
  readonly rest: number;
  readonly lettering: 'lighter' | 'darker';
}

function outlined(looked: Looked, options: PictureOptions, checkpoint: (done: number) => void): PictureTracing | PictureRefusal {
  const { picture, factor, cover, contrast, noise, rest, lettering } = looked;
  const threshold = options.threshold === 0 ? 0.5 : options.threshold;
  const shapes = shapesOf(cover, threshold);
  const strokePixels = strokeWidth(shapes);
  if (edgeWidth(cover, shapes) > SOFTEST) return nothing('only a shade without edges');
  const usual = smaller(shapes, SPECK_SHARE * strokePixels);
  const scale = scaleOf({ picture, factor, lettering: shapes.filter((shape) => shape.isInk && !usual.has(shape)) }, options);
  if ('ok' in scale) return scale;
  const small = options.speckSize === 0 ? usual : smaller(shapes, options.speckSize / scale.across);
  const kept = shapes.filter((shape) => shape.isInk && !small.has(shape));
  if (kept.length === 0) return nothing('nothing larger than a speck');
  if (kept.length > MOST_SHAPES) return refused(`at most ${MOST_SHAPES} shapes`, `${kept.length} of them`, 'Raise the size of specks, or clean the picture.');
  const rings = ringsAt(without(cover, [...small]), threshold);
  checkpoint(0.8);
  const outlines = fittedOutlines(rings, scale, { room: options.tolerance === 0 ? roomFor(rest) * scale.across : options.tolerance, checkpoint });
  const specks = [...small].filter(({ isInk }) => isInk).length;
  return {
    ok: true, outlines,
    seen: {
      columns: picture.columns, rows: picture.rows, scale, strokePixels, contrast, noise, lettering,
      specks, pinholes: small.size - specks, shapes: kept.length,
      cutOff: kept.flatMap(({ edge }) => (edge === undefined ? [] : [scale.place(edge)])),
    },
  };
}

/** Lettering, and holes in it, that cover less than a disc `across` pixels wide. */
function smaller(shapes: readonly Shape[], across: number): ReadonlySet<Shape> {
  const least = (Math.PI / 4) * across * across;
  return new Set(shapes.filter(({ pixels, isInk, edge }) => pixels < least && (isInk || edge === undefined)));
}
