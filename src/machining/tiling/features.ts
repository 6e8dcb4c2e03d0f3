import { type Box, type Path, type Point, boxOfPoints, cross, distance, dot, flattenPath, growBox, isPointPath, lerp, subtract } from '../../geometry/index.ts';
import { holeEnds } from '../job/hole.ts';
import { crossingsBetween } from './polyline-crossings.ts';
import { type Axis, type Feature, type FeatureKind, type TilingRequest, ALONG_DEGREES, TIGHT_WIDTHS } from './request.ts';

/** Chords stray this far from the centre lines they stand for, mm: seams are placed to no better than a tenth. */
const CHORD_TOLERANCE = 0.02;
/** A turn between two chords is taken to be spread over this share of a tight bend's radius at most, so that a corner between long lines is one. */
const TURN_SHARE = 0.1;

/** A line as points; the first one is repeated at the end of a closed line. */
type Line = readonly Point[];

/** What of the work matters for seams, told without direction. */
export interface WorkLines {
  /** Centre lines. */
  readonly lines: readonly Line[];
  /** What disturbs a seam of either axis: how far it reaches, and the place to name. */
  readonly spots: readonly { readonly kind: FeatureKind; readonly box: Box; readonly at: Point }[];
  /** Lines that a seam should not run beside, each with what reaches to both sides of it. */
  readonly runs: readonly { readonly kind: FeatureKind; readonly line: Line; readonly aside: number }[];
}

/** Looks a request's work over once, for both axes. */
export function workLines({ channel, holes, board, cutters }: TilingRequest): WorkLines {
  const width = channel?.width ?? 0, half = width / 2;
  const all = channel?.centreLines ?? [];
  const paths = all.filter((path) => !isPointPath(path));
  const lines = paths.map(lineOf);
  const edges = (board?.loops ?? []).filter((loop) => loop.length > 2).map((loop) => [...loop, loop[0]!]);
  return {
    lines,
    runs: [
      ...lines.map((line) => ({ kind: 'along' as const, line, aside: half })),
      // The outline is cut beside the board: what reaches beside it is the cutter.
      ...edges.map((line) => ({ kind: 'edge' as const, line, aside: Math.max(...cutters) })),
    ],
    spots: [
      ...holes.map((hole) => spot('hole', holeEnds(hole), hole.diameter / 2, hole.centre)),
      ...all.filter(isPointPath).map(({ start }) => spot('end', [start], half)),
      ...lines.filter((_, i) => !paths[i]!.closed).flatMap((line) => [line[0]!, line.at(-1)!].map((at) => spot('end', [at], half))),
      ...crossingsBetween(lines).map((at) => spot('crossing', [at], half)),
      ...lines.flatMap((line, i) => tightBends(line, paths[i]!.closed, width * TIGHT_WIDTHS)).map((bend) => spot('bend', bend, half, bend[bend.length >> 1]!)),
    ],
  };
}

function lineOf(path: Path): Line {
  const points = flattenPath(path, CHORD_TOLERANCE);
  return path.closed ? [...points, points[0]!] : points;
}

function spot(kind: FeatureKind, points: readonly Point[], radius: number, at = points[0]!): WorkLines['spots'][number] {
  return { kind, at, box: growBox(boxOfPoints(points)!, radius) };
}

/** Stretches where the line turns faster than a circle of this radius, corners among them. */
function tightBends(line: Line, closed: boolean, radius: number): Point[][] {
  const bends: Point[][] = [];
  let last = -2;
  for (let i = closed ? 0 : 1; i < line.length - 1; i++) {
    const [before, at, after] = [line[i - 1] ?? line.at(-2)!, line[i]!, line[i + 1]!];
    const spread = Math.min((distance(before, at) + distance(at, after)) / 2, radius * TURN_SHARE);
    if (turning(before, at, after) <= spread / radius) continue;
    if (last === i - 1) bends.at(-1)!.push(at);
    else bends.push([at]);
    last = i;
  }
  return bends;
}

function turning(before: Point, at: Point, after: Point): number {
  const [u, v] = [subtract(at, before), subtract(after, at)];
  return Math.abs(Math.atan2(cross(u, v), dot(u, v)));
}

/** What a seam of this axis should keep clear of. */
export function featuresAlong({ spots, runs }: WorkLines, axis: Axis): Feature[] {
  const span = ({ minX, minY, maxX, maxY }: Box) => (axis === 'x' ? { from: minX, to: maxX } : { from: minY, to: maxY });
  return [
    ...spots.map(({ kind, box, at }): Feature => ({ kind, at, ...span(box) })),
    ...runs.flatMap(({ kind, line, aside }) => stretchesAlong(line, axis).map((stretch): Feature => {
      const middle = (stretch.length - 1) / 2;
      return { kind, at: lerp(stretch[Math.floor(middle)]!, stretch[Math.ceil(middle)]!, 0.5), ...span(growBox(boxOfPoints(stretch)!, aside)) };
    })),
  ];
}

const LEAST_SINE = Math.sin((ALONG_DEGREES * Math.PI) / 180);

/** Stretches of a line that run along a seam of this axis, and points where it turns back from one. */
function stretchesAlong(line: Line, axis: Axis): Point[][] {
  const slopes = line.slice(1).map((to, i) => (to[axis] - line[i]![axis]) / distance(line[i]!, to));
  const isClosed = line[0] === line.at(-1);
  const stretches: Point[][] = [];
  let runs = false;
  for (const [i, slope] of slopes.entries()) {
    const before = i > 0 ? slopes[i - 1]! : isClosed ? slopes.at(-1)! : slope;
    const along = Math.abs(slope) < LEAST_SINE;
    if (along && runs) stretches.at(-1)!.push(line[i + 1]!);
    else if (along) stretches.push([line[i]!, line[i + 1]!]);
    else if (slope * before < 0 && Math.abs(before) >= LEAST_SINE) stretches.push([line[i]!]);
    runs = along;
  }
  return stretches;
}
