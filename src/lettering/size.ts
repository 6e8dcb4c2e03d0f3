import type { Outline } from '../artwork/artwork.ts';
import { type Affine, applyToPath, applyToPoint, boxOfPoints, type Path, type Point } from '../geometry/index.ts';
import type { StrokeEnd, TracedStroke, Tracing } from './types.ts';

/** Drawings whose size and place lie between these, mm, are traced as they are. */
const [SMALLEST, LARGEST] = [20, 50_000];

/** A drawing far outside is traced at about this size, mm. */
const USUAL = 1024;

/** A drawing brought to a size that the kernel's grid suits, and the way back for what was traced from it. */
export interface Sized {
  readonly outlines: readonly Outline[];
  /** How many times larger it was made. */
  readonly factor: number;
  readonly back: (tracing: Tracing) => Tracing;
}

export function usualSize(outlines: readonly Outline[]): Sized {
  const box = boxOfPoints(outlines.flatMap(({ paths }) => paths.flatMap(({ start, segments }) => [start, ...segments.map(({ end }) => end)])));
  const as = { outlines, factor: 1, back: (tracing: Tracing) => tracing };
  if (box === undefined) return as;
  const size = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  const far = Math.max(Math.abs(box.minX), Math.abs(box.maxX), Math.abs(box.minY), Math.abs(box.maxY));
  if (!(size > 0) || (size >= SMALLEST && far <= LARGEST)) return as;
  // A power of two: the figures keep all their digits.
  const factor = size >= SMALLEST && size <= LARGEST ? 1 : 2 ** Math.round(Math.log2(USUAL / size));
  const there: Affine = [factor, 0, 0, factor, -box.minX * factor, -box.minY * factor];
  const back: Affine = [1 / factor, 0, 0, 1 / factor, box.minX, box.minY];
  const moved = outlines.map((outline) => ({ ...outline, paths: outline.paths.map((path) => applyToPath(there, path)) }));
  return { outlines: moved, factor, back: (tracing) => movedTracing(tracing, back, 1 / factor, outlines) };
}

function movedTracing({ strokes, junctions, regions, uncovered, crumbs }: Tracing, by: Affine, factor: number, outlines: readonly Outline[]): Tracing {
  const place = (point: Point): Point => applyToPoint(by, point);
  const line = (path: Path): Path => applyToPath(by, path);
  const ended = (end: StrokeEnd): StrokeEnd => (end.kind === 'joins' ? { ...end, at: place(end.at) } : end);
  return {
    strokes: strokes.map((stroke): TracedStroke => ({
      ...stroke, path: line(stroke.path), ends: [ended(stroke.ends[0]), ended(stroke.ends[1])],
      widths: stroke.widths.map(({ along, width }) => ({ along: along * factor, width: width * factor })),
      doubts: stroke.doubts.map((doubt) => ({ ...doubt, at: place(doubt.at) })),
    })),
    junctions: junctions.map((junction) => ({ ...junction, at: place(junction.at), radius: junction.radius * factor })),
    regions: regions.map((one) => ({ ...one, at: place(one.at), region: { loops: one.region.loops.map((loop) => loop.map(place)) } })),
    uncovered: uncovered.map(place), outlines, crumbs,
  };
}
