import type { Outline } from '../artwork/artwork.ts';
import { components, type Path, pathFromCubics, type Point, type Region, straightCubic } from '../geometry/index.ts';
import { sampleBoundary, walkOf } from './boundary.ts';
import { cleanOutlines } from './clean.ts';
import { type Course, coursesOf } from './course.ts';
import type { Shore } from './crotch.ts';
import { finishEnd, indexOf } from './ends.ts';
import { fitCubics } from './fit-cubics.ts';
import { meet, runIn } from './joins.ts';
import { type Knot, knotsOf } from './junctions.ts';
import { type MedialGraph, medialGraph } from './medial.ts';
import { peel } from './peel.ts';
import { settle, type Settled } from './settle.ts';
import { type Branch, branchesOf, dropBulges } from './skeleton.ts';
import { kindOf, momentsOf } from './solid.ts';
import { type Track, trackOf } from './track.ts';
import type { Junction, StrokeEnd, TracedStroke, Tracing } from './types.ts';

export interface TraceOptions {
  /** Greatest distance between the fitted curves and the centre line found, mm; 0.002 of the stroke width when absent. */
  readonly tolerance?: number;
}

/** Boundary points stand this share of the width apart. */
const STEP = 1 / 12;

const FIT_SHARE = 0.002;

/** The centre lines of filled outlines. `checkpoint` is called between parts and may throw to stop. */
export function traceOutlines(outlines: readonly Outline[], options: TraceOptions, checkpoint: () => void): Tracing {
  const cleaned = cleanOutlines(outlines);
  if (cleaned === undefined) return { strokes: [], junctions: [], regions: [], outlines };
  const axes = components(cleaned.region).map((part) => {
    checkpoint();
    return axisOf(part, cleaned.width);
  });
  const width = usualWidth(axes);
  const traced = axes.map((axis) => {
    checkpoint();
    return traceAxis(axis, width, options.tolerance ?? FIT_SHARE * cleaned.width);
  });
  return { ...gathered(traced), outlines };
}

type Traced = Pick<Tracing, 'strokes' | 'junctions' | 'regions'>;

/** The parts' results in one, partners renumbered. */
function gathered(traced: readonly Traced[]): Traced {
  let count = 0;
  const strokes = traced.flatMap((one) => {
    const before = count;
    count += one.strokes.length;
    return one.strokes.map((stroke): TracedStroke => ({ ...stroke, ends: [shifted(stroke.ends[0], before), shifted(stroke.ends[1], before)] }));
  });
  return { strokes, junctions: traced.flatMap(({ junctions }) => junctions), regions: traced.flatMap(({ regions }) => regions) };
}

const shifted = (end: StrokeEnd, by: number): StrokeEnd => (end.kind === 'joins' ? { ...end, stroke: end.stroke + by } : end);

/** What of a component's axis is worth keeping, with the boundary it came from. */
export function skeletonOf(region: Region, width: number): { graph: MedialGraph; alive: Uint8Array } {
  const graph = medialGraph(sampleBoundary(region, STEP * width));
  return { graph, alive: dropBulges(graph, peel(graph)) };
}

interface Axis {
  readonly region: Region;
  readonly graph: MedialGraph;
  readonly branches: readonly Branch[];
  readonly tracks: readonly Track[];
}

function axisOf(region: Region, width: number): Axis {
  const { graph, alive } = skeletonOf(region, width);
  const branches = branchesOf(graph, alive);
  return { region, graph, branches, tracks: branches.map((branch) => trackOf(graph, branch)) };
}

/** The width in the middle of all lengths of axis, parts that are no longer than wide left out. */
function usualWidth(axes: readonly Axis[]): number | undefined {
  const pieces = axes.flatMap(({ region, tracks }) => (kindOf(region, tracks, undefined) !== 'strokes' ? [] : tracks.flatMap(({ radius, along }) =>
    radius.slice(1).map((r, i) => ({ width: 2 * r, length: along[i + 1]! - along[i]! })))));
  pieces.sort((a, b) => a.width - b.width);
  const half = pieces.reduce((sum, { length }) => sum + length, 0) / 2;
  let passed = 0;
  return pieces.find(({ length }) => (passed += length) >= half)?.width;
}

