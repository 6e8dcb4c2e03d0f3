import { turnBetween } from './biarc.ts';
import { cross, distance, normalize, type Point, subtract } from './point.ts';
import { keptIndices, keptLoopIndices } from './simplify.ts';

/** An end point this far beside the line of the others (share of the tolerance, multiple of the noise) belongs to the curve that follows. */
const TRIM_SHARE = 0.03;
const TRIM_NOISE = 2;

/** What of a dense polyline is not smooth curve, by indices of its points. */
export interface Features {
  readonly corners: ReadonlySet<number>;
  /** Straight stretches [first, last]; in a closed polyline last may be less than first. */
  readonly straights: readonly (readonly [number, number])[];
}

/** The shape is read from the polyline simplified to this share of the tolerance, which removes what rounding did to it. */
const SHAPE_SHARE = 0.35;

/** Rougher polylines are simplified to this multiple of their noise, up to the greater share. */
const SHAPE_NOISE = 1.7;
const MOST_SHAPE_SHARE = 0.8;

/** Turning by this much within CORNER_REACH tolerances is a corner: an arc there would be smaller than any machine can tell. */
const CORNER_TURN = Math.PI / 4;
const CORNER_REACH = 4;

/** A chord of a curve, read from its turns, may stand off it by so many tolerances before it counts as a straight stretch. */
const STRAIGHT_OFFSETS = 2;

/**
 * Corners and straight stretches. The polyline is dense: its chords stand off the true curve by less than `tolerance`. A
 * chord of length L between turns of angle a stands off by about L a / 8. Where that would be more than the density
 * allows, a sharp point is a corner and a long chord is a straight stretch.
 */
export function featuresOf(points: readonly Point[], closed: boolean, tolerance: number, noise: number): Features {
  const shape = shapeOf(points, closed, Math.min(MOST_SHAPE_SHARE * tolerance, Math.max(SHAPE_SHARE * tolerance, SHAPE_NOISE * noise)));
  const corners = new Set<number>(closed ? [] : [0, points.length - 1]);
  shape.vertices.forEach((vertex, k) => {
    if (isCorner(shape, k, tolerance)) corners.add(vertex.index);
  });
  const straights = shape.vertices.flatMap((vertex, k): [number, number][] => {
    const next = shape.next(k);
    return next !== undefined && isStraight(vertex, next, corners, tolerance) ? [[vertex.index, next.index]] : [];
  }).map((straight) => trimmed(points, straight, corners, Math.max(TRIM_SHARE * tolerance, TRIM_NOISE * noise)));
  return { corners, straights };
}

interface Vertex {
  readonly index: number;
  /** Length of the edge that follows, mm. */
  readonly length: number;
  /** Signed change of direction here, radians. */
  readonly turn: number;
}

interface Shape {
  readonly vertices: readonly Vertex[];
  readonly next: (k: number) => Vertex | undefined;
  readonly previous: (k: number) => Vertex | undefined;
}

function shapeOf(points: readonly Point[], closed: boolean, simplification: number): Shape {
  const kept = closed ? keptLoopIndices(points, simplification) : keptIndices(points, simplification);
  const count = kept.length;
  const place = (k: number) => points[kept[(k + count) % count]!]!;
  const direction = (k: number) => normalize(subtract(place(k + 1), place(k)));
  const vertices = kept.map((index, k): Vertex => {
    const isEnd = !closed && (k === 0 || k === count - 1);
    return { index, length: distance(place(k), place(k + 1)), turn: isEnd ? 0 : turnBetween(direction(k - 1), direction(k)) };
  });
  const vertexAt = (k: number) => (closed ? vertices[(k + count) % count] : vertices[k]);
  return { vertices, next: (k) => vertexAt(k + 1), previous: (k) => vertexAt(k - 1) };
}

function isCorner(shape: Shape, k: number, tolerance: number): boolean {
  const vertex = shape.vertices[k]!;
  const shorter = Math.min(vertex.length, shape.previous(k)?.length ?? 0);
  if ((shorter * Math.tan(Math.abs(vertex.turn) / 4)) / 2 > tolerance) return true;
  return Math.abs(vertex.turn) > CORNER_TURN || turnsShortly(shape, k, tolerance);
}

/** Whether this vertex and those right after or before it turn like a corner, all within a few tolerances. */
function turnsShortly(shape: Shape, k: number, tolerance: number): boolean {
  const { turn, length } = shape.vertices[k]!;
  const [next, previous] = [shape.next(k), shape.previous(k)];
  const reach = CORNER_REACH * tolerance;
  const withNext = next !== undefined && length <= reach && Math.abs(turn + next.turn) > CORNER_TURN;
  const withPrevious = previous !== undefined && previous.length <= reach && Math.abs(turn + previous.turn) > CORNER_TURN;
  return withNext || withPrevious;
}

function isStraight(vertex: Vertex, next: Vertex, corners: ReadonlySet<number>, tolerance: number): boolean {
  const turnAt = ({ index, turn }: Vertex) => (corners.has(index) ? Infinity : Math.abs(turn));
  return (vertex.length * Math.min(turnAt(vertex), turnAt(next))) / 8 > STRAIGHT_OFFSETS * tolerance;
}

/**
 * The stretch without end points that already lie on the curves beside it. Simplification keeps one of the points near
 * where a line touches a curve, seldom the right one.
 */
function trimmed(points: readonly Point[], [from, to]: readonly [number, number], corners: ReadonlySet<number>, aside: number): [number, number] {
  const count = points.length;
  const at = (index: number) => points[index % count]!;
  let [first, last] = [from, to < from ? to + count : to];
  const isAside = (end: number, inner: number, other: number) => {
    const [p, q, r] = [at(end), at(inner), at(other)];
    const far = distance(q, r);
    return distance(p, q) < far / 4 && Math.abs(cross(subtract(q, r), subtract(p, r))) / far > aside;
  };
  while (last - first > 1 && !corners.has(last % count) && isAside(last, last - 1, first)) last--;
  while (last - first > 1 && !corners.has(first % count) && isAside(first, first + 1, last)) first++;
  return [first % count, last % count];
}
