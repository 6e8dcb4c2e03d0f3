import type { Doubt, Stroke, WidthAt } from '../../artwork/artwork.ts';
import {
  add, cross, distance, distanceToChord, dot, endTangents, flattenPath, type Path, pathEnd, pathLength, pathPiece, type Point, scale, type Segment, subtract, type Vector,
} from '../../geometry/index.ts';
import { movedWidths, reversedStroke, widthsBetween, widthsOf } from './carry.ts';
import { between, decide, type Decided, type MeetingLimits, meetingsOf, type Tip, tipsNearOthers } from './meetings.ts';

/** A place where two ends became one stroke. */
export interface Join {
  readonly at: Point;
  readonly gap: number;
  /** From 0 to 1: the margin by which it was decided. */
  readonly confidence: number;
  /** Greatest distance of the two old ends from the joined stroke, mm. */
  readonly departure: number;
}

export interface Joined {
  readonly strokes: readonly Stroke[];
  readonly joins: readonly Join[];
  /** Places where two partners were so nearly alike that nothing was joined. */
  readonly undecided: readonly Point[];
}

/** A join whose next best choice turns by this much more, degrees, is as sure as can be. */
const CLEAR = 15;

/** Below this confidence a join is worth a look. */
const DOUBTFUL = 0.5;

/** Makes one stroke of strokes whose ends meet and run on smoothly. A joined stroke keeps the place and direction of the first of its parts. */
export function joinStrokes(strokes: readonly Stroke[], limits: MeetingLimits): Joined {
  const { tips, pairs } = tipsNearOthers(strokes, limits);
  const { decided, undecided } = decide(meetingsOf(tips, pairs, limits), tips.length, limits);
  const partners = new Map<string, Partner>();
  for (const { a, b, margin } of decided) {
    partners.set(keyOf(tips[a]!), { tip: tips[b]!, own: tips[a]!, margin });
    partners.set(keyOf(tips[b]!), { tip: tips[a]!, own: tips[b]!, margin });
  }
  const chains = chainsOf(strokes, partners);
  const made = chains.map((chain) => chainStroke(strokes, chain));
  return {
    strokes: made.map(({ stroke }) => stroke),
    joins: made.flatMap(({ joins }) => joins),
    undecided: placesApart(undecided.map((tip) => tips[tip]!.at), limits.gap),
  };
}

/** An end's partner; `own` is the end itself. */
interface Partner {
  readonly tip: Tip;
  readonly own: Tip;
  readonly margin: number;
}

const keyOf = ({ stroke, end }: Pick<Tip, 'stroke' | 'end'>) => `${stroke} ${end}`;

/** A stroke within a chain, run backwards or not, and the join that follows it. */
interface Link {
  readonly stroke: number;
  readonly backwards: boolean;
  readonly next?: Partner;
}

interface Chain {
  readonly links: readonly Link[];
  readonly closed: boolean;
}

function chainsOf(strokes: readonly Stroke[], partners: ReadonlyMap<string, Partner>): Chain[] {
  const seen = new Set<number>();
  return strokes.flatMap((_, stroke): Chain[] => {
    if (seen.has(stroke)) return [];
    const ahead = follow({ stroke, end: 1 }, partners, seen);
    if (ahead.closed) return [ahead];
    // What comes before is found by walking from the start, then turned round.
    const behind = follow({ stroke, end: 0 }, partners, seen);
    return [{ links: [...turned(behind.links), ...ahead.links], closed: false }];
  });
}

/** From a stroke out of one of its ends, join after join, until an end has no partner or the first stroke comes again. */
function follow(from: { readonly stroke: number; readonly end: 0 | 1 }, partners: ReadonlyMap<string, Partner>, seen: Set<number>): Chain {
  const links: Link[] = [];
  let [stroke, end] = [from.stroke, from.end];
  for (;;) {
    seen.add(stroke);
    const next = partners.get(keyOf({ stroke, end }));
    links.push({ stroke, backwards: end === 0, ...(next && { next }) });
    if (next === undefined) return { links, closed: false };
    stroke = next.tip.stroke;
    end = next.tip.end === 0 ? 1 : 0;
    if (stroke === from.stroke) return { links, closed: true };
  }
}

/** The links that lead up to the first one, which is left out, in the other direction. */
function turned(links: readonly Link[]): Link[] {
  return links.slice(1).map(({ stroke, backwards }, i): Link => {
    const { tip, own, margin } = links[i]!.next!;
    return { stroke, backwards: !backwards, next: { tip: own, own: tip, margin } };
  }).reverse();
}

interface Made {
  readonly stroke: Stroke;
  readonly joins: readonly Join[];
}

function chainStroke(strokes: readonly Stroke[], { links, closed }: Chain): Made {
  if (links.length === 1 && !closed) return { stroke: strokes[links[0]!.stroke]!, joins: [] };
  const parts = links.map((link, i) => partOf(strokes, link, (closed ? links.at(i - 1) : links[i - 1])?.next));
  const bridges = parts.map(({ piece }, i) => (links[i]!.next ? bridge(piece, parts[(i + 1) % parts.length]!.piece) : undefined));
  const segments = merged(parts[0]!.piece.start, parts.flatMap(({ piece }, i) => [...piece.segments, ...(bridges[i] ? [bridges[i]] : [])]));
  const path: Path = { start: parts[0]!.piece.start, segments, closed };
  const joins = links.flatMap(({ next }) => (next ? [next] : []));
  const widths = chainWidths(parts, bridges);
  return {
    stroke: { path, ...sharedOf(parts.map(({ stroke }) => stroke), joins), ...(widths && { widths }) },
    joins: joins.map((join, i) => joinOf(join, { start: pathEnd(parts[i]!.piece), segments: [bridges[i]!], closed: false })),
  };
}

