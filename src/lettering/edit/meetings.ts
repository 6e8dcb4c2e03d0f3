import type { Stroke } from '../../artwork/artwork.ts';
import { distance, lerp, type Path, pathEnd, pathLength, pathPiece, type Point, reversePath, samplePath } from '../../geometry/index.ts';

/** When ends are one stroke. Lengths mm, angles degrees. */
export interface MeetingLimits {
  /** Ends farther apart than this do not meet. */
  readonly gap: number;
  /** Greatest turn the bridge between them may make beyond what both strokes' own bend makes there. */
  readonly angle: number;
  /** How much of each end the bridge takes the place of; a quarter of a stroke shorter than four times that. */
  readonly blend: number;
  /** An end whose best and second best partner differ by less than this is left alone. */
  readonly margin: number;
}

/** An end of a stroke as others see it. */
export interface Tip {
  readonly stroke: number;
  readonly end: 0 | 1;
  readonly at: Point;
  /** How much of the end a bridge takes the place of, mm. */
  readonly cut: number;
  /** Where the bridge leaves the stroke, its heading there (radians, outwards) and its bend (1/mm, positive when it turns left running outwards). */
  readonly from: Point;
  readonly heading: number;
  readonly bend: number;
}

/** Two ends (by their places in the list of tips) that could be one stroke; the less the `score`, in degrees, the better. */
export interface Meeting {
  readonly a: number;
  readonly b: number;
  readonly score: number;
}

/** A meeting that was decided for, and how much worse the next best thing would be, degrees. */
export interface Decided extends Meeting {
  readonly margin: number;
}

/** Of two partners that turn alike the nearer is better: a whole gap weighs as much as this share of the greatest turn. */
const GAP_SHARE = 0.1;

/** Scores no further apart than this, degrees, differ by rounding alone. */
const TIE = 1e-6;

/** A bend over so much of a turn, radians, says nothing of how a stroke would go on. */
const MOST_BEND = Math.PI / 3;

/** The tips of all open strokes that have some length and another tip within the gap. */
export function tipsNearOthers(strokes: readonly Stroke[], { gap, blend }: MeetingLimits): { readonly tips: readonly Tip[]; readonly pairs: readonly (readonly [number, number])[] } {
  const ends = strokes.flatMap(({ path }, stroke) => {
    const length = path.closed ? 0 : pathLength(path);
    return length === 0 ? [] : [{ stroke, end: 0 as const, at: path.start, length }, { stroke, end: 1 as const, at: pathEnd(path), length }];
  });
  const near = pairsWithin(ends.map(({ at }) => at), gap);
  const used = [...new Set(near.flat())].sort((a, b) => a - b);
  const place = new Map(used.map((k, i) => [k, i]));
  const tips = used.map((k) => tipOf(strokes[ends[k]!.stroke]!.path, ends[k]!, Math.min(blend, ends[k]!.length / 4)));
  return { tips, pairs: near.map(([a, b]) => [place.get(a)!, place.get(b)!] as const) };
}

/** Heading and bend from the three chords' ends at one, one and a half and two cuts from the end: exact for lines and circles, calm where the line is not. */
function tipOf(path: Path, { stroke, end, at, length }: Pick<Tip, 'stroke' | 'end' | 'at'> & { readonly length: number }, cut: number): Tip {
  const outwards = end === 1 ? path : reversePath(path);
  const last = samplePath(pathPiece(outwards, length - 2 * cut, length - cut), cut / 2).map(({ point }) => point);
  const [far, middle, from] = [last[0]!, last[1]!, last[2] ?? last.at(-1)!];
  const [before, after] = [Math.atan2(middle.y - far.y, middle.x - far.x), Math.atan2(from.y - middle.y, from.x - middle.x)];
  const turn = wrapped(after - before);
  return { stroke, end, at, cut, from, heading: after + turn / 2, bend: (2 * turn) / cut };
}

