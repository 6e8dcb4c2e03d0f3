import { flattenPath, makeRegionIndex, makeSegmentIndex, pathLength, type Point, type RegionIndex, regionFromLoops, samplePath, type PathSample } from '../../../src/geometry/index.ts';
import type { TracedStroke, Tracing } from '../../../src/lettering/index.ts';
import { compare } from '../truth/compare.ts';

/** What can be said of a tracing without knowing the pen's way. Percents are of the median width of all its strokes. */
export interface Judgement {
  readonly strokes: number;
  /** Strokes with a free end that are shorter than their width: leftovers of corners. */
  readonly spurs: number;
  readonly kinks: number;
  /** For each free end, how far the outline ahead is from half the width there, percent. */
  readonly ends: readonly number[];
  /** For places of the outline, how far off they are from half the width about the nearest stroke, percent. */
  readonly sides: readonly number[];
  /** Strokes that say themselves that they are not sure. */
  readonly unsure: number;
  readonly regions: number;
}

const UNSURE = 0.25;

export function judge({ strokes, outlines, regions }: Tracing): Judgement {
  const region = regionFromLoops(outlines.flatMap(({ paths }) => paths.map((path) => flattenPath(path, 0.02))), 'nonzero');
  const index = makeRegionIndex(region);
  const usual = medianWidth(strokes);
  const open = strokes.filter(({ path }) => !path.closed);
  return {
    strokes: strokes.length,
    spurs: open.filter((stroke) => stroke.ends.some(({ kind }) => kind === 'free') && stroke.ends.some(({ kind }) => kind === 'joins') && pathLength(stroke.path) < widthAt(stroke, 0.5)).length,
    kinks: strokes.reduce((sum, stroke) => sum + kinksOf(stroke, usual), 0),
    ends: open.flatMap((stroke) => endGaps(stroke, index).map((gap) => (100 * gap) / usual)),
    sides: sideGaps(strokes, region.loops.flatMap((loop) => loop.filter((_, i) => i % 4 === 0))).map((gap) => (100 * gap) / usual),
    unsure: strokes.filter(({ confidence }) => confidence < UNSURE).length,
    regions: regions.length,
  };
}

/** Median of the widths the strokes carry, mm; 1 when they carry none. */
function medianWidth(strokes: readonly TracedStroke[]): number {
  const widths = strokes.flatMap((stroke) => stroke.widths.map(({ width }) => width)).filter((width) => width > 0).sort((a, b) => a - b);
  return widths[widths.length >> 1] ?? 1;
}

const kinksOf = (stroke: TracedStroke, width: number): number =>
  compare({ name: '', width, outlines: [], strokes: [], counts: [] }, { strokes: [stroke] }).kinks;

/** The lettering's width at a share of the stroke's length. */
function widthAt({ widths, path }: TracedStroke, share: number): number {
  const along = share * (widths.at(-1)?.along ?? pathLength(path));
  return (widths.find((one) => one.along >= along) ?? widths.at(-1))?.width ?? 0;
}

function endGaps(stroke: TracedStroke, index: RegionIndex): number[] {
  const samples = samplePath(stroke.path, Math.max(1e-3, pathLength(stroke.path) / 200));
  return stroke.ends.flatMap(({ kind }, i) => {
    if (kind !== 'free') return [];
    const { point, tangent } = samples.at(-i)!;
    const ahead = i === 0 ? { x: -tangent.x, y: -tangent.y } : tangent;
    const width = widthAt(stroke, i);
    if (ahead.x === 0 && ahead.y === 0) return [];
    const reach = index.contains(point) ? index.castRay(point, ahead) : 0;
    return [Math.abs(reach - width / 2)];
  });
}

interface Placed {
  readonly sample: PathSample;
  readonly half: number;
}

function sideGaps(strokes: readonly TracedStroke[], places: readonly Point[]): number[] {
  const placed = strokes.map((stroke): Placed[] => {
    const length = pathLength(stroke.path);
    return length === 0 ? [] : samplePath(stroke.path, Math.max(length / 2000, 0.5)).map((sample) => ({ sample, half: widthAt(stroke, sample.distance / length) / 2 }));
  });
  const segments = placed.flatMap((line) => line.slice(1).map((to, i) => ({ from: line[i]!.sample.point, to: to.sample.point, half: (line[i]!.half + to.half) / 2 })));
  const index = makeSegmentIndex(segments);
  return places.flatMap((place) => {
    const nearest = index.nearest(place, Infinity);
    if (nearest === undefined) return [];
    const { half } = segments[nearest.segment]!;
    return [Math.abs(nearest.distance - half)];
  });
}
