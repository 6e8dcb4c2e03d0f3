import type { Stroke, WidthAt } from '../../artwork/artwork.ts';
import { type IndexedSegment, makeSegmentIndex, flattenPath, type Path, pathLength, type Point, samplePath, type Segment } from '../../geometry/index.ts';
import { keptOf, movedWidths, widthsBetween } from './carry.ts';
import { cornersOf, greatestBreak } from './corners.ts';
import { tipsOf } from './landings.ts';
import { fitCubics } from '../fit-cubics.ts';
import { type Hold, smoothingMoves, stiffnessFor } from './third-differences.ts';

/** How strokes are smoothed. Lengths mm. */
export interface SmoothOptions {
  /** Wobbles of this length lose half of their height, shorter ones all but a trace. A piece between corners allows half its length, a ring a quarter. */
  readonly length: number;
  /** No place of a stroke ends up farther from where it was, and none of the old stroke farther from the new one. */
  readonly most: number;
  /** Sharper breaks stay, degrees. */
  readonly corner: number;
  /** Greatest distance of the fitted curves from the smoothed line. */
  readonly tolerance: number;
  /** An end this near to a stroke lies on it. */
  readonly reach: number;
}

export interface Departure {
  readonly distance: number;
  readonly at: Point;
}

export interface Smoothed {
  readonly strokes: readonly Stroke[];
  /** The largest departure of all, if anything was moved. */
  readonly departure?: Departure;
  /** How many strokes were changed. */
  readonly changed: number;
}

/** Smooths every stroke on its own; ends, corners, and places where others end on it stay where they are. */
export function smoothStrokes(strokes: readonly Stroke[], options: SmoothOptions, checkpoint: (done: number) => void = () => undefined): Smoothed {
  const held = strokes.map((): Point[] => []);
  for (const { on } of tipsOf(strokes, options.reach)) for (const { stroke, at } of on) held[stroke]!.push(at);
  const done = strokes.map((stroke, i) => {
    checkpoint(i / strokes.length);
    return smoothStroke(stroke, held[i]!, options);
  });
  const moved = done.flatMap(({ departure }) => (departure ? [departure] : []));
  return {
    strokes: done.map(({ stroke }) => stroke), changed: moved.length,
    ...(moved.length > 0 && { departure: moved.reduce((a, b) => (b.distance > a.distance ? b : a)) }),
  };
}

/** Corners are judged over this share of the smoothing length. */
const CORNER_SHARE = 1 / 4;

function smoothStroke(stroke: Stroke, held: readonly Point[], options: SmoothOptions): { stroke: Stroke; departure?: Departure } {
  const pieces = piecesOf(stroke, options);
  const done = pieces.map(({ path }) => smoothPiece(path, held, options));
  const moved = done.flatMap(({ departure }) => (departure ? [departure] : []));
  if (moved.length === 0) return { stroke };
  const path: Path = { start: done[0]!.path.start, segments: done.flatMap((piece) => piece.path.segments), closed: stroke.path.closed };
  const widths = widthsAfter(pieces, done.map((piece) => piece.path));
  return { stroke: { path, ...keptOf(stroke), ...(widths && { widths }) }, departure: moved.reduce((a, b) => (b.distance > a.distance ? b : a)) };
}

/** A stretch between corners, with the widths along it. A closed one has no corner. */
interface Piece {
  readonly path: Path;
  readonly length: number;
  readonly widths: readonly WidthAt[] | undefined;
}

function piecesOf({ path, widths }: Stroke, { length, corner }: SmoothOptions): Piece[] {
  const total = pathLength(path);
  if (total === 0) return [];
  const corners = cornersOf(path, corner, Math.min(length, total / 2) * CORNER_SHARE);
  if (corners.length === 0) return [{ path, length: total, widths }];
  // A closed stroke begins at its first corner from here on.
  const first = path.closed ? corners[0]! : { segment: 0, along: 0 };
  const cuts = path.closed ? [...corners, { segment: first.segment + path.segments.length, along: first.along + total }]
    : [first, ...corners, { segment: path.segments.length, along: total }];
  const ring = path.closed ? [...path.segments, ...path.segments] : path.segments;
  const around = widths && (path.closed ? [...widths, ...movedWidths(widths, 1, total).filter(({ along }) => along > total)] : widths);
  return cuts.slice(1).map((to, i): Piece => {
    const from = cuts[i]!;
    const start = from.segment === 0 ? path.start : ring[from.segment - 1]!.end;
    return {
      path: { start, segments: ring.slice(from.segment, to.segment), closed: false }, length: to.along - from.along,
      widths: around && widthsBetween(around, from.along, to.along),
    };
  });
}