const wrapped = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Pairs of points no farther apart than `reach`, by a table of cells of that size. */
function pairsWithin(points: readonly Point[], reach: number): [number, number][] {
  const size = Math.max(reach, 1e-6);
  const cells = new Map<string, number[]>();
  const cell = (v: number) => Math.floor(v / size);
  const pairs: [number, number][] = [];
  points.forEach((point, k) => {
    const [column, row] = [cell(point.x), cell(point.y)];
    for (let c = column - 1; c <= column + 1; c++) {
      for (let r = row - 1; r <= row + 1; r++) {
        for (const other of cells.get(`${c},${r}`) ?? []) if (distance(points[other]!, point) <= reach) pairs.push([other, k]);
      }
    }
    const key = `${column},${row}`;
    const here = cells.get(key);
    if (here) here.push(k);
    else cells.set(key, [k]);
  });
  return pairs;
}

/** All meetings of two tips within the limits. */
export function meetingsOf(tips: readonly Tip[], pairs: readonly (readonly [number, number])[], { gap, angle }: MeetingLimits): Meeting[] {
  return pairs.flatMap(([a, b]): Meeting[] => {
    const turn = excessTurn(tips[a]!, tips[b]!);
    if (!(turn <= angle)) return [];
    return [{ a, b, score: turn + GAP_SHARE * angle * (distance(tips[a]!.at, tips[b]!.at) / Math.max(gap, 1e-9)) }];
  });
}

/** How much a bridge turns at its two ends beyond half of what the stroke there would turn over its length, degrees. The same from either side. */
function excessTurn(a: Tip, b: Tip): number {
  const across = distance(a.from, b.from);
  if (across === 0) return Infinity;
  const turn = (tip: Tip, to: Tip) => {
    const own = Math.max(-MOST_BEND, Math.min(MOST_BEND, (tip.bend * across) / 2));
    return Math.abs(wrapped(Math.atan2(to.from.y - tip.from.y, to.from.x - tip.from.x) - tip.heading) - own);
  };
  return ((turn(a, b) + turn(b, a)) * 180) / Math.PI;
}

/** What was decided, and the places where nothing could be. */
export interface Decisions {
  readonly decided: readonly Decided[];
  /** Tips left alone although they have partners, because two are nearly as good. */
  readonly undecided: readonly number[];
}

/**
 * Round by round, all pairs that are each other's best by a clear margin become one; what is taken no longer competes. So it does not
 * matter in which order, or which way round, the strokes come: a choice that nothing tells apart is not made.
 */
export function decide(meetings: readonly Meeting[], count: number, { angle, margin }: MeetingLimits): Decisions {
  const lists = Array.from({ length: count }, (): Meeting[] => []);
  for (const meeting of [...meetings].sort((m, n) => m.score - n.score)) {
    lists[meeting.a]!.push(meeting);
    lists[meeting.b]!.push(meeting);
  }
  const taken = new Uint8Array(count);
  const decided: Decided[] = [];
  const offers = (tip: number) => lists[tip]!.filter(({ a, b }) => !taken[a] && !taken[b]);
  let looked: Iterable<number> = lists.keys();
  for (;;) {
    const found = new Map<Meeting, number>();
    for (const tip of looked) for (const one of clearBest(tip, offers, margin)) found.set(one.meeting, Math.min(one.margin, angle - one.meeting.score));
    if (found.size === 0) break;
    const touched = new Set<number>();
    for (const [meeting, clear] of found) {
      decided.push({ ...meeting, margin: Math.max(0, clear) });
      taken[meeting.a] = taken[meeting.b] = 1;
      for (const { a, b } of [...lists[meeting.a]!, ...lists[meeting.b]!]) touched.add(a).add(b);
    }
    looked = touched;
  }
  return { decided, undecided: [...lists.keys()].filter((tip) => !taken[tip] && offers(tip).length > 0) };
}

type Offers = (tip: number) => readonly Meeting[];

function clearBest(tip: number, offers: Offers, margin: number): { meeting: Meeting; margin: number }[] {
  const [best, next] = offers(tip);
  if (best === undefined) return [];
  const [theirs, theirNext] = offers(best.a === tip ? best.b : best.a);
  const clear = Math.min(next?.score ?? Infinity, theirNext?.score ?? Infinity) - best.score;
  return theirs === best && clear >= Math.max(margin, TIE) ? [{ meeting: best, margin: clear }] : [];
}

/** The middle between two ends. */
export const between = (a: Tip, b: Tip): Point => lerp(a.at, b.at, 0.5);
