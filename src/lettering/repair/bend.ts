import type { Stroke, WidthAt } from '../../artwork/artwork.ts';
import { add, cubicPath, type CubicSegment, distance, type Path, pathPiece, pathSegmentsWithStarts, type Point, scale, segmentLength, type StartedSegment, type Vector } from '../../geometry/index.ts';

/** A place of a stroke that is moved, and how far on both sides of it the stroke bends along, mm. */
export interface Pull {
  readonly along: number;
  readonly back: number;
  readonly ahead: number;
  /** The share falls off evenly all along the stroke, whose end is pulled. */
  readonly even?: true;
}

/** What share of a movement a place takes part in, and how that changes along the stroke, 1/mm. */
export interface Share {
  readonly value: number;
  readonly slope: number;
}

/** A stroke's length, mm, and whether that is all round. */
export interface Round {
  readonly length: number;
  readonly closed: boolean;
}

/** The share that a place takes in pulls: all of it at their places, none beyond their reach, and smooth between. */
export function shareAt(pulls: readonly Pull[], along: number, round: Round): Share {
  return pulls.reduce((sum, pull): Share => {
    const one = shareOf(pull, along, round);
    return { value: 1 - (1 - sum.value) * (1 - one.value), slope: sum.slope * (1 - one.value) + one.slope * (1 - sum.value) };
  }, { value: 0, slope: 0 });
}

function shareOf({ along: centre, back, ahead, even }: Pull, along: number, { length, closed }: Round): Share {
  const straight = along - centre;
  const way = closed ? straight - length * Math.round(straight / length) : straight;
  const reach = way < 0 ? back : ahead;
  const u = Math.abs(way) / reach;
  if (even) return { value: Math.max(0, 1 - u), slope: (centre > 0 ? 1 : -1) / reach };
  if (!(u < 1)) return { value: way === 0 ? 1 : 0, slope: 0 };
  const left = 1 - u * u;
  return { value: left ** 3, slope: (-6 * u * left * left * Math.sign(way)) / reach };
}

/** A span shorter than this share of the reach takes part as one cubic. */
const SPAN = 1 / 6;

/** Cubics that stand for arcs stray from them by at most this share of the reach. */
const ARC = 1e-5;

/** The stroke with the places of pulls shifted and their neighbourhoods bent along; what is out of reach stays as it is. */
export function bent(stroke: Stroke, pulls: readonly Pull[], by: Vector): Stroke {
  const { path, widths } = stroke;
  const starts = startsOf(path);
  const round = { length: starts.at(-1)!, closed: path.closed };
  const pieces = pathSegmentsWithStarts(path).map((started, i) => bentSegment(started, starts[i]!, starts[i + 1]!, { pulls, by, round }));
  const first = shareAt(pulls, 0, round).value;
  const start = first > 0 ? add(path.start, scale(by, first)) : path.start;
  const changed: Path = { start, segments: pieces.flatMap((piece) => piece.segments), closed: path.closed };
  return { ...stroke, path: changed, ...(widths && { widths: carried(widths, pieces.flatMap((piece) => piece.knots), changed) }) };
}

function startsOf(path: Path): number[] {
  const starts = [0];
  for (const started of pathSegmentsWithStarts(path)) starts.push(starts.at(-1)! + segmentLength(started));
  return starts;
}

interface Field {
  readonly pulls: readonly Pull[];
  readonly by: Vector;
  readonly round: Round;
}

interface BentSegment {
  readonly segments: Path['segments'];
  /** Lengths along the old stroke at which the new segments end. */
  readonly knots: readonly number[];
}

function bentSegment({ start, segment }: StartedSegment, from: number, to: number, field: Field): BentSegment {
  const knots = knotsIn(from, to, field);
  if (knots.length === 1 && [0, 0.25, 0.5, 0.75, 1].every((t) => shareAt(field.pulls, from + (to - from) * t, field.round).value === 0)) return { segments: [segment], knots };
  const whole: Path = { start, segments: [segment], closed: false };
  const ends = [from, ...knots];
  const pieces = knots.flatMap((knot, i) => {
    const [begin, reach] = [ends[i]!, knot - ends[i]!];
    const piece = knots.length === 1 ? whole : pathPiece(whole, begin - from, knot - from);
    const cubics = pathSegmentsWithStarts(cubicPath(piece, ARC * reach));
    return cubics.map((started, k) => ({ started, a: begin + (reach * k) / cubics.length, b: begin + (reach * (k + 1)) / cubics.length }));
  });
  const segments = pieces.map(({ started, a, b }) => bentCubic(started.start, started.segment as CubicSegment, [shareAt(field.pulls, a, field.round), shareAt(field.pulls, b, field.round)], field.by));
  return { segments, knots: pieces.map(({ b }) => b) };
}

/** Where a segment is taken apart: at the places of pulls and the ends of their reach, and so that no span is long. The segment's own end is the last. */
function knotsIn(from: number, to: number, { pulls, round }: Field): number[] {
  const marks = pulls.flatMap(({ along, back, ahead }) => [along - back, along, along + ahead]).flatMap((mark) => (round.closed ? [mark - round.length, mark, mark + round.length] : [mark]));
  const hair = 1e-9 * round.length;
  const inner = marks.filter((mark) => mark > from + hair && mark < to - hair).sort((a, b) => a - b);
  const step = SPAN * Math.min(...pulls.flatMap(({ back, ahead }) => [back, ahead]).filter((reach) => reach > 0));
  let before = from;
  return [...inner, to].flatMap((mark) => {
    const start = before;
    before = mark;
    if (shareAt(pulls, (start + mark) / 2, round).value === 0) return [mark];
    const count = Math.max(1, Math.min(64, Math.ceil((mark - start) / step)));
    return Array.from({ length: count }, (_, i) => (i === count - 1 ? mark : start + ((mark - start) * (i + 1)) / count));
  });
}

/** A cubic whose ends take part in a movement, and whose tangents turn as the shares change along it. */
function bentCubic(start: Point, { control1, control2, end }: CubicSegment, [a, b]: readonly [Share, Share], by: Vector): CubicSegment {
  return {
    kind: 'cubic',
    control1: add(control1, scale(by, a.value + a.slope * distance(start, control1))),
    control2: add(control2, scale(by, b.value - b.slope * distance(control2, end))),
    end: add(end, scale(by, b.value)),
  };
}

/** Widths at the places where they were, counted along the changed path, whose segments end where the old one had the lengths of `knots`. */
function carried(widths: readonly WidthAt[], knots: readonly number[], path: Path): WidthAt[] {
  const [before, after] = [[0, ...knots], startsOf(path)];
  let i = 0;
  return widths.map(({ along, width }) => {
    while (i < knots.length - 1 && along > before[i + 1]!) i += 1;
    const span = before[i + 1]! - before[i]!;
    const share = span > 0 ? (along - before[i]!) / span : 0;
    return { along: after[i]! + (after[i + 1]! - after[i]!) * share, width };
  });
}
