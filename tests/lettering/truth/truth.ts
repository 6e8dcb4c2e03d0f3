import type { Outline } from '../../../src/artwork/artwork.ts';
import { type Path, polylinePath, type Region, samplePath } from '../../../src/geometry/index.ts';
import { meanWidth, type Pen, sweptRegion } from './sweep.ts';

/** An end of a stroke: free in the open, or on another stroke. */
export type TrueEnd = 'free' | 'joins';

/** A stroke that a tracing has to find. */
export interface TrueStroke {
  readonly path: Path;
  /** Both ends of an open stroke; a closed one has none. */
  readonly ends: readonly TrueEnd[];
}

/** Outlines together with the strokes they were made from. */
export interface Truth {
  readonly name: string;
  /** Mean width of its strokes, mm: what errors are shares of. */
  readonly width: number;
  readonly outlines: readonly Outline[];
  readonly strokes: readonly TrueStroke[];
  /** How many strokes are right, where more than one answer is. */
  readonly counts: readonly number[];
}

/** Greatest distance of the outlines' chords from the true sides, as a share of the width. */
export const OUTLINE_TOLERANCE = 0.001;

export const asOutline = (region: Region): Outline => ({ paths: region.loops.map((loop) => polylinePath(loop, true)), fillRule: 'nonzero' });

/** What a list of pens leaves, and their centre lines. An end listed in `joins` (stroke number, end number) lies on another stroke. */
export function drawn(name: string, pens: readonly Pen[], joins: readonly (readonly [stroke: number, end: 0 | 1])[] = [], fineness = 1): Truth {
  const width = pens.reduce((sum, pen) => sum + meanWidth(pen), 0) / pens.length;
  const strokes = pens.map((pen, i): TrueStroke => ({
    path: lineOf(pen),
    ends: pen.path.closed ? [] : ([0, 1] as const).map((end) => (joins.some(([stroke, at]) => stroke === i && at === end) ? 'joins' : 'free')),
  }));
  const region = sweptRegion(pens, OUTLINE_TOLERANCE * width * fineness);
  return { name, width, outlines: [asOutline(region)], strokes, counts: [strokes.length] };
}

/** Where a round pen of the stroke's width would run: it stops half a width short of a flat end. */
function lineOf({ path, law, ends: [first, last] }: Pen): Path {
  if (path.closed || (first === 'round' && last === 'round')) return path;
  const samples = samplePath(path, law(0.5) / 200);
  const [from, to] = [first === 'flat' ? law(0) / 2 : 0, samples.at(-1)!.distance - (last === 'flat' ? law(1) / 2 : 0)];
  return polylinePath(samples.filter(({ distance }) => distance >= from && distance <= to).map(({ point }) => point), false);
}
