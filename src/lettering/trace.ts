import type { Outline } from '../artwork/artwork.ts';
import { components, pathFromCubics, type Region, straightCubic } from '../geometry/index.ts';
import { sampleBoundary, walkOf } from './boundary.ts';
import { type Cleaned, cleanOutlines } from './clean.ts';
import { coursesOf } from './course.ts';
import type { Shore } from './crotch.ts';
import { finishStrokes, junctionOf } from './finish.ts';
import { runIn } from './joins.ts';
import { knotsOf } from './junctions.ts';
import { type MedialGraph, medialGraph } from './medial.ts';
import { peel } from './peel.ts';
import { settle } from './settle.ts';
import { type Branch, branchesOf, dropBulges } from './skeleton.ts';
import { usualSize } from './size.ts';
import { kindOf, momentsOf } from './solid.ts';
import { swallowedAt, swallowedEnds } from './swallowed.ts';
import { type Track, trackOf } from './track.ts';
import type { StrokeEnd, TracedStroke, Tracing } from './types.ts';
import { type Uncovered, uncoveredParts } from './uncovered.ts';

export interface TraceOptions {
  /** Greatest distance between the fitted curves and the centre line found, mm; 0.002 of the stroke width when absent. */
  readonly tolerance?: number;
}

/** Boundary points stand this share of the width apart. */
const STEP = 1 / 12;

const FIT_SHARE = 0.002;

/** The centre lines of filled outlines. `checkpoint` is called between parts and may throw to stop. */
export function traceOutlines(outlines: readonly Outline[], { tolerance }: TraceOptions, checkpoint: () => void): Tracing {
  const sized = usualSize(outlines);
  return sized.back(traceSized(sized.outlines, tolerance === undefined ? {} : { tolerance: tolerance * sized.factor }, checkpoint));
}

function traceSized(outlines: readonly Outline[], options: TraceOptions, checkpoint: () => void): Tracing {
  const cleaned = cleanOutlines(outlines);
  if (cleaned === undefined) return { strokes: [], junctions: [], regions: [], uncovered: [], outlines, crumbs: 0 };
  const axes = components(cleaned.region).map((part) => {
    checkpoint();
    return axisOf(part, cleaned.width);
  });
  const width = usualWidth(axes);
  const traced = axes.map((axis) => {
    checkpoint();
    return traceAxis(axis, width, options.tolerance ?? FIT_SHARE * cleaned.width);
  });
  const { strokes, ...rest } = gathered(traced);
  return { strokes: strokes.map((stroke) => sourced(stroke, cleaned)), ...rest, outlines, crumbs: cleaned.crumbs };
}

/** With the source of the outline that covers its middle. */
function sourced(stroke: TracedStroke, { sourceAt }: Cleaned): TracedStroke {
  const { path } = stroke;
  const source = sourceAt(path.segments[path.segments.length >> 1]?.end ?? path.start) ?? sourceAt(path.start);
  return source === undefined ? stroke : { ...stroke, source };
}

type Traced = Pick<Tracing, 'strokes' | 'junctions' | 'regions' | 'uncovered'>;

/** The parts' results in one, partners renumbered. */
function gathered(traced: readonly Traced[]): Traced {
  let count = 0;
  const strokes = traced.flatMap((one) => {
    const before = count;
    count += one.strokes.length;
    return one.strokes.map((stroke): TracedStroke => ({ ...stroke, ends: [shifted(stroke.ends[0], before), shifted(stroke.ends[1], before)] }));
  });
  return {
    strokes, junctions: traced.flatMap(({ junctions }) => junctions), regions: traced.flatMap(({ regions }) => regions), uncovered: traced.flatMap(({ uncovered }) => uncovered),
  };
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
  readonly shore: Shore;
  readonly branches: readonly Branch[];
  readonly tracks: readonly Track[];
}

