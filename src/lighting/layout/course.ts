import { type Path, type Point, type SegmentIndex, type Vector, flattenPath, lerp, makeSegmentIndex, normalize, pathLength, subtract } from '../../geometry/index.ts';

/** A straight stretch of a centre line. */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
  readonly stroke: number;
  /** Length along the centre line to `from`, and of the stretch, mm. */
  readonly along: number;
  readonly length: number;
}

/** A centre line measured, with its stretches. */
export interface Course {
  readonly path: Path;
  readonly length: number;
  readonly stretches: readonly Stretch[];
}

/** All centre lines, and the nearest stretch to any place. */
export interface Courses {
  readonly list: readonly Course[];
  readonly stretches: readonly Stretch[];
  readonly index: SegmentIndex;
}

/** Centre lines as chords that stray at most `tolerance` mm from them; lengths along them are those of the curves. */
export function coursesOf(paths: readonly Path[], tolerance: number): Courses {
  const list = paths.map((path, stroke) => courseOf(path, stroke, tolerance));
  const stretches = list.flatMap((course) => course.stretches);
  return { list, stretches, index: makeSegmentIndex(stretches) };
}

function courseOf(path: Path, stroke: number, tolerance: number): Course {
  const points = flattenPath(path, tolerance);
  if (path.closed) points.push(points[0]!);
  const chords = points.slice(1).map((to, i) => ({ from: points[i]!, to, size: Math.hypot(to.x - points[i]!.x, to.y - points[i]!.y) }));
  const [length, chordsLength] = [pathLength(path), chords.reduce((sum, { size }) => sum + size, 0)];
  const stretch = chordsLength > 0 ? length / chordsLength : 1;
  let along = 0;
  const stretches = chords.map(({ from, to, size }): Stretch => {
    const one = { from, to, stroke, along, length: size * stretch };
    along += one.length;
    return one;
  });
  return { path, length, stretches };
}

/** The place at a length along a course and the way it goes there; beyond the end of an open one it is its end. */
export function placeAt({ path, length, stretches }: Course, along: number): { readonly at: Point; readonly ahead: Vector } {
  const wanted = path.closed ? wrapped(along, length) : Math.min(Math.max(along, 0), length);
  const after = stretches.findIndex((stretch) => stretch.along > wanted);
  const one = stretches[after < 0 ? stretches.length - 1 : Math.max(0, after - 1)];
  if (!one) return { at: path.start, ahead: { x: 1, y: 0 } };
  const share = one.length > 0 ? Math.min(1, (wanted - one.along) / one.length) : 0;
  return { at: lerp(one.from, one.to, share), ahead: normalize(subtract(one.to, one.from)) };
}

export const wrapped = (along: number, length: number): number => ((along % length) + length) % length;

/** Distance along a course from a place to the nearest of one of its own stretches, mm; the shorter way round a closed one. */
export function apartAlong({ path, length }: Course, stretch: Pick<Stretch, 'along' | 'length'>, along: number): number {
  const between = (place: number) => Math.max(stretch.along - place, place - stretch.along - stretch.length, 0);
  return Math.min(...(path.closed ? [along - length, along, along + length] : [along]).map(between));
}
