import type { Stroke } from '../../../src/artwork/index.ts';
import { applyToPath, distance, endTangents, flattenPath, makeSegmentIndex, type Path, pathEnd, pathFromCubics, pathLength, pathSegmentsWithStarts, type Point, polylinePath, reversePath } from '../../../src/geometry/index.ts';
import { type Frame, frameOf, type Repair, repairStrokes, toFrame } from '../../../src/lettering/index.ts';

export const at = (x: number, y: number): Point => ({ x, y });

export const line = (...points: (readonly [number, number])[]): Stroke => ({ path: polylinePath(points.map(([x, y]) => at(x, y)), false), width: 10 });

/** One cubic, or several, as x and y of start, control, control, end … */
export function curve(...flat: number[]): Stroke {
  const points = Array.from({ length: flat.length / 2 }, (_, i) => at(flat[2 * i]!, flat[2 * i + 1]!));
  const cubics = Array.from({ length: (points.length - 1) / 3 }, (_, i) => [points[3 * i + 1]!, points[3 * i + 2]!, points[3 * i + 3]!] as const);
  return { path: pathFromCubics(points[0]!, cubics, false), width: 10 };
}

/** Edits at places in mm. */
export const edit = (frame: Frame, act: string, ...places: (readonly [number, number])[]): Repair => ({ act, places: places.map(([x, y]) => toFrame(frame, at(x, y))) });

export type MmEdit = readonly [act: string, ...places: (readonly [number, number])[]];

/** Strokes after edits at places in mm. */
export const repaired = (strokes: readonly Stroke[], ...edits: MmEdit[]) => repairStrokes(strokes, edits.map(([act, ...places]) => edit(frameOf(strokes), act, ...places)));

/** Greatest distance of one path's points from another path, mm. */
export function departure(from: Path, to: Path): number {
  const points = flattenPath(to, 1e-3);
  if (to.closed || points.length === 1) points.push(points[0]!);
  const index = makeSegmentIndex(points.slice(1).map((end, i) => ({ from: points[i]!, to: end })));
  return flattenPath(from, 1e-3).reduce((most, point) => Math.max(most, index.nearest(point, Infinity)!.distance), 0);
}

/** How far apart two lists of strokes are, whatever their order and directions; Infinity when they are not as many, or not alike open and closed. */
export function difference(a: readonly Stroke[], b: readonly Stroke[]): number {
  if (a.length !== b.length) return Infinity;
  const left = [...b];
  return a.reduce((most, { path }) => {
    const ways = left.map((other) => strokeDifference(path, other.path));
    const best = ways.indexOf(Math.min(...ways));
    left.splice(best, 1);
    return Math.max(most, ways[best]!);
  }, 0);
}

function strokeDifference(a: Path, b: Path): number {
  if (a.closed !== b.closed) return Infinity;
  const ends = (one: Path, other: Path) => Math.max(distance(one.start, other.start), distance(pathEnd(one), pathEnd(other)));
  const tips = a.closed ? 0 : Math.min(ends(a, b), ends(a, reversePath(b)));
  return Math.max(tips, departure(a, b), departure(b, a));
}

/** The sharpest break of the tangent along a path, degrees. */
export function sharpestKink({ start, segments, closed }: Path): number {
  const parts = pathSegmentsWithStarts({ start, segments, closed }).map(({ start: from, segment }) => endTangents({ start: from, segments: [segment], closed: false }));
  const breaks = parts.map(({ last }, i) => {
    const next = parts[i + 1] ?? (closed ? parts[0] : undefined);
    return next ? Math.abs(Math.atan2(last.x * next.first.y - last.y * next.first.x, last.x * next.first.x + last.y * next.first.y)) : 0;
  });
  return (Math.max(...breaks) * 180) / Math.PI;
}

/** Whether every segment begins where the one before it ends, and the path has some length. */
export const isWhole = ({ path }: Stroke): boolean => pathLength(path) > 0 && (!path.closed || distance(path.start, pathEnd(path)) < 1e-9);

/** Strokes scaled and shifted, all that goes along with them too. */
export function scaled(strokes: readonly Stroke[], factor: number, [dx, dy]: readonly [number, number] = [0, 0]): Stroke[] {
  const place = ({ x, y }: Point) => at(x * factor + dx, y * factor + dy);
  return strokes.map((stroke) => ({
    ...stroke, path: applyToPath([factor, 0, 0, factor, dx, dy], stroke.path),
    ...(stroke.width !== undefined && { width: stroke.width * factor }),
    ...(stroke.widths && { widths: stroke.widths.map(({ along, width }) => ({ along: along * factor, width: width * factor })) }),
    ...(stroke.doubts && { doubts: stroke.doubts.map((doubt) => ({ ...doubt, at: place(doubt.at) })) }),
  }));
}
