import type { Stroke } from '../../artwork/artwork.ts';
import { flattenSegment, type IndexedSegment, makeSegmentIndex, type Path, pathSegmentsWithStarts, type Point, segmentLength, type SegmentIndex } from '../../geometry/index.ts';
import type { Frame } from './junction-map.ts';
import { penOf, pensOf } from './pen.ts';

/** A short straight piece of a stroke. */
export interface Chord extends IndexedSegment {
  readonly stroke: number;
  /** Length along the stroke at which it begins, and how much of the stroke it stands for, mm. */
  readonly along: number;
  readonly length: number;
}

/** A place on a stroke. */
export interface Spot {
  readonly stroke: number;
  /** Length along the stroke from its start, mm. */
  readonly along: number;
  readonly at: Point;
}

/** Strokes laid out so that places on them are quickly found. */
export interface Lines {
  readonly strokes: readonly Stroke[];
  readonly frame: Frame;
  /** Width of each stroke in the mean, and of all of them, mm. */
  readonly pens: readonly number[];
  readonly pen: number;
  readonly lengths: readonly number[];
  readonly chords: readonly Chord[];
  /** For each stroke the place in `chords` of its first one, and after the last stroke their number. */
  readonly chordsFrom: readonly number[];
  readonly index: SegmentIndex;
}

/** Chords stray from their stroke by at most this share of its width. */
const CHORD = 1e-3;

/** Lays out strokes; strokes of no length are left out of what can be found. */
export function layLines(strokes: readonly Stroke[], frame: Frame): Lines {
  const pens = pensOf(strokes, frame);
  const lists = strokes.map(({ path }, stroke) => chordsOf(path, stroke, Math.max(CHORD * pens[stroke]!, 1e-6 * frame.size, 1e-9)));
  const chords = lists.flat();
  const lengths = lists.map((list) => { const last = list.at(-1); return last ? last.along + last.length : 0; });
  const chordsFrom = [0];
  for (const list of lists) chordsFrom.push(chordsFrom.at(-1)! + list.length);
  return { strokes, frame, pens, pen: penOf(strokes, frame), lengths, chords, chordsFrom, index: makeSegmentIndex(chords) };
}

function chordsOf(path: Path, stroke: number, tolerance: number): Chord[] {
  let along = 0;
  return pathSegmentsWithStarts(path).flatMap((started) => {
    const size = segmentLength(started);
    if (!(size > 0)) return [];
    const points = [started.start, ...flattenSegment(started.start, started.segment, tolerance)];
    const sizes = points.slice(1).map((to, i) => Math.hypot(to.x - points[i]!.x, to.y - points[i]!.y));
    const grown = size / sizes.reduce((sum, one) => sum + one, 0);
    return sizes.map((one, i): Chord => {
      const chord = { from: points[i]!, to: points[i + 1]!, stroke, along, length: one * grown };
      along += chord.length;
      return chord;
    });
  });
}

/** The place on a chord at a share of its length. */
export const spotOn = ({ stroke, along, length, from, to }: Chord, share: number): Spot =>
  ({ stroke, along: along + length * share, at: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share } });

/** The place nearest to a point on the chords that are let through, no farther off than `within` mm. */
export function nearestSpot({ chords, index }: Lines, point: Point, within: number, accepts?: (chord: Chord) => boolean): Spot | undefined {
  const near = index.nearest(point, within, accepts && ((k) => accepts(chords[k]!)));
  if (!near) return undefined;
  const chord = chords[near.segment]!;
  const size = Math.hypot(chord.to.x - chord.from.x, chord.to.y - chord.from.y);
  const share = size === 0 ? 0 : Math.hypot(near.point.x - chord.from.x, near.point.y - chord.from.y) / size;
  return spotOn(chord, Math.min(1, share));
}
