import { cross, dot, endTangents, lerp, type Path, pathSegmentsWithStarts, type Point, samplePath, segmentLength, type StartedSegment, subtract, type Vector } from '../../geometry/index.ts';

/** A corner of a path: before which segment it lies, and how far along, mm. */
export interface Corner {
  readonly segment: number;
  readonly along: number;
}

interface Vertex extends Corner {
  /** Break of the tangent, degrees. */
  readonly sharpness: number;
}

const degreesBetween = (u: Vector, v: Vector) => (Math.abs(Math.atan2(cross(u, v), dot(u, v))) * 180) / Math.PI;

/** Where segments of a path meet, the start of a closed one too, with the break of the tangent there. */
function verticesOf(path: Path): Vertex[] {
  let along = 0;
  const pieces = pathSegmentsWithStarts(path).map((started, segment) => {
    const piece = { segment, along, tangents: tangentsOf(started), length: segmentLength(started) };
    along += piece.length;
    return piece;
  }).filter(({ length }) => length > 0);
  return pieces.flatMap(({ segment, along: here, tangents }, i): Vertex[] => {
    const before = i > 0 ? pieces[i - 1]! : path.closed ? pieces.at(-1)! : undefined;
    return before ? [{ segment, along: here, sharpness: degreesBetween(before.tangents.last, tangents.first) }] : [];
  });
}

function tangentsOf({ start, segment }: StartedSegment): ReturnType<typeof endTangents> {
  if (segment.kind !== 'line') return endTangents({ start, segments: [segment], closed: false });
  const along = subtract(segment.end, start);
  return { first: along, last: along };
}

/** Where a path breaks by more than an angle, degrees, in order. */
export const breaksOf = (path: Path, angle: number): Corner[] => verticesOf(path).filter(({ sharpness }) => sharpness > angle);

/** Greatest break of the tangent inside a path, degrees. */
export const greatestBreak = (path: Path): number => verticesOf(path).reduce((most, { sharpness }) => Math.max(most, sharpness), 0);

/**
 * Corners: places where a path breaks by more than `angle` degrees and goes on that way, judged by its course over `reach` mm before and
 * after, so that the small breaks of a trembling line are none. Within that reach the sharpest counts.
 */
export function cornersOf(path: Path, angle: number, reach: number): Corner[] {
  const sharp = verticesOf(path).filter(({ sharpness }) => sharpness > angle);
  if (sharp.length === 0) return [];
  const course = courseOf(path);
  const turning = sharp.map((vertex) => ({ ...vertex, turn: turnAt(course, vertex.along, reach) })).filter(({ turn }) => turn > angle);
  const kept: typeof turning = [];
  for (const one of [...turning].sort((a, b) => b.turn - a.turn)) {
    if (kept.every(({ along }) => gapAlong(course, along, one.along) > reach)) kept.push(one);
  }
  return kept.sort((a, b) => a.along - b.along).map(({ segment, along }) => ({ segment, along }));
}

/** Segments' ends and middles along a path: enough to tell its course. */
interface Course {
  readonly points: readonly Point[];
  readonly along: readonly number[];
  readonly length: number;
  readonly closed: boolean;
}

const PIECES = 8;

function courseOf(path: Path): Course {
  const points: Point[] = [path.start];
  const along = [0];
  for (const started of pathSegmentsWithStarts(path)) {
    const size = segmentLength(started);
    const from = along.at(-1)!;
    const inner = started.segment.kind === 'line' ? [] : samplesOf({ start: started.start, segments: [started.segment], closed: false }, size / PIECES);
    inner.forEach((point, i) => { points.push(point); along.push(from + ((i + 1) * size) / PIECES); });
    points.push(started.segment.end);
    along.push(from + size);
  }
  return { points, along, length: along.at(-1)!, closed: path.closed };
}

const samplesOf = (path: Path, spacing: number): Point[] => samplePath(path, spacing).slice(1, -1).map(({ point }) => point);

function placeAt({ points, along, length, closed }: Course, way: number): Point {
  const wanted = closed ? ((way % length) + length) % length : Math.min(length, Math.max(0, way));
  let [low, high] = [0, along.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (along[middle]! <= wanted) low = middle;
    else high = middle;
  }
  const size = along[high]! - along[low]!;
  return size > 0 ? lerp(points[low]!, points[high]!, (wanted - along[low]!) / size) : points[low]!;
}

function turnAt(course: Course, along: number, reach: number): number {
  const [before, here, after] = [placeAt(course, along - reach), placeAt(course, along), placeAt(course, along + reach)];
  return degreesBetween(subtract(here, before), subtract(after, here));
}

function gapAlong({ length, closed }: Course, a: number, b: number): number {
  const gap = Math.abs(a - b);
  return closed ? Math.min(gap, length - gap) : gap;
}
