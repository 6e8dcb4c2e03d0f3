import { arcToCubics } from './arc.ts';
import { type ArcSegment, type Path, pathSegmentsWithStarts, type Segment } from './path.ts';
import { cosSin, type Point } from './point.ts';

/** x' = a x + c y + e, y' = b x + d y + f, in the order of SVG's matrix(a b c d e f). */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const identity: Affine = [1, 0, 0, 1, 0, 0];

export const translation = (x: number, y: number): Affine => [1, 0, 0, 1, x, y];

export const scaling = (x: number, y: number = x): Affine => [x, 0, 0, y, 0, 0];

/** Counter-clockwise about the origin; exact for multiples of 90 degrees. */
export function rotation(degrees: number): Affine {
  const { cos, sin } = cosSin(degrees);
  return [cos, sin, -sin, cos, 0, 0];
}

/** x' = x + y tan(angle). */
export const skewX = (degrees: number): Affine => [1, 0, Math.tan((degrees * Math.PI) / 180), 1, 0, 0];

/** y' = y + x tan(angle). */
export const skewY = (degrees: number): Affine => [1, Math.tan((degrees * Math.PI) / 180), 0, 1, 0, 0];

/** The transform that applies `inner` first, then `outer`. */
export const multiply = (outer: Affine, inner: Affine): Affine => [
  outer[0] * inner[0] + outer[2] * inner[1],
  outer[1] * inner[0] + outer[3] * inner[1],
  outer[0] * inner[2] + outer[2] * inner[3],
  outer[1] * inner[2] + outer[3] * inner[3],
  outer[0] * inner[4] + outer[2] * inner[5] + outer[4],
  outer[1] * inner[4] + outer[3] * inner[5] + outer[5],
];

/** The factor by which areas grow; negative when the transform mirrors. */
export const determinant = ([a, b, c, d]: Affine): number => a * d - b * c;

/** The transform that undoes `m`; undefined when `m` flattens the plane (its determinant is nothing beside its entries). */
export function invert(m: Affine): Affine | undefined {
  const [a, b, c, d, e, f] = m;
  const det = determinant(m);
  if (!(Math.abs(det) > 1e-14 * (Math.abs(a * d) + Math.abs(b * c)))) return undefined;
  const inverse: Affine = [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det];
  return inverse.every(Number.isFinite) ? inverse : undefined;
}

export const applyToPoint = ([a, b, c, d, e, f]: Affine, { x, y }: Point): Point => ({ x: a * x + c * y + e, y: b * x + d * y + f });

/**
 * The path transformed. Arcs stay arcs under a similarity; under any other transform they become cubics within
 * `tolerance` mm (measured after the transform).
 */
export function applyToPath(m: Affine, path: Path, tolerance = 1e-4): Path {
  const segments = pathSegmentsWithStarts(path).flatMap(({ start, segment }) => applyToSegment(m, start, segment, tolerance));
  return { start: applyToPoint(m, path.start), segments, closed: path.closed };
}

function applyToSegment(m: Affine, start: Point, segment: Segment, tolerance: number): Segment[] {
  const place = (p: Point) => applyToPoint(m, p);
  if (segment.kind === 'line') return [{ kind: 'line', end: place(segment.end) }];
  if (segment.kind === 'cubic') return [{ kind: 'cubic', control1: place(segment.control1), control2: place(segment.control2), end: place(segment.end) }];
  if (isSimilarity(m)) return [applyToArc(m, segment)];
  const stretch = Math.max(1e-12, largestStretch(m));
  return arcToCubics(start, segment, tolerance / stretch).map(([, control1, control2, end]) => ({
    kind: 'cubic',
    control1: place(control1),
    control2: place(control2),
    end: place(end),
  }));
}

const applyToArc = (m: Affine, arc: ArcSegment): ArcSegment => ({
  kind: 'arc',
  end: applyToPoint(m, arc.end),
  centre: applyToPoint(m, arc.centre),
  clockwise: arc.clockwise !== determinant(m) < 0,
});

/** Whether the transform keeps angles: turns, mirrors and scales alike in all directions. */
export function isSimilarity([a, b, c, d]: Affine): boolean {
  const size = Math.hypot(a, b, c, d);
  const near = (x: number, y: number) => Math.abs(x - y) <= 1e-12 * size;
  return (near(a, d) && near(b, -c)) || (near(a, -d) && near(b, c));
}

/** The greatest factor by which the transform lengthens anything: the larger singular value. */
export function largestStretch([a, b, c, d]: Affine): number {
  return (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2;
}
