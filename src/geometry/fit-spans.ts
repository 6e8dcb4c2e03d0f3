import { type Features } from './fit-features.ts';
import { distance, type Point } from './point.ts';

/** A stretch of polyline between two breaks: corners, ends of straight stretches, the path's own ends. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly straight: boolean;
  readonly cornerBefore: boolean;
  readonly cornerAfter: boolean;
  /** Indices between which the curve is smooth; beyond [from, to] where a closed path's start lies on a smooth curve. */
  readonly window: readonly [number, number];
}

/**
 * The spans in order, from index 0 to the last. The points of a closed polyline come with the first repeated at the end,
 * so a stretch over its start is two spans.
 */
export function spansOf(points: readonly Point[], closed: boolean, features: Features): Span[] {
  const last = points.length - 1;
  const isCorner = (index: number) => features.corners.has(closed && index === last ? 0 : index);
  const straights = features.straights.flatMap(([from, to]): [number, number][] => {
    if (!closed || from < to) return [[from, to]];
    return to === 0 ? [[from, last]] : splitAtStart(points, [from, last], [0, to]);
  });
  const straightTo = new Map(straights);
  const breaks = [...new Set([0, last, ...features.corners, ...straights.flat()])].sort((a, b) => a - b);
  const bare = breaks.slice(1).map((to, i): Omit<Span, 'window'> => {
    const from = breaks[i]!;
    return { from, to, straight: straightTo.get(from) === to, cornerBefore: isCorner(from), cornerAfter: isCorner(to) };
  });
  return bare.map((span) => ({ ...span, window: windowOf(span, bare, closed, last) }));
}

/** A part this short of a straight stretch over the path's start is rather the first bit of the curve that follows. */
const SHORT_PART = 0.02;

function splitAtStart(points: readonly Point[], ...parts: readonly [number, number][]): [number, number][] {
  const sizes = parts.map(([from, to]) => distance(points[from]!, points[to]!));
  return parts.filter((_, i) => sizes[i]! > SHORT_PART * Math.max(...sizes));
}

function windowOf({ from, to }: Omit<Span, 'window'>, spans: readonly Omit<Span, 'window'>[], closed: boolean, last: number): readonly [number, number] {
  const [head, tail] = [spans[0]!, spans.at(-1)!];
  const smoothStart = closed && !head.straight && !tail.straight && !head.cornerBefore;
  if (!smoothStart) return [from, to];
  return [from === 0 ? tail.from - last : from, to === last ? last + head.to : to];
}
