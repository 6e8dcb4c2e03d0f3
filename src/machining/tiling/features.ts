import { type Box, type Path, type PathSample, type Point, boxOfPoints, cross, dot, flattenPath, isPointPath, samplePath } from '../../geometry/index.ts';
import { holeEnds } from '../job/hole.ts';
import { crossingsBetween } from './polyline-crossings.ts';
import { type Axis, type Feature, type FeatureKind, type TilingRequest, ALONG_DEGREES, TIGHT_WIDTHS } from './request.ts';

/** Chords stray this far from the centre lines they stand for, mm: seams are placed to no better than a tenth. */
const CHORD_TOLERANCE = 0.02;
/** Samples along a groove are this share of its width apart. */
const SAMPLE_SHARE = 0.1;

/** What of the work matters for seams, told without direction. */
export interface WorkLines {
  /** Centre lines as points. */
  readonly lines: readonly (readonly Point[])[];
  /** What disturbs a seam of either axis: how far it reaches, and the place to name. */
  readonly spots: readonly { readonly kind: FeatureKind; readonly box: Box; readonly at: Point }[];
  /** Samples along lines that a seam should not run beside, each with what reaches to both sides of the line. */
  readonly runs: readonly { readonly kind: FeatureKind; readonly samples: readonly PathSample[]; readonly closed: boolean; readonly aside: number }[];
}

/** Looks a request's work over once, for both axes. */
export function workLines({ channel, holes, board, cutters }: TilingRequest): WorkLines {
  const width = channel?.width ?? 0;
  const paths = (channel?.centreLines ?? []).filter((path) => !isPointPath(path));
  const points = (channel?.centreLines ?? []).filter(isPointPath);
  const lines = paths.map((path) => closedPoints(path));
  const sampled = paths.map((path) => ({ kind: 'along' as const, samples: samplePath(path, width * SAMPLE_SHARE), closed: path.closed, aside: width / 2 }));
  const edges = (board?.loops ?? []).filter((loop) => loop.length > 2).map((loop) => edgeRun(loop, Math.max(...cutters)));
  const half = width / 2;
  return {
    lines, runs: [...sampled, ...edges],
    spots: [
      ...holes.map((hole) => spot('hole', holeEnds(hole), hole.diameter / 2, hole.centre)),
      ...points.map(({ start }) => spot('end', [start], half)),
      ...paths.filter(({ closed }) => !closed).flatMap((path) => strokeEndsOf(path).map((at) => spot('end', [at], half))),
      ...crossingsBetween(lines).map((at) => spot('crossing', [at], half)),
      ...sampled.flatMap((run) => tightBends(run, width * TIGHT_WIDTHS)).map((bend) => spot('bend', bend, half, bend[bend.length >> 1]!)),
    ],
  };
}

function spot(kind: FeatureKind, points: readonly Point[], radius: number, at = points[0]!): WorkLines['spots'][number] {
  const { minX, minY, maxX, maxY } = boxOfPoints(points)!;
  return { kind, at, box: { minX: minX - radius, minY: minY - radius, maxX: maxX + radius, maxY: maxY + radius } };
}

function closedPoints(path: Path): readonly Point[] {
  const points = flattenPath(path, CHORD_TOLERANCE);
  return path.closed ? [...points, points[0]!] : points;
}

function strokeEndsOf(path: Path): readonly Point[] {
  return [path.start, path.segments.at(-1)?.end ?? path.start];
}

/** The outline is cut beside the board: what reaches beside it is the cutter. */
function edgeRun(loop: readonly Point[], diameter: number): WorkLines['runs'][number] {
  const path: Path = { start: loop[0]!, segments: [...loop.slice(1), loop[0]!].map((end) => ({ kind: 'line', end })), closed: true };
  return { kind: 'edge', samples: samplePath(path, diameter), closed: true, aside: diameter };
}

/** Stretches where the line turns faster than a circle of this radius, corners among them. */
function tightBends({ samples, closed }: { readonly samples: readonly PathSample[]; readonly closed: boolean }, radius: number): Point[][] {
  return stretches(samples, closed, (a, b, apart) => turning(a, b) > apart / radius).map((stretch) => stretch.map(({ point }) => point));
}

const turning = (a: PathSample, b: PathSample): number => Math.abs(Math.atan2(cross(a.tangent, b.tangent), dot(a.tangent, b.tangent)));

/** Runs of neighbouring samples between which something holds. */
function stretches(samples: readonly PathSample[], closed: boolean, holds: (a: PathSample, b: PathSample, apart: number) => boolean): PathSample[][] {
  const found: PathSample[][] = [];
  const apart = samples.length > 1 ? samples[1]!.distance - samples[0]!.distance : 0;
  const count = closed ? samples.length : samples.length - 1;
  let run: PathSample[] | undefined;
  for (let i = 0; i < count; i++) {
    const [a, b] = [samples[i]!, samples[(i + 1) % samples.length]!];
    if (!holds(a, b, apart)) run = undefined;
    else if (run) run.push(b);
    else found.push((run = [a, b]));
  }
  return found;
}

const LEAST_SINE = Math.sin((ALONG_DEGREES * Math.PI) / 180);

/** What a seam of this axis should keep clear of. */
export function featuresAlong({ spots, runs }: WorkLines, axis: Axis): Feature[] {
  return [
    ...spots.map(({ kind, box, at }): Feature => ({ kind, at, ...spanned(box, axis, 0) })),
    ...runs.flatMap(({ kind, samples, closed, aside }) => stretches(samples, closed, (a, b) => runAlong(a, b, axis)).map((stretch): Feature => (
      { kind, at: stretch[stretch.length >> 1]!.point, ...spanned(boxOfPoints(stretch.map(({ point }) => point))!, axis, aside) }
    ))),
  ];
}

/** Whether the line runs along a seam at one of two neighbouring samples, or turns back between them. */
function runAlong({ tangent: a }: PathSample, { tangent: b }: PathSample, axis: Axis): boolean {
  return Math.abs(a[axis]) < LEAST_SINE || Math.abs(b[axis]) < LEAST_SINE || a[axis] * b[axis] < 0;
}

const spanned = (box: Box, axis: Axis, aside: number): { readonly from: number; readonly to: number } =>
  (axis === 'x' ? { from: box.minX - aside, to: box.maxX + aside } : { from: box.minY - aside, to: box.maxY + aside });
