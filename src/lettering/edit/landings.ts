import type { Stroke } from '../../artwork/artwork.ts';
import { flattenPath, type IndexedSegment, makeSegmentIndex, pathEnd, pathLength, type Point, type SegmentIndex } from '../../geometry/index.ts';

/** A place on a stroke (by its number) where another one, or itself, ends. */
export interface Landing {
  readonly stroke: number;
  /** Length along the stroke, mm, to within the reach it was found in. */
  readonly along: number;
  readonly at: Point;
}

/** One end of an open stroke, and the strokes it lies on. */
export interface StrokeTip {
  readonly stroke: number;
  /** 0 for its start, 1 for its end. */
  readonly end: 0 | 1;
  readonly at: Point;
  readonly on: readonly Landing[];
}

/** A stretch of a stroke as a straight segment. */
export interface Stretch extends IndexedSegment {
  readonly stroke: number;
  readonly along: number;
}

/** Strokes as straight stretches, and the nearest of them to any place. */
export interface Stretches {
  readonly list: readonly Stretch[];
  readonly lengths: readonly number[];
  readonly index: SegmentIndex;
}

/** Strokes as chords that stray at most `tolerance` mm from them. */
export function stretchesOf(strokes: readonly Stroke[], tolerance: number): Stretches {
  const lengths = strokes.map(({ path }) => pathLength(path));
  const list = strokes.flatMap(({ path }, stroke) => {
    const points = flattenPath(path, tolerance);
    if (path.closed || points.length === 1) points.push(points[0]!);
    let along = 0;
    return points.slice(1).map((to, i): Stretch => {
      const from = points[i]!;
      const stretch = { from, to, stroke, along };
      along += Math.hypot(to.x - from.x, to.y - from.y);
      return stretch;
    });
  });
  return { list, lengths, index: makeSegmentIndex(list) };
}

/** A stroke's own course counts only where it is this many times the reach away from the end along it. */
const OWN = 6;

/** Both ends of every open stroke of some length, each with the strokes that come within `reach` mm of it. */
export function tipsOf(strokes: readonly Stroke[], reach: number): StrokeTip[] {
  const stretches = stretchesOf(strokes, Math.max(reach / 10, 1e-4));
  return strokes.flatMap(({ path }, stroke): StrokeTip[] => {
    const length = stretches.lengths[stroke]!;
    if (path.closed || length === 0) return [];
    return ([[0, path.start], [1, pathEnd(path)]] as const).map(([end, at]) => ({
      stroke, end, at, on: landingsAt(stretches, { stroke, along: end * length, at }, reach),
    }));
  });
}

function landingsAt({ list, index }: Stretches, tip: Landing, reach: number): Landing[] {
  const found: Landing[] = [];
  const isOwn = ({ stroke, along, from, to }: Stretch) =>
    stroke === tip.stroke && along < tip.along + OWN * reach && along + Math.hypot(to.x - from.x, to.y - from.y) > tip.along - OWN * reach;
  for (;;) {
    const near = index.nearest(tip.at, reach, (k) => !isOwn(list[k]!) && !found.some(({ stroke }) => stroke === list[k]!.stroke));
    if (near === undefined) return found;
    const { stroke, along, from } = list[near.segment]!;
    found.push({ stroke, along: along + Math.hypot(near.point.x - from.x, near.point.y - from.y), at: near.point });
  }
}