interface Part {
  readonly stroke: Stroke;
  readonly piece: Path;
  readonly length: number;
  readonly widths: readonly WidthAt[] | undefined;
}

/** A stroke as it runs in its chain, without what bridges take the place of. */
function partOf(strokes: readonly Stroke[], { stroke: number, backwards, next }: Link, before: Partner | undefined): Part {
  const stroke = backwards ? reversedStroke(strokes[number]!) : strokes[number]!;
  const whole = pathLength(stroke.path);
  const [from, to] = [before?.tip.cut ?? 0, whole - (next?.own.cut ?? 0)];
  const widths = widthsOf(stroke, whole);
  return { stroke, piece: pathPiece(stroke.path, from, to), length: to - from, widths: widths.length === 0 ? undefined : widthsBetween(widths, from, to) };
}

/** Turns by less than this, radians, are rounding. */
const STRAIGHT = 1e-9;

/** From the end of one path to the start of another, in both their directions: a line where that is straight, else a cubic with the handles an arc of those turns would have. */
export function bridge(from: Path, to: Path): Segment {
  const [start, end] = [pathEnd(from), to.start];
  const [leaving, arriving] = [endTangents(from).last, endTangents(to).first];
  const across = subtract(end, start);
  const [first, last] = [angleFrom(leaving, across), angleFrom(across, arriving)];
  if (Math.abs(first) < STRAIGHT && Math.abs(last) < STRAIGHT) return { kind: 'line', end };
  const handle = (turn: number) => Math.hypot(across.x, across.y) / (3 * Math.cos(Math.min(Math.abs(turn), Math.PI / 2) / 2) ** 2);
  return { kind: 'cubic', control1: add(start, scale(leaving, handle(first))), control2: add(end, scale(arriving, -handle(last))), end };
}

const angleFrom = (u: Vector, v: Vector) => Math.atan2(cross(u, v), dot(u, v));

/** Lines that run on straight become one. */
function merged(start: Point, segments: readonly Segment[]): Segment[] {
  const result: Segment[] = [];
  let [before, from] = [start, start];
  for (const segment of segments) {
    const last = result.at(-1);
    const runsOn = last?.kind === 'line' && segment.kind === 'line' && Math.abs(angleFrom(subtract(from, before), subtract(segment.end, from))) < STRAIGHT;
    if (runsOn) result.pop();
    else before = from;
    result.push(segment);
    from = segment.end;
  }
  return result;
}

/** Widths part after part, each counted from the chain's start; none unless every part has some. */
function chainWidths(parts: readonly Part[], bridges: readonly (Segment | undefined)[]): WidthAt[] | undefined {
  let passed = 0;
  const all: WidthAt[] = [];
  for (const [i, { widths, length, piece }] of parts.entries()) {
    if (widths === undefined) return undefined;
    all.push(...movedWidths(widths, 1, passed));
    const link = bridges[i];
    passed += length + (link ? pathLength({ start: pathEnd(piece), segments: [link], closed: false }) : 0);
  }
  const [first] = all;
  return bridges.at(-1) && first ? [...all, { along: passed, width: first.width }] : all;
}

/** What joined strokes have in common: the least confidence, all doubts, all sources, the width in the mean over their lengths. */
export function sharedOf(strokes: readonly Stroke[], joins: readonly Partner[] = []): Omit<Stroke, 'path' | 'widths'> {
  const known = [...strokes.flatMap(({ confidence }) => (confidence === undefined ? [] : [confidence])), ...joins.map(sureness).filter((sure) => sure < 1)];
  const doubts = [...strokes.flatMap((stroke) => stroke.doubts ?? []), ...joins.flatMap(doubtOf)];
  const sources = [...new Set(strokes.flatMap(({ source }) => (source === undefined ? [] : [source])))];
  const drawn = strokes.flatMap(({ path, width }) => (width === undefined ? [] : [{ width, length: pathLength(path) }]));
  const drawnLength = drawn.reduce((sum, { length }) => sum + length, 0);
  return {
    ...(drawn.length > 0 && { width: drawn.reduce((sum, { width, length }) => sum + (width * length) / drawnLength, 0) }),
    ...(sources.length > 0 && { source: sources.join(' and ') }),
    ...(known.length > 0 && { confidence: Math.min(...known) }),
    ...(doubts.length > 0 && { doubts }),
  };
}

const sureness = ({ margin }: Pick<Decided, 'margin'>) => Math.min(1, margin / CLEAR);

const doubtOf = (partner: Partner): Doubt[] =>
  (sureness(partner) >= DOUBTFUL ? [] : [{ at: between(partner.own, partner.tip), says: 'two strokes were joined here, but one of them would run on into another nearly as well. If they do not belong together, cut them here with “Cut” and join the right ends with “Join ends”' }]);

function joinOf(partner: Partner, bridged: Path): Join {
  const [a, b] = [partner.own, partner.tip];
  const departure = Math.max(distanceTo(bridged, a.at), distanceTo(bridged, b.at));
  return { at: between(a, b), gap: distance(a.at, b.at), confidence: sureness(partner), departure };
}

function distanceTo(path: Path, point: Point): number {
  const points = flattenPath(path, 1e-3);
  return points.slice(1).reduce((least, to, i) => Math.min(least, distanceToChord(point, points[i]!, to)), Infinity);
}

/** Places of which no two are within a distance of each other, first come first kept. */
function placesApart(places: readonly Point[], apart: number): Point[] {
  const kept: Point[] = [];
  for (const place of places) if (!kept.some((other) => distance(other, place) <= apart)) kept.push(place);
  return kept;
}