function widthsAfter(pieces: readonly Piece[], paths: readonly Path[]): WidthAt[] | undefined {
  if (pieces.some(({ widths }) => widths === undefined)) return undefined;
  let passed = 0;
  return pieces.flatMap(({ widths, length }, i) => {
    const now = pathLength(paths[i]!);
    const here = movedWidths(widths!, now / length, passed);
    passed += now;
    return here;
  });
}

/** Samples per length that is smoothed; where segments are shorter still, up to so many times as many. */
const SAMPLES = 16;
const MOST_FINER = 4;

/** A piece allows waves of this share of its length to be smoothed away, not longer ones: they are its shape. */
const [OPEN_SHARE, CLOSED_SHARE] = [1 / 2, 1 / 4];

/** A closed piece is smoothed with this many smoothing lengths of itself repeated at both ends: beyond them nothing is felt. */
const OVERLAP = 6;

/** Breaks of the tangent below this, degrees, are none. */
const SMOOTH = 1;

/** How often a piece that departs too far is tied firmer before it stays as it was. */
const ATTEMPTS = 6;

/** Departures are measured on chords that stray at most this much, mm. */
const CHORD = 1e-3;

interface SmoothPiece {
  readonly path: Path;
  /** Absent where the piece stayed as it was. */
  readonly departure?: Departure;
}

function smoothPiece(path: Path, held: readonly Point[], options: SmoothOptions): SmoothPiece {
  const samples = sampledPiece(path, held, options);
  const fine = Math.min(options.tolerance, options.most / 2);
  const chord = Math.min(CHORD, options.most / 50);
  let allowed = options.most - fine;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const moves = boundedMoves(samples, allowed);
    const most = moves.reduce((greatest, { x, y }) => Math.max(greatest, Math.hypot(x, y)), 0);
    if (most <= options.tolerance && greatestBreak(path) <= SMOOTH) return { path };
    const smooth = samples.points.map((point, i): Point => ({ x: point.x + moves[i]!.x, y: point.y + moves[i]!.y }));
    const found = refitted(path, evenly(smooth, samples), fine);
    const departure = departureOf(path, found, chord);
    if (departure.distance <= options.most - 2 * chord) return { path: found, departure };
    allowed *= (0.8 * options.most) / departure.distance;
  }
  return { path };
}

interface Samples {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly stiffness: number;
  readonly holds: readonly Hold[];
  /** How many of them make the length that is smoothed. */
  readonly wave: number;
  /** Of a closed piece: how many samples are repeated at either end. */
  readonly overlap: number;
}

function sampledPiece(path: Path, held: readonly Point[], { length, reach }: SmoothOptions): Samples {
  const total = pathLength(path);
  const wave = Math.min(length, total * (path.closed ? CLOSED_SHARE : OPEN_SHARE));
  const spacing = Math.max(wave / (SAMPLES * MOST_FINER), Math.min(wave / SAMPLES, total / (2 * path.segments.length)));
  const points = samplePath(path, spacing).map(({ point }) => point);
  const apart = total / (path.closed ? points.length : points.length - 1);
  const inner = held.flatMap((at) => holdAt(points, path.closed, at, reach));
  const holds = path.closed ? inner : [{ sample: 0, share: 0 }, ...inner, { sample: points.length - 1, share: 0 }];
  return { points, closed: path.closed, stiffness: stiffnessFor(wave / apart), holds, wave: wave / apart, overlap: path.closed ? Math.ceil((OVERLAP * wave) / apart) : 0 };
}