function axisOf(region: Region, width: number): Axis {
  const { graph, alive } = skeletonOf(region, width);
  const shore: Shore = { boundary: graph.boundary, walk: walkOf(graph.boundary) };
  const along = (kept: Uint8Array): Axis => {
    const branches = branchesOf(graph, kept);
    return { region, graph, shore, branches, tracks: branches.map((branch) => trackOf(graph, branch)) };
  };
  const spurs = swallowedEnds(shore, graph, alive);
  return along(spurs.length === 0 ? alive : withNodes(alive, wantedSpurs(along(withNodes(alive, spurs)), spurs)));
}

/** The spurs that a stroke runs on into where they are arms of a junction. */
function wantedSpurs({ graph, shore, branches, tracks }: Axis, spurs: readonly (readonly number[])[]): (readonly number[])[] {
  const wanted = new Set(knotsOf(graph, shore, branches, tracks).flatMap(swallowedAt).flatMap(({ branch }) => branches[branch]!.nodes));
  return spurs.filter((nodes) => wanted.has(nodes.at(-1)!));
}

function withNodes(alive: Uint8Array, more: readonly (readonly number[])[]): Uint8Array {
  const all = alive.slice();
  for (const node of more.flat()) all[node] = 1;
  return all;
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
  const { region, graph, shore, branches, tracks } = axis;
  const kind = kindOf(region, tracks, width);
  if (kind === 'dot') return { strokes: [dotStroke(region)], junctions: [], regions: [], uncovered: [] };
  if (kind === 'solid') return { strokes: [], junctions: [], regions: [{ region, says: NO_STROKE, at: momentsOf(region).centre }], uncovered: [] };
  const knots = knotsOf(graph, shore, branches, tracks);
  const courses = coursesOf(tracks, knots);
  const lines = courses.map((course) => settle(shore, runIn(course, knots), course.closed));
  const strokes = finishStrokes({ region, shore, courses, lines, knots, tolerance });
  const uncovered = uncoveredParts(tracks, strokes, width ?? 0);
  return { strokes: strokes.map((stroke, i) => doubting(stroke, uncovered.filter((part) => part.stroke === i))), junctions: knots.map(junctionOf), regions: [], uncovered: uncovered.map(({ at }) => at) };
}

/** A stroke beside which a part of the lettering is left without one. */
function doubting(stroke: TracedStroke, parts: readonly Uncovered[]): TracedStroke {
  return parts.length === 0 ? stroke : { ...stroke, doubts: [...stroke.doubts, ...parts.map(({ at }) => ({ at, says: LEFT_OUT }))] };
}

const LEFT_OUT = 'no stroke covers this part of the lettering. If it should be lit, add it with “Draw” in “Repair strokes”';

const NO_STROKE = 'a shape that is no stroke of a pen (about as wide as it is long, or its width changes too much along it)';

/** A dot's stroke is never shorter than this share of its width, so that it keeps a direction for what makes bars of dots. */
const SHORTEST = 0.02;

/** A dot whose longer half-axis is under this many shorter ones is round: it has no direction of its own, and noise must not give it one. */
const ROUND = 1.04;

/** A dot as a short stroke along its longer axis, as long as a round pen of its width would make; a round one lies along +x. */
function dotStroke(region: Region): TracedStroke {
  const { centre, long, short, direction: own } = momentsOf(region);
  const round = long < ROUND * short;
  const [reach, direction] = round ? [SHORTEST * short, 0] : [long - short, own];
  const [dx, dy] = [reach * Math.cos(direction), reach * Math.sin(direction)];
  const [start, end] = [{ x: centre.x - dx, y: centre.y - dy }, { x: centre.x + dx, y: centre.y + dy }];
  const [, control1, control2] = straightCubic(start, end);
  const widths = [{ along: 0, width: 2 * short }, { along: 2 * reach, width: 2 * short }];
  return { path: pathFromCubics(start, [[control1, control2, end]], false), widths, ends: [{ kind: 'free' }, { kind: 'free' }], confidence: 1, doubts: [] };
}

