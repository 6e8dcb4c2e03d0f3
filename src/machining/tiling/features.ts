import { type Path, type PathSample, type Point, cross, dot, flattenPath, isPointPath, samplePath, } from '../../geometry/index.ts';
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
  /** Features at a place, with their radius. */
  readonly spots: readonly { readonly kind: FeatureKind; readonly at: Point; readonly radius: number }[];
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
  const radius = width / 2;
  return {
    lines, runs: [...sampled, ...edges],
    spots: [
      ...holes.flatMap((hole) => holeEnds(hole).slice(hole.slot ? 0 : 1).map((at) => ({ kind: 'hole' as const, at, radius: hole.diameter / 2 }))),
      ...points.map(({ start }) => ({ kind: 'end' as const, at: start, radius })),
      ...paths.filter(({ closed }) => !closed).flatMap((path) => strokeEndsOf(path).map((at) => ({ kind: 'end' as const, at, radius }))),
      ...crossingsBetween(lines).map((at) => ({ kind: 'crossing' as const, at, radius })),
      ...sampled.flatMap((run) => tightPlaces(run, width * TIGHT_WIDTHS)).map((at) => ({ kind: 'bend' as const, at, radius })),
    ],
  };
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

/** Places where the line turns faster than a circle of this radius, corners among them: the middle of each such stretch. */
function tightPlaces({ samples, closed }: { readonly samples: readonly PathSample[]; readonly closed: boolean }, radius: number): Point[] {
  return stretches(samples, closed, (a, b, apart) => turning(a, b) > apart / radius).flatMap((stretch) => [stretch[0]!.point, stretch.at(-1)!.point, stretch[stretch.length >> 1]!.point]);
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
  const isAlong = ({ tangent }: PathSample) => Math.abs(tangent[axis]) < LEAST_SINE;
  return [
    ...spots.map(({ kind, at, radius }): Feature => ({ kind, from: at[axis] - radius, to: at[axis] + radius, at })),
    ...runs.flatMap(({ kind, samples, closed, aside }) => stretches(samples, closed, (a, b) => isAlong(a) || isAlong(b) || a.tangent[axis] * b.tangent[axis] < 0).map((stretch): Feature => {
      const places = stretch.map(({ point }) => point[axis]);
      return { kind, from: least(places) - aside, to: -least(places.map((place) => -place)) + aside, at: stretch[stretch.length >> 1]!.point };
    })),
  ];
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
