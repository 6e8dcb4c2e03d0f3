import { arcAngles, arcPoint } from './arc.ts';
import { type Cubic, cubicPoint } from './cubic.ts';
import { type ArcSegment, type Path, pathSegmentsWithStarts, type Segment } from './path.ts';
import { type Point, same } from './point.ts';

/** Chords of one segment at most. A micrometre on a curve three kilometres across needs fewer. */
const MOST_CHORDS = 65_536;

/**
 * The path as points joined by chords that stray at most `tolerance` mm from it; every point lies on the path, no two
 * neighbours are equal, and a closed path does not repeat its first point. At least one point.
 * @throws RangeError when the tolerance is not positive.
 */
export function flattenPath(path: Path, tolerance: number): Point[] {
  const points: Point[] = [path.start];
  for (const { start, segment } of pathSegmentsWithStarts(path)) {
    for (const point of flattenSegment(start, segment, tolerance)) {
      if (!same(point, points.at(-1)!, 0)) points.push(point);
    }
  }
  while (path.closed && points.length > 1 && same(points.at(-1)!, points[0]!, 0)) points.pop();
  return points;
}

/** The points after `start` along the segment, the last one its end. */
export function flattenSegment(start: Point, segment: Segment, tolerance: number): Point[] {
  if (!(tolerance > 0)) throw new RangeError(`tolerance must be positive, not ${tolerance}`);
  if (segment.kind === 'line') return [segment.end];
  if (segment.kind === 'arc') return flattenArc(start, segment, tolerance);
  return flattenCubic([start, segment.control1, segment.control2, segment.end], tolerance);
}

/** A chord over the angle 2 acos(1 - e / r) lies e inside its arc (segments of circles, any handbook). */
function flattenArc(start: Point, segment: ArcSegment, tolerance: number): Point[] {
  const arc = arcAngles(start, segment);
  const radius = Math.max(arc.startRadius, arc.endRadius);
  const step = radius <= tolerance ? Math.PI / 2 : Math.min(Math.PI / 2, 4 * Math.asin(Math.sqrt(tolerance / radius / 2)));
  const count = chordCount(Math.abs(arc.sweep) / step);
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? segment.end : arcPoint(arc, (i + 1) / count)));
}

/**
 * Chords over even steps h of t stray at most h^2 / 8 times the greatest second derivative, which is at most six times
 * the greatest second difference of the control points (G. Wang 1984; D. Filip, R. Magedson and R. Markot,
 * Computer Aided Geometric Design 3, 1986, 295-311).
 */
function flattenCubic(cubic: Cubic, tolerance: number): Point[] {
  const [p0, p1, p2, p3] = cubic;
  const bend = Math.max(Math.hypot(p0.x - 2 * p1.x + p2.x, p0.y - 2 * p1.y + p2.y), Math.hypot(p1.x - 2 * p2.x + p3.x, p1.y - 2 * p2.y + p3.y));
  const count = chordCount(Math.sqrt((0.75 * bend) / tolerance));
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? p3 : cubicPoint(cubic, (i + 1) / count)));
}

/** Whole chords; the small margin keeps rounding from adding one where the quotient is whole. */
const chordCount = (chords: number) => Math.min(MOST_CHORDS, Math.max(1, Math.ceil(chords - 1e-9)));