/** Where among samples a place lies; nothing when it is not on their line. */
function holdAt(points: readonly Point[], closed: boolean, at: Point, reach: number): Hold[] {
  let best: (Hold & { distance: number }) | undefined;
  for (let i = 0; i < points.length - (closed ? 0 : 1); i++) {
    const [a, b] = [points[i]!, points[(i + 1) % points.length]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const share = Math.min(1, Math.max(0, ((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
    const distance = Math.hypot(a.x + share * dx - at.x, a.y + share * dy - at.y);
    if (best === undefined || distance < best.distance) best = { sample: i, share, distance };
  }
  return best === undefined || best.distance > 2 * reach ? [] : [{ sample: best.sample, share: best.share }];
}

/** Rounds of tying firmer what would move too far. */
const ROUNDS = 8;

/** Moves of which none is longer than allowed: by ties where a few would be, at last by making all of them smaller. */
function boundedMoves(samples: Samples, allowed: number): Point[] {
  const weights = new Float64Array(samples.points.length).fill(1);
  let moves: Point[] = [];
  let most = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    moves = movesOf(samples, weights);
    const sizes = moves.map(({ x, y }) => Math.hypot(x, y));
    most = sizes.reduce((a, b) => Math.max(a, b), 0);
    if (most <= allowed) return moves;
    sizes.forEach((size, i) => { if (size > 0.7 * allowed) weights[i]! *= Math.min(10, 2 * (size / (0.7 * allowed)) ** 2); });
  }
  return moves.map(({ x, y }) => ({ x: (x * allowed) / most, y: (y * allowed) / most }));
}

function movesOf({ points, closed, stiffness, holds, overlap }: Samples, weights: Float64Array): Point[] {
  if (!closed) return smoothingMoves(points, weights, stiffness, holds);
  const count = points.length;
  const places = Array.from({ length: count + 2 * overlap }, (_, i) => (((i - overlap) % count) + count) % count);
  const repeated = holds.flatMap(({ sample, share }) => places.flatMap((place, i) => (place === sample && (share === 0 || i + 1 < places.length) ? [{ sample: i, share }] : [])));
  return smoothingMoves(places.map((place) => points[place]!), places.map((place) => weights[place]!), stiffness, repeated).slice(overlap, overlap + count);
}

/** As many of the samples as a line without short waves needs, both ends among them. */
function evenly(points: readonly Point[], { wave, closed }: Samples): readonly Point[] {
  const stride = Math.max(1, Math.floor(wave / SAMPLES));
  const gaps = Math.ceil((closed ? points.length : points.length - 1) / stride);
  const last = closed ? points.length : points.length - 1;
  return stride === 1 ? points : Array.from({ length: closed ? gaps : gaps + 1 }, (_, k) => points[Math.round((k * last) / gaps)]!);
}

/** Cubics through smoothed samples, ends exactly where they were. */
function refitted(path: Path, points: readonly Point[], tolerance: number): Path {
  if (path.closed) return fitCubics(points, true, tolerance);
  const last = path.segments.at(-1)!.end;
  const fitted = fitCubics([path.start, ...points.slice(1, -1), last], false, tolerance);
  const segments = fitted.segments.map((segment, i): Segment => (i === fitted.segments.length - 1 ? { ...segment, end: last } : segment));
  return { start: path.start, segments, closed: false };
}

/** The greatest distance between two paths, from places of either to the segments of the other, to within twice `chord` mm. */
export function departureOf(before: Path, after: Path, chord: number): Departure {
  const [a, b] = [chordsOf(before, chord), chordsOf(after, chord)];
  const there = farthest(a, b);
  const back = farthest(b, a);
  return there.distance >= back.distance ? there : back;
}

/** Long chords are looked at in so many pieces to the path. */
const PIECES = 200;

function chordsOf(path: Path, chord: number): IndexedSegment[] {
  const points = flattenPath(path, chord);
  if (path.closed || points.length === 1) points.push(points[0]!);
  const chords = points.slice(1).map((to, i): IndexedSegment => ({ from: points[i]!, to }));
  const longest = pathLength(path) / PIECES;
  return chords.flatMap(({ from, to }) => {
    const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / longest));
    const at = (k: number): Point => ({ x: from.x + ((to.x - from.x) * k) / count, y: from.y + ((to.y - from.y) * k) / count });
    return Array.from({ length: count }, (_, k) => ({ from: at(k), to: at(k + 1) }));
  });
}

function farthest(from: readonly IndexedSegment[], to: readonly IndexedSegment[]): Departure {
  const index = makeSegmentIndex(to);
  return from.reduce<Departure>((most, { from: at }) => {
    const { distance } = index.nearest(at, Infinity)!;
    return distance > most.distance ? { distance, at } : most;
  }, { distance: 0, at: from[0]!.from });
}
