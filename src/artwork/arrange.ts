import { type Affine, applyToPath, applyToPoint, determinant, isSimilarity } from '../geometry/transform.ts';
import { type Box, unionBoxes } from '../geometry/box.ts';
import { pathBounds, pathLength } from '../geometry/measure.ts';
import type { Outline, Stroke } from './artwork.ts';

/** Strokes and outlines that are moved together. */
export interface Arrangement {
  readonly strokes: readonly Stroke[];
  readonly outlines: readonly Outline[];
}

/** The box of all centre lines and outlines; pen widths do not count. Undefined when there is nothing. */
export function arrangementBox({ strokes, outlines }: Arrangement): Box | undefined {
  const paths = [...strokes.map(({ path }) => path), ...outlines.flatMap(({ paths: loops }) => loops)];
  return unionBoxes(paths.map(pathBounds));
}

/** Applies one affine transform to all; a pen's width grows with the square root of the area factor. */
export function transformArrangement({ strokes, outlines }: Arrangement, transform: Affine): Arrangement {
  const growth = Math.sqrt(Math.abs(determinant(transform)));
  return {
    strokes: strokes.map((stroke) => transformStroke(stroke, transform, growth)),
    outlines: outlines.map((outline) => ({ ...outline, paths: outline.paths.map((path) => applyToPath(transform, path)) })),
  };
}

/**
 * What was traced goes along: places, widths, and lengths along the stroke, which are exact where the transform scales evenly and else grow
 * as the whole stroke does. What a stroke has beyond that, such as on which others it ends, speaks of the strokes as they were and stays behind.
 */
function transformStroke({ path, width, source, widths, confidence, doubts }: Stroke, transform: Affine, growth: number): Stroke {
  const moved = applyToPath(transform, path);
  const longer = widths && !isSimilarity(transform) ? pathLength(moved) / (pathLength(path) || 1) : growth;
  return {
    path: moved,
    ...(width !== undefined && { width: width * growth }),
    ...(source !== undefined && { source }),
    ...(widths && { widths: widths.map(({ along, width: here }) => ({ along: along * longer, width: here * growth })) }),
    ...(confidence !== undefined && { confidence }),
    ...(doubts && { doubts: doubts.map((doubt) => ({ ...doubt, at: applyToPoint(transform, doubt.at) })) }),
  };
}
