import type { Stroke, WidthAt } from '../../artwork/artwork.ts';
import { type Path, pathLength, pathPiece, type Point, type Segment } from '../../geometry/index.ts';
import { keptOf, movedWidths, reversedStroke, widthsBetween } from '../edit/carry.ts';
import { sharedOf } from '../edit/join.ts';
import { type Lines, nearestSpot } from './lines.ts';
import { linkOf, type Run } from './link.ts';
import { mended } from './mend.ts';

/** Doubts so many widths beyond a piece are still about it. */
const BESIDE = 1.5;

/** The part of a stroke between two lengths along it, mm, with what is known of that part. On a closed stroke lengths go round. */
export function pieceOf(lines: Lines, stroke: number, from: number, to: number): Stroke {
  const whole = lines.strokes[stroke]!;
  const length = lines.lengths[stroke]!;
  if (whole.path.closed) {
    const start = ((from % length) + length) % length;
    const end = start + Math.min(length, to - from);
    if (end > length) return chained([plainPiece(lines, stroke, start, length), plainPiece(lines, stroke, 0, end - length)], [], false);
    return plainPiece(lines, stroke, start, end);
  }
  return from <= 0 && to >= length ? whole : plainPiece(lines, stroke, from, to);
}

function plainPiece(lines: Lines, stroke: number, from: number, to: number): Stroke {
  const { path, widths, ...rest } = lines.strokes[stroke]!;
  const { doubts, ...kept } = keptOf({ path, ...rest });
  const beside = BESIDE * lines.pens[stroke]!;
  const mine = doubts?.map((doubt) => ({ doubt, along: alongOf(lines, stroke, doubt.at) })).filter(({ along }) => along >= from - beside && along <= to + beside).map(({ doubt }) => doubt);
  return { path: pathPiece(path, from, to), ...kept, ...(mine && { doubts: mine }), ...(widths && { widths: widthsBetween(widths, from, to) }) };
}

/** Length along a stroke of its place nearest to a point. */
export const alongOf = (lines: Lines, stroke: number, at: Point): number => nearestSpot(lines, at, Infinity, (chord) => chord.stroke === stroke)?.along ?? 0;

/** One stroke of parts that follow one another, each with the segment that leads on from it where there is a gap. */
export function chained(parts: readonly Stroke[], bridges: readonly (Segment | undefined)[], closed: boolean): Stroke {
  if (parts.length === 1 && !closed) return parts[0]!;
  const start = parts[0]!.path.start;
  const segments = mended(start, parts.map(({ path }, i) => [...path.segments, ...(bridges[i] ? [bridges[i]] : [])]));
  const path: Path = { start, segments, closed };
  const widths = chainedWidths(parts, bridges);
  return { path, ...sharedOf(parts), ...(widths && { widths }) };
}

/** Widths part after part, each counted from the chain's start; none unless every part has some. */
function chainedWidths(parts: readonly Stroke[], bridges: readonly (Segment | undefined)[]): WidthAt[] | undefined {
  let passed = 0;
  const all: WidthAt[] = [];
  for (const [i, { path, widths }] of parts.entries()) {
    if (widths === undefined) return undefined;
    for (const width of movedWidths(widths, 1, passed)) if (all.length === 0 || width.along > all.at(-1)!.along) all.push(width);
    const link = bridges[i];
    passed += pathLength(link ? { ...path, segments: [...path.segments, link] } : path);
  }
  return all;
}

/** The stroke of a run of parts, with a smooth link wherever they do not go on as they are. */
export function runStroke({ parts, closed }: Run, pen: number): Stroke {
  const strokes = parts.map(({ part, backwards }) => (backwards ? reversedStroke(part.stroke) : part.stroke));
  if (strokes.length === 1 && !closed) return strokes[0]!;
  const links = strokes.map(({ path }, i) => {
    const next = strokes[i + 1] ?? (closed ? strokes[0] : undefined);
    return next && linkOf(path, next.path, pen);
  });
  return chained(strokes, links, closed);
}
