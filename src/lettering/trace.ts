import type { Outline } from '../artwork/artwork.ts';
import { components, type Path, type Point, type Region } from '../geometry/index.ts';
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
import { branchesOf, dropBulges } from './skeleton.ts';
import { trackOf } from './track.ts';
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
  const tracing = { strokes: [] as TracedStroke[], junctions: [] as Junction[], regions: [], outlines };
  if (cleaned === undefined) return tracing;
  for (const part of components(cleaned.region)) {
    checkpoint();
    const traced = traceComponent(part, cleaned.width, options.tolerance ?? FIT_SHARE * cleaned.width);
    const before = tracing.strokes.length;
    tracing.strokes.push(...traced.strokes.map((stroke) => ({ ...stroke, ends: stroke.ends.map((end) => shifted(end, before)) as [StrokeEnd, StrokeEnd] })));
    tracing.junctions.push(...traced.junctions);
  }
  return tracing;
}

const shifted = (end: StrokeEnd, by: number): StrokeEnd => (end.kind === 'joins' ? { ...end, stroke: end.stroke + by } : end);

/** What of a component's axis is worth keeping, with the boundary it came from. */
export function skeletonOf(region: Region, width: number): { graph: MedialGraph; alive: Uint8Array } {
  const graph = medialGraph(sampleBoundary(region, STEP * width));
  return { graph, alive: dropBulges(graph, peel(graph)) };
}

function traceComponent(region: Region, width: number, tolerance: number): { strokes: TracedStroke[]; junctions: Junction[] } {
  const { graph, alive } = skeletonOf(region, width);
  const shore: Shore = { boundary: graph.boundary, walk: walkOf(graph.boundary) };
  const branches = branchesOf(graph, alive);
  const tracks = branches.map((branch) => trackOf(graph, branch));
  const knots = knotsOf(graph, shore, branches, tracks);
  const courses = coursesOf(tracks, knots);
  const lines = courses.map((course) => settle(shore, runIn(course, knots), course.closed));
  return { strokes: finished(region, courses, lines, knots, tolerance), junctions: knots.map(junctionOf) };
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
        const met = meet(line, end.followed + 2 * knot.radius, partners, knot.at);
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

