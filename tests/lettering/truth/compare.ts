import {
  distance, flattenPath, type IndexedSegment, makeSegmentIndex, type Path, pathEnd, type PathSample, type Point, samplePath, type SegmentIndex,
} from '../../../src/geometry/index.ts';
import type { TrueStroke, Truth } from './truth.ts';

/** Distances as percent of the stroke width. */
export interface Errors {
  readonly mean: number;
  readonly p95: number;
  readonly max: number;
}

/** What is compared: a tracing, or anything else that has strokes. */
export interface Lines {
  readonly strokes: readonly { readonly path: Path }[];
}

export interface Comparison {
  readonly count: number;
  /** Whether the number of strokes is one of the right ones. */
  readonly rightCount: boolean;
  /** Both ways, without what lies within a width (along the stroke) of an end. */
  readonly inner: Errors;
  /** Both ways, ends included. */
  readonly whole: Errors;
  /** For each true stroke the distances from its inner places to what was traced. */
  readonly byStroke: readonly Errors[];
  /** For each traced stroke the true stroke that it follows, or -1: at least 97 % of its inner places lie within 0.15 w. */
  readonly follows: readonly number[];
  /** Whether traced and true strokes pair off, and each traced one covers its true one from end to end. */
  readonly matched: boolean;
  /** Places inside a stroke where it turns by more than ten degrees within a hundredth of its width. */
  readonly kinks: number;
  readonly worstKink: number;
  /** Tightest bend of a traced stroke, as a share of the width. */
  readonly leastRadius: number;
  /** Largest distance from a true free end to the nearest traced end, percent; nothing when there is none. */
  readonly ends: number | undefined;
}

const NEAR = 0.15;
const MOSTLY = 0.97;
const KINK_DEGREES = 10;

/** How a tracing differs from the truth. Distances go from points to segments, in both directions. */
export function compare(truth: Truth, lines: Lines): Comparison {
  const { width } = truth;
  const traced = lines.strokes.map(({ path }) => measured(path, width));
  const meant = truth.strokes.map(({ path }) => measured(path, width));
  const [onTraced, onTruth] = [indexOf(traced), indexOf(meant)];
  const off = (index: SegmentIndex, samples: readonly PathSample[]) => samples.map(({ point }) => 100 * (index.nearest(point, Infinity)?.distance ?? Infinity) / width);
  const bends = traced.map(({ path }) => bendsOf(path, width));
  const follows = traced.map((one) => meant.findIndex((other) => shareNear(one.inner.length ? one.inner : one.samples, other, width) >= MOSTLY));
  return {
    count: traced.length,
    rightCount: truth.counts.includes(traced.length),
    inner: errorsOf([...traced.flatMap(({ inner }) => off(onTruth, inner)), ...meant.flatMap(({ inner }) => off(onTraced, inner))]),
    whole: errorsOf([...traced.flatMap(({ samples }) => off(onTruth, samples)), ...meant.flatMap(({ samples }) => off(onTraced, samples))]),
    byStroke: meant.map(({ inner }) => errorsOf(off(onTraced, inner))),
    follows,
    matched: follows.length === meant.length && meant.every((one, i) => follows.includes(i) && shareNear(one.inner, traced[follows.indexOf(i)]!, width) >= MOSTLY),
    kinks: bends.reduce((sum, { kinks }) => sum + kinks, 0),
    worstKink: Math.max(0, ...bends.map(({ worst }) => worst)),
    leastRadius: Math.min(...bends.map(({ radius }) => radius)),
    ends: endError(truth.strokes, lines, width),
  };
}

/** Mean, 95th percentile and largest of some distances; all nothing when there are none. */
export function errorsOf(distances: readonly number[]): Errors {
  if (distances.length === 0) return { mean: 0, p95: 0, max: 0 };
  const sorted = [...distances].sort((a, b) => a - b);
  return { mean: sorted.reduce((a, b) => a + b) / sorted.length, p95: sorted[Math.floor(0.95 * (sorted.length - 1))]!, max: sorted.at(-1)! };
}

interface Measured {
  readonly path: Path;
  readonly segments: readonly IndexedSegment[];
  readonly index: SegmentIndex;
  readonly samples: readonly PathSample[];
  readonly inner: readonly PathSample[];
}

function measured(path: Path, width: number): Measured {
  const points = flattenPath(path, width * 1e-5);
  const closed = path.closed ? [...points, points[0]!] : points;
  const segments = closed.length === 1 ? [{ from: closed[0]!, to: closed[0]! }] : closed.slice(1).map((to, i) => ({ from: closed[i]!, to }));
  const samples = samplePath(path, width / 20);
  const length = samples.at(-1)!.distance;
  const inner = path.closed ? samples : samples.filter(({ distance: along }) => along >= width && along <= length - width);
  return { path, segments, index: makeSegmentIndex(segments), samples, inner };
}

const indexOf = (lines: readonly Measured[]): SegmentIndex => makeSegmentIndex(lines.flatMap(({ segments }) => segments));

const shareNear = (samples: readonly PathSample[], { index }: Measured, width: number): number =>
  (samples.length === 0 ? 1 : samples.filter(({ point }) => index.nearest(point, NEAR * width) !== undefined).length / samples.length);

function bendsOf(path: Path, width: number): { kinks: number; worst: number; radius: number } {
  const samples = samplePath(path, width / 100);
  let [kinks, worst, radius, inside] = [0, 0, Infinity, false];
  for (let i = path.closed ? 0 : 1; i < samples.length; i++) {
    const [a, b] = [samples.at(i - 1)!.tangent, samples[i]!.tangent];
    const turned = Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) * (180 / Math.PI);
    if (turned > KINK_DEGREES && !inside) kinks += 1;
    inside = turned > KINK_DEGREES;
    worst = Math.max(worst, turned);
    radius = Math.min(radius, 1 / Math.abs(samples[i]!.curvature) / width);
  }
  return { kinks, worst, radius };
}

function endError(strokes: readonly TrueStroke[], lines: Lines, width: number): number | undefined {
  const free = strokes.flatMap(({ path, ends }) => ends.flatMap((end, i) => (end === 'free' ? [i === 0 ? path.start : pathEnd(path)] : [])));
  if (free.length === 0) return undefined;
  const found = lines.strokes.flatMap(({ path }): Point[] => (path.closed ? [] : [path.start, pathEnd(path)]));
  return Math.max(...free.map((place) => (100 * Math.min(Infinity, ...found.map((end) => distance(end, place)))) / width));
}
