import { type Point, same } from './point.ts';

/** A straight segment from the end of the segment before it (or the path's start). */
export interface LineSegment {
  readonly kind: 'line';
  readonly end: Point;
}

/**
 * A circular arc about `centre`, from the end of the segment before it. Its turn is under 360 degrees,
 * except that equal start and end mean one full circle.
 */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly end: Point;
  readonly centre: Point;
  readonly clockwise: boolean;
}

/** A cubic Bézier segment from the end of the segment before it. */
export interface CubicSegment {
  readonly kind: 'cubic';
  readonly control1: Point;
  readonly control2: Point;
  readonly end: Point;
}

export type Segment = LineSegment | ArcSegment | CubicSegment;

/**
 * A connected chain of segments. A closed path ends exactly where it starts (its last segment is written out);
 * a path without segments is a single point.
 */
export interface Path {
  readonly start: Point;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

/** A segment together with the point it starts from. */
export interface StartedSegment {
  readonly start: Point;
  readonly segment: Segment;
}

/** Where the path ends; its start when it has no segments. */
export const pathEnd = (path: Path): Point => path.segments.at(-1)?.end ?? path.start;

/** Whether the path is a single point: no segments, or only segments of no length. */
export const isPointPath = (path: Path): boolean =>
  pathSegmentsWithStarts(path).every(({ start, segment }) => isPointSegment(start, segment));

function isPointSegment(start: Point, segment: Segment): boolean {
  if (!same(start, segment.end, 0)) return false;
  if (segment.kind === 'line') return true;
  if (segment.kind === 'arc') return same(start, segment.centre, 0);
  return same(start, segment.control1, 0) && same(start, segment.control2, 0);
}

/** Each segment with its start point, in order. */
export function pathSegmentsWithStarts(path: Path): StartedSegment[] {
  let start = path.start;
  return path.segments.map((segment) => {
    const started = { start, segment };
    start = segment.end;
    return started;
  });
}

/** The same curve run the other way. */
export function reversePath(path: Path): Path {
  const segments = pathSegmentsWithStarts(path).reverse().map(({ start, segment }) => reverseSegment(start, segment));
  return { start: pathEnd(path), segments, closed: path.closed };
}

function reverseSegment(start: Point, segment: Segment): Segment {
  if (segment.kind === 'line') return { kind: 'line', end: start };
  if (segment.kind === 'arc') return { kind: 'arc', end: start, centre: segment.centre, clockwise: !segment.clockwise };
  return { kind: 'cubic', control1: segment.control2, control2: segment.control1, end: start };
}

/**
 * The path along straight lines through the points. A closed one gets its closing line unless the last point
 * repeats the first.
 * @throws RangeError when there are no points.
 */
export function polylinePath(points: readonly Point[], closed: boolean): Path {
  const [start, ...rest] = points;
  if (start === undefined) throw new RangeError('a path needs at least one point');
  const ends = closed && rest.length > 0 && !same(rest.at(-1)!, start, 0) ? [...rest, start] : rest;
  return { start, segments: ends.map((end) => ({ kind: 'line', end })), closed };
}

/** The path through consecutive cubics, each three points: control, control, end. A closed one gets a closing line if its end is not its start. */
export function pathFromCubics(start: Point, cubics: readonly (readonly [Point, Point, Point])[], closed: boolean): Path {
  const segments = cubics.map(([control1, control2, end]): Segment => ({ kind: 'cubic', control1, control2, end }));
  return closed ? closePath({ start, segments, closed: false }) : { start, segments, closed };
}

/** The path closed by a straight line, or as it stands when it already ends at its start. */
export function closePath(path: Path): Path {
  if (path.closed) return path;
  const segments: Segment[] = same(pathEnd(path), path.start, 0) ? [...path.segments] : [...path.segments, { kind: 'line', end: path.start }];
  return { start: path.start, segments, closed: true };
}
