import {
  type IndexedSegment, type Path, type PathSample, type Point, type SegmentIndex, type StartedSegment, distance, leastRadius, makeSegmentIndex, pathFromCubics, pathLength, pathSegmentsWithStarts,
  samplePath, segmentCubic, splitCubic,
} from '../../geometry/index.ts';

/** A place on one of several centre lines. */
export interface StrandSample extends PathSample {
  /** Which centre line it lies on. */
  readonly line: number;
}

interface Line {
  readonly length: number;
  readonly closed: boolean;
  readonly first: number;
  readonly end: number;
}

/** Centre lines sampled finely enough that the chord between neighbours stands for the curve. */
export interface Strands {
  readonly samples: readonly StrandSample[];
  /** For each centre line: its length, and the places of its first and one past its last sample. */
  readonly lines: readonly Line[];
  /** Nearest chord between neighbouring samples; its segment number is the place of the chord's first sample. */
  readonly index: SegmentIndex;
}

/**
 * Two places on one line belong to different strands when the way along the line is this many times the straight way:
 * just under a half turn's pi / 2, so that the legs of a hairpin see each other and a bend does not see itself.
 */
const DETOUR = 1.55;

/** Chords between samples stray at most this far from a bend, mm, as long as they need not be a hundred times shorter for it. */
const CHORD_TOLERANCE = 0.001;
const FINEST = 1 / 100;

/** A piece of a bend with no more samples than this is not worth halving. */
const SAMPLES_PER_PIECE = 16;

/** Samples centre lines at most every `spacing` mm, closer in tight bends, and where segments meet, so that no corner is cut. */
export function makeStrands(paths: readonly Path[], spacing: number): Strands {
  const samples: StrandSample[] = [];
  const lines = paths.map((path, line): Line => {
    const first = samples.length;
    for (const sample of samplesOf(path, spacing)) samples.push({ ...sample, line });
    return { length: pathLength(path), closed: path.closed, first, end: samples.length };
  });
  return { samples, lines, index: makeSegmentIndex(lines.flatMap((line) => chords(samples, line))) };
}

function samplesOf(path: Path, spacing: number): PathSample[] {
  let passed = 0;
  const pieces = pathSegmentsWithStarts(path).flatMap((started) => piecesOf(started, spacing)).map((piece) => {
    const own = samplePath(piece, spacingIn(piece, spacing)).map((sample) => ({ ...sample, distance: passed + sample.distance }));
    passed = own.at(-1)!.distance;
    return own;
  }).filter((own) => own.length > 1);
  if (pieces.length === 0) return samplePath({ ...path, segments: [] }, spacing);
  const last = pieces.at(-1)!.at(-1)!;
  return [...pieces.flatMap((own) => own.slice(0, -1)), ...(path.closed ? [] : [last])];
}

/** A cubic is halved about a tight bend, so that only the bend's own piece is sampled closely. */
function piecesOf({ start, segment }: StartedSegment, spacing: number): Path[] {
  const piece: Path = { start, segments: [segment], closed: false };
  const closest = spacingIn(piece, spacing);
  if (segment.kind !== 'cubic' || closest === spacing || pathLength(piece) <= SAMPLES_PER_PIECE * closest) return [piece];
  return splitCubic(segmentCubic(start, segment), 0.5).flatMap(([from, ...rest]) => {
    const half = pathFromCubics(from, [rest], false);
    return piecesOf({ start: from, segment: half.segments[0]! }, spacing);
  });
}

/** From the sagitta h^2 / (8 r) of a chord h across a bend of radius r. */
function spacingIn(piece: Path, spacing: number): number {
  const bend = Math.sqrt(8 * leastRadius(piece).radius * CHORD_TOLERANCE);
  return Math.max(spacing * FINEST, Math.min(spacing, bend));
}

/** The nearest place on another strand, or on the same line a real detour away, within `within` mm. */
export function nearestOtherStrand(strands: Strands, at: number, within: number): { readonly distance: number; readonly point: Point; readonly sample: number } | undefined {
  const here = strands.samples[at]!;
  // Both ends of a chord must lie on the other strand, or its nearest point might not.
  const isOther = (sample: number) => isOtherStrand(strands, here, strands.samples[sample]!);
  const found = strands.index.nearest(here.point, within, (chord) => isOther(chord) && isOther(chordEnd(strands, chord)));
  return found && { distance: found.distance, point: found.point, sample: found.segment };
}

/** Whether two samples lie on different strands. */
function isOtherStrand({ lines }: Strands, a: StrandSample, b: StrandSample): boolean {
  if (a.line !== b.line) return true;
  const { length, closed } = lines[a.line]!;
  const along = Math.abs(a.distance - b.distance);
  const way = closed ? Math.min(along, length - along) : along;
  return way > DETOUR * distance(a.point, b.point) && way > 0;
}

/** One chord per sample: to its neighbour, round to the first on a closed line, of no length at an open line's end. */
function chords(samples: readonly StrandSample[], line: Line): IndexedSegment[] {
  return samples.slice(line.first, line.end).map(({ point }, i) => ({ from: point, to: samples[following(line, line.first + i)]!.point }));
}

function chordEnd({ samples, lines }: Strands, chord: number): number {
  return following(lines[samples[chord]!.line]!, chord);
}

function following({ first, end, closed }: Line, at: number): number {
  if (at + 1 < end) return at + 1;
  return closed ? first : at;
}
