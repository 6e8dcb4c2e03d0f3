import { distance, endTangents, type Path, pathEnd, type Point, reversePath, scale, type Vector } from '../../geometry/index.ts';
import { type Lines } from './lines.ts';

/** One end of an open stroke, and the direction in which it would go on. */
export interface Tip {
  readonly stroke: number;
  readonly end: 0 | 1;
  readonly at: Point;
  readonly outwards: Vector;
}

/** All ends of open strokes of some length. */
export function tipsOf({ strokes, lengths }: Lines): Tip[] {
  return strokes.flatMap(({ path }, stroke): Tip[] => {
    if (path.closed || !(lengths[stroke]! > 0)) return [];
    const { first, last } = endTangents(path);
    return [{ stroke, end: 0, at: path.start, outwards: scale(first, -1) }, { stroke, end: 1, at: pathEnd(path), outwards: last }];
  });
}

/** Ends no farther from a place than `within` mm, nearest first. */
export function tipsNear(lines: Lines, place: Point, within: number): Tip[] {
  return tipsOf(lines).map((tip) => ({ tip, away: distance(tip.at, place) })).filter(({ away }) => away <= within).sort((a, b) => a.away - b.away).map(({ tip }) => tip);
}

/** A path run so that it ends at its start (0) or at its end (1). */
export const endingAt = (path: Path, end: 0 | 1): Path => (end === 1 ? path : reversePath(path));
