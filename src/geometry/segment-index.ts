import type { Point } from './point.ts';

/** A straight piece of something, told apart by its place in the list it came in. */
export interface IndexedSegment {
  readonly from: Point;
  readonly to: Point;
}

export interface Nearest {
  /** Place of the segment in the list the index was made from. */
  readonly segment: number;
  /** The nearest point on it. */
  readonly point: Point;
  readonly distance: number;
}

/** Answers "which segments are near this point" without looking at all of them. */
export interface SegmentIndex {
  /** The nearest segment among those `accepts` lets through, looking no farther than `within` mm. */
  nearest(point: Point, within: number, accepts?: (segment: number) => boolean): Nearest | undefined;
}

/** Cells a segment may be entered into before the index coarsens: bounds memory for very long segments. */
const CELLS_PER_SEGMENT = 64;

/** Puts segments into a square grid of cell size `cell` mm (grown if the segments are much longer). */
export function makeSegmentIndex(segments: readonly IndexedSegment[], cell: number): SegmentIndex {
  const size = Math.max(cell, longest(segments) / CELLS_PER_SEGMENT, 1e-9);
  const cells = new Map<string, number[]>();
  segments.forEach((segment, i) => forCells(segment, size, (key) => {
    const list = cells.get(key);
    if (list) list.push(i);
    else cells.set(key, [i]);
  }));
  return { nearest: (point, within, accepts) => search(segments, cells, size, { point, within, accepts }) };
}

/** The point of the segment nearest to `point`; a segment of no length is its start. */
export function nearestOnSegment({ from, to }: IndexedSegment, point: Point): Point {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - from.x) * dx + (point.y - from.y) * dy) / square));
  return { x: from.x + t * dx, y: from.y + t * dy };
}

interface Query {
  readonly point: Point;
  readonly within: number;
  readonly accepts: ((segment: number) => boolean) | undefined;
}

/** Looks ring by ring outward until no farther ring can hold anything nearer. */
function search(segments: readonly IndexedSegment[], cells: ReadonlyMap<string, readonly number[]>, size: number, query: Query): Nearest | undefined {
  const column = Math.floor(query.point.x / size);
  const row = Math.floor(query.point.y / size);
  let best: Nearest | undefined;
  for (let ring = 0; (ring - 1) * size <= Math.min(query.within, best?.distance ?? Infinity); ring++)
    for (const [i, j] of ringCells(ring))
      for (const candidate of cells.get(keyOf(column + i, row + j)) ?? []) best = nearer(segments, candidate, query, best);
  return best;
}

function nearer(segments: readonly IndexedSegment[], candidate: number, { point, within, accepts }: Query, best: Nearest | undefined): Nearest | undefined {
  const foot = nearestOnSegment(segments[candidate]!, point);
  const distance = Math.hypot(foot.x - point.x, foot.y - point.y);
  if (distance > within || (best && distance >= best.distance) || (accepts && !accepts(candidate))) return best;
  return { segment: candidate, point: foot, distance };
}

function* ringCells(ring: number): Generator<readonly [number, number]> {
  if (ring === 0) yield [0, 0];
  for (let i = -ring; i < ring; i++) {
    yield [i, -ring];
    yield [ring, i];
    yield [-i, ring];
    yield [-ring, -i];
  }
}

function forCells({ from, to }: IndexedSegment, size: number, visit: (key: string) => void): void {
  const rows = [Math.floor(Math.min(from.y, to.y) / size), Math.floor(Math.max(from.y, to.y) / size)] as const;
  for (let column = Math.floor(Math.min(from.x, to.x) / size); column <= Math.floor(Math.max(from.x, to.x) / size); column++)
    for (let row = rows[0]; row <= rows[1]; row++) visit(keyOf(column, row));
}

function keyOf(column: number, row: number): string {
  return `${column},${row}`;
}

function longest(segments: readonly IndexedSegment[]): number {
  return segments.reduce((most, { from, to }) => Math.max(most, Math.hypot(to.x - from.x, to.y - from.y)), 0);
}
