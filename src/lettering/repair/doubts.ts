import type { Stroke } from '../../artwork/artwork.ts';
import { distance, type Point } from '../../geometry/index.ts';

/** Doubts this many widths from where a person decided are settled. */
const NEAR = 1.5;

/** What is left in doubt is said by the doubts; all that is not was decided by at least half the margin that makes sure. */
const UNDOUBTED = 0.5;

/** Strokes without the doubts near some places; a stroke left without any is as sure as what was never doubted. */
export function withoutDoubts(strokes: readonly Stroke[], places: readonly Point[], pen: number): readonly Stroke[] {
  if (places.length === 0) return strokes;
  return strokes.map((stroke) => {
    const { doubts = [], confidence } = stroke;
    const left = doubts.filter(({ at }) => places.every((place) => distance(at, place) > NEAR * pen));
    if (left.length === doubts.length) return stroke;
    return { ...stroke, doubts: left, ...(confidence !== undefined && left.length === 0 && { confidence: Math.max(confidence, UNDOUBTED) }) };
  });
}
