import { attemptRegion, regionFromLoops, unionRegions } from './boolean.ts';
import { innerSide } from './inner-side.ts';
import { type Point } from './point.ts';
import { type OffsetCap, type RawOffset, rawDisc, rawSide, rawStroke } from './raw-offset.ts';
import { type Loop, type Region } from './region.ts';

/**
 * With more folded corners than this one upon another (a noisy curve, tighter than the distance), their crossings, about
 * n^2 / 2 of them, cost more than joining pieces does.
 */
const FOLDS_AT_ONCE = 200;

/** Folded corners per piece; more cost more crossings, fewer more unions. */
const FOLDS_PER_PIECE = 25;

/** A chain of points to be stroked; neighbours are distinct. */
export interface Chain {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

function pointLoops(at: Point, cap: OffsetCap, raw: RawOffset): Loop[] {
  if (cap === 'butt') return [];
  if (cap === 'round') return [rawDisc(at, raw)];
  const { distance: d } = raw;
  return [[{ x: at.x - d, y: at.y - d }, { x: at.x + d, y: at.y - d }, { x: at.x + d, y: at.y + d }, { x: at.x - d, y: at.y + d }]];
}

function rawLoops({ points, closed }: Chain, cap: OffsetCap, raw: RawOffset): Loop[] {
  if (points.length < 2) return points.flatMap((point) => pointLoops(point, cap, raw));
  return closed ? [rawSide(points, raw), rawSide([...points].reverse(), raw)] : [rawStroke(points, cap, cap, raw)];
}

/** A closed chain as an open one that runs on over its first edge, so that every corner is an inner one. */
const unrolled = ({ points, closed }: Chain): readonly Point[] =>
  closed && points.length > 1 ? [...points, points[0]!, points[1]!] : points;

/** For each point of an open chain, whether one of its sides folds over there at a distance. */
function foldsAlong(points: readonly Point[], distance: number): boolean[] {
  const folded = points.map(() => false);
  const mark = (side: readonly Point[], place: (i: number) => number): void => {
    const { legs, cuts } = innerSide(side, false, distance);
    for (let i = 1; i < legs.length; i += 1) {
      const u = legs[i - 1]!.direction;
      const v = legs[i]!.direction;
      if (cuts[i] === 0 && u.x * v.y - u.y * v.x < 0) folded[place(i)] = true;
    }
  };
  mark(points, (i) => i);
  mark([...points].reverse(), (i) => points.length - 1 - i);
  return folded;
}

/** The greatest number of folded corners of which each is within `reach` mm of the one before. */
function greatestCrowd(points: readonly Point[], reach: number): number {
  let crowd = 0;
  let greatest = 0;
  let last: Point | undefined;
  foldsAlong(points, reach).forEach((fold, i) => {
    if (!fold) return;
    const point = points[i]!;
    crowd = last !== undefined && Math.hypot(point.x - last.x, point.y - last.y) < reach ? crowd + 1 : 1;
    greatest = Math.max(greatest, crowd);
    last = point;
  });
  return greatest;
}

/** Whether the kernel can be expected to make both sides of a chain at a distance in one go. */
export const isGentle = (chain: Chain, distance: number): boolean =>
  greatestCrowd(unrolled(chain), distance) <= FOLDS_AT_ONCE;

/** Where to part a chain so that no piece holds more than a number of folds: the index of the first point of each piece, and the last point. */
function partings(folded: readonly boolean[], most: number): number[] {
  const starts = [0];
  let count = 0;
  folded.forEach((fold, i) => {
    if (fold) count += 1;
    if (count > most) {
      starts.push(i);
      count = 1;
    }
  });
  return [...starts, folded.length - 1];
}

/**
 * A stroke as the union of strokes of its pieces. Each piece starts one edge early, which winds the shared edge twice
 * but gives the corner between them to one piece as an inner corner.
 */
function piecewise(chain: Chain, cap: OffsetCap, raw: RawOffset): Region {
  const points = unrolled(chain);
  const bounds = partings(foldsAlong(points, raw.distance), FOLDS_PER_PIECE);
  const most = bounds.length - 2;
  return unionRegions(bounds.slice(1).map((to, k) => {
    const piece = points.slice(Math.max(0, bounds[k]! - 1), to + 1);
    const capAt = (isEnd: boolean): OffsetCap => (isEnd && !chain.closed ? cap : 'butt');
    return regionFromLoops([rawStroke(piece, capAt(k === 0), capAt(k === most), raw)], 'positive');
  }));
}

/**
 * The stroke of half-width `raw.distance` along a chain: both sides of a closed one, the ends of an open one under `cap`.
 * Done in one go where the kernel can, else piece by piece.
 */
export function strokeRegion(chain: Chain, cap: OffsetCap, raw: RawOffset): Region {
  const whole = isGentle(chain, raw.distance) ? attemptRegion(rawLoops(chain, cap, raw), 'positive') : undefined;
  return whole ?? piecewise(chain, cap, raw);
}
