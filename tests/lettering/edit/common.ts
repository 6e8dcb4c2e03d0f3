import type { Stroke } from '../../../src/artwork/index.ts';
import {
  type Affine, applyToPath, applyToPoint, determinant, distance, flattenPath, makeSegmentIndex, multiply, type Path, pathLength, type Point, rotation, samplePath, scaling, translation,
} from '../../../src/geometry/index.ts';
import { reversedStroke } from '../../../src/lettering/edit/carry.ts';

/** Turned, mirrored, and scaled: what keeps shapes as they are, named for titles. */
export const SIMILARITIES: readonly (readonly [string, Affine])[] = [
  ['turned by 37 degrees', rotation(37)],
  ['turned by 90 degrees and shifted', multiply(translation(1000, -300), rotation(90))],
  ['mirrored', scaling(-1, 1)],
];

export const moved = (strokes: readonly Stroke[], m: Affine): Stroke[] => {
  const growth = Math.sqrt(Math.abs(determinant(m)));
  return strokes.map((stroke) => ({
    ...stroke, path: applyToPath(m, stroke.path),
    ...(stroke.widths && { widths: stroke.widths.map(({ along, width }) => ({ along: along * growth, width: width * growth })) }),
    ...(stroke.doubts && { doubts: stroke.doubts.map((doubt) => ({ ...doubt, at: applyToPoint(m, doubt.at) })) }),
  }));
};

export const reversedAll = (strokes: readonly Stroke[]): Stroke[] => strokes.map(reversedStroke);

/** Every other one the other way round, in another order. */
export const shuffled = (strokes: readonly Stroke[]): Stroke[] => {
  const mixed = strokes.map((stroke, i) => (i % 2 ? reversedStroke(stroke) : stroke));
  return [...mixed.filter((_, i) => i % 3 === 1), ...mixed.filter((_, i) => i % 3 === 2), ...mixed.filter((_, i) => i % 3 === 0)];
};

/** Largest distance of either list of paths from the other, mm, from points to segments. */
export function apart(a: readonly Path[], b: readonly Path[]): number {
  return Math.max(oneWay(a, b), oneWay(b, a));
}

export function oneWay(from: readonly Path[], to: readonly Path[]): number {
  const index = makeSegmentIndex(to.flatMap((path) => {
    const points = flattenPath(path, 1e-5);
    if (path.closed || points.length === 1) points.push(points[0]!);
    return points.slice(1).map((end, i) => ({ from: points[i]!, to: end }));
  }));
  const places = from.flatMap((path) => samplePath(path, Math.max(0.3, pathLength(path) / 300)).map(({ point }) => point));
  return places.reduce((most, place) => Math.max(most, index.nearest(place, Infinity)?.distance ?? Infinity), 0);
}

export const paths = (strokes: readonly Stroke[]): Path[] => strokes.map(({ path }) => path);

/** An arc about a centre, angles in degrees, counter-clockwise. */
export function arc(centre: Point, radius: number, from: number, to: number): Path {
  const at = (angle: number): Point => ({ x: centre.x + radius * Math.cos((angle * Math.PI) / 180), y: centre.y + radius * Math.sin((angle * Math.PI) / 180) });
  const middle = at((from + to) / 2);
  return { start: at(from), segments: [middle, at(to)].map((end) => ({ kind: 'arc', end, centre, clockwise: to < from })), closed: false };
}

/** Greatest break of a path's tangent where segments meet, degrees. */
export function greatestBreak(path: Path): number {
  const pieces = path.segments.map((segment, i) => ({ start: i === 0 ? path.start : path.segments[i - 1]!.end, segment }));
  const ends = pieces.map(({ start, segment }) => {
    const samples = samplePath({ start, segments: [segment], closed: false }, distance(start, segment.end) / 4 + 1e-9);
    return [samples[0]!.tangent, samples.at(-1)!.tangent] as const;
  });
  return ends.reduce((most, [first], i) => {
    const before = i > 0 ? ends[i - 1]![1] : path.closed ? ends.at(-1)![1] : first;
    return Math.max(most, (Math.abs(Math.atan2(before.x * first.y - before.y * first.x, before.x * first.x + before.y * first.y)) * 180) / Math.PI);
  }, 0);
}