function traceAxis(axis: Axis, width: number | undefined, tolerance: number): Traced {
  const { region, graph, branches, tracks } = axis;
  const kind = kindOf(region, tracks, width);
  if (kind === 'dot') return { strokes: [dotStroke(region)], junctions: [], regions: [] };
  if (kind === 'solid') return { strokes: [], junctions: [], regions: [{ region, says: NO_STROKE, at: momentsOf(region).centre }] };
  const shore: Shore = { boundary: graph.boundary, walk: walkOf(graph.boundary) };
  const knots = knotsOf(graph, shore, branches, tracks);
  const courses = coursesOf(tracks, knots);
  const lines = courses.map((course) => settle(shore, runIn(course, knots), course.closed));
  return { strokes: finished(region, courses, lines, knots, tolerance), junctions: knots.map(junctionOf), regions: [] };
}

const NO_STROKE = 'this shape is no stroke: it is about as wide as it is long, or its width changes too much along it';

/** A dot's stroke is never shorter than this share of its width, so that it keeps a direction. */
const SHORTEST = 0.02;

/** A dot as a short stroke along its longer axis, as long as a round pen of its width would make. */
function dotStroke(region: Region): TracedStroke {
  const { centre, long, short, direction } = momentsOf(region);
  const reach = Math.max(long - short, SHORTEST * short);
  const [dx, dy] = [reach * Math.cos(direction), reach * Math.sin(direction)];
  const [start, end] = [{ x: centre.x - dx, y: centre.y - dy }, { x: centre.x + dx, y: centre.y + dy }];
  const [, control1, control2] = straightCubic(start, end);
  const widths = [{ along: 0, width: 2 * short }, { along: 2 * reach, width: 2 * short }];
  return { path: pathFromCubics(start, [[control1, control2, end]], false), widths, ends: [{ kind: 'free' }, { kind: 'free' }], confidence: 1, doubts: [] };
}

const degrees = (radians: number) => (radians * 180) / Math.PI;

const junctionOf = ({ at, radius, views, matching }: Knot): Junction => ({
  at, radius, arms: views.map(({ direction }) => degrees(direction)), pairs: matching.pairs, confidence: Math.min(1, Math.max(0, matching.margin / 60)),
});

function finished(region: Region, courses: readonly Course[], lines: readonly (readonly Settled[])[], knots: readonly Knot[], tolerance: number): TracedStroke[] {
  const index = indexOf(region);
  return courses.map((course, stroke): TracedStroke => {
    let line: readonly Settled[] = lines[stroke]!;
    const ends: StrokeEnd[] = [{ kind: 'free' }, { kind: 'free' }];
    for (const side of course.closed ? [] : [1, 0]) {
      if (side === 0) line = [...line].reverse();
      const end = course.ends[side]!;
      if (end.kind === 'free') line = line.length > 3 ? finishEnd(index, line).line : line;
      else {
        const knot = knots[end.knot]!;
        const partners = courses.flatMap((other, k) => (other.knots.includes(end.knot) ? [{ stroke: k, line: lines[k]!, closed: other.closed }] : []));
        const met = meet(line, end.followed + 2 * knot.radius, partners, knot.meeting);
        line = met.line;
        if ('stroke' in met) ends[side] = { kind: 'joins', stroke: met.stroke, at: met.at };
      }
      if (side === 0) line = [...line].reverse();
    }
    if (course.closed) ends.fill({ kind: 'joins', stroke, at: { x: line[0]!.x, y: line[0]!.y } });
    return strokeOf(line, course, ends as [StrokeEnd, StrokeEnd], knots, tolerance);
  });
}

function strokeOf(line: readonly Settled[], course: Course, ends: readonly [StrokeEnd, StrokeEnd], knots: readonly Knot[], tolerance: number): TracedStroke {
  const path: Path = fitCubics(line.map(({ x, y }): Point => ({ x, y })), course.closed, tolerance);
  const margins = course.knots.map((k) => knots[k]!.matching.margin / 60);
  let along = 0;
  const widths = line.map(({ x, y, half }, i) => {
    if (i > 0) along += Math.hypot(x - line[i - 1]!.x, y - line[i - 1]!.y);
    return { along, width: 2 * half };
  });
  return { path, widths, ends, confidence: Math.min(1, ...margins.map((margin) => Math.max(0, margin))), doubts: [] };
}

