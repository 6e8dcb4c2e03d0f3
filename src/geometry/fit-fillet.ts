import { followsPolyline } from './fit-check.ts';
import { arcAbout, type FitLine, type FitPiece, lineBetween } from './fit-piece.ts';
import { add, cross, distance, dot, leftNormal, normalize, type Point, rotate, scale, subtract, type Vector } from './point.ts';

/** One arc, split where it turns far, between two lines that it touches. */
export interface Fillet {
  readonly before: FitLine;
  readonly arcs: readonly FitPiece[];
  readonly after: FitLine;
}

interface Stretch {
  readonly curve: readonly Point[];
  readonly whole: readonly Point[];
}

/** Split above this turn, radians: three eighths of a circle keeps a half circle in two arcs and a quarter in one. */
const MOST_TURN = (3 * Math.PI) / 4;

/**
 * The arc that touches both lines and best follows the points between them, with the lines cut or lengthened to where
 * it touches them. The whole stretch runs from a place on the first line to a place on the second, the curve within it
 * from line to line. Undefined when no such arc
 * stays within the tolerance.
 */
export function filletBetween(before: FitLine, { curve, whole }: Stretch, after: FitLine, tolerance: number): Fillet | undefined {
  const side = turningSide(before, after);
  const normals = [scale(leftNormal(before.tangent), side), scale(leftNormal(after.tangent), side)] as const;
  const circle = touchingCircle(before.end, after.start, curve, normals);
  if (circle === undefined) return undefined;
  const touch = normals.map((normal) => add(circle.centre, scale(normal, -circle.radius)));
  const arcs = arcsAbout(circle.centre, touch[0]!, touch[1]!, side);
  const shorter = { before: lineBetween(before.start, touch[0]!), after: lineBetween(touch[1]!, after.end) };
  const head = lineBetween(footOn(before, whole[0]!), touch[0]!);
  const tail = lineBetween(touch[1]!, footOn(after, whole.at(-1)!));
  const forward = dot(head.tangent, before.tangent) > 0 && dot(tail.tangent, after.tangent) > 0;
  return forward && followsPolyline(whole, 0, whole.length - 1, [head, ...arcs, tail], tolerance) ? { ...shorter, arcs } : undefined;
}

const footOn = (line: FitLine, p: Point): Point => add(line.start, scale(line.tangent, dot(subtract(p, line.start), line.tangent)));

/** 1 where the way from line to line turns left, -1 where it turns right; a half turn goes to the side of the second line. */
function turningSide(before: FitLine, after: FitLine): number {
  const turn = cross(before.tangent, after.tangent);
  const toward = cross(before.tangent, subtract(after.start, before.end));
  return Math.sign(Math.abs(turn) > 1e-6 || dot(before.tangent, after.tangent) > 0 ? turn : toward) || 1;
}

interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/**
 * The circle on the given side of both lines that passes nearest to the points. Centres of circles touching both lines
 * lie on a line along `way`, where the radius grows by `growth` per mm: one unknown, found by Gauss-Newton steps.
 */
function touchingCircle(onFirst: Point, onSecond: Point, points: readonly Point[], [n1, n2]: readonly [Vector, Vector]): Circle | undefined {
  const start = circleThrough(points[0], points[points.length >> 1], points.at(-1));
  const difference = subtract(n1, n2);
  const size = dot(difference, difference);
  if (start === undefined || size < 1e-8) return undefined;
  const excess = dot(onFirst, n1) - dot(onSecond, n2) - dot(start, difference);
  let centre = add(start, scale(difference, excess / size));
  const way = normalize(leftNormal(difference));
  const growth = dot(way, n1);
  for (let round = 0; round < 8; round++) centre = add(centre, scale(way, betterBy(centre, dot(subtract(centre, onFirst), n1), points, way, growth)));
  const radius = dot(subtract(centre, onFirst), n1);
  return radius > 0 && Number.isFinite(radius) ? { centre, radius } : undefined;
}

/** The step along `way` that the residuals |p - c| - r ask for. */
function betterBy(centre: Point, radius: number, points: readonly Point[], way: Vector, growth: number): number {
  let [above, below] = [0, 0];
  for (const p of points) {
    const out = subtract(p, centre);
    const slope = dot(way, normalize(out)) + growth;
    above += slope * (distance(p, centre) - radius);
    below += slope * slope;
  }
  return below < 1e-12 ? 0 : above / below;
}

/** Centre of the circle through three points; undefined when they lie on a line. */
function circleThrough(a: Point | undefined, b: Point | undefined, c: Point | undefined): Point | undefined {
  if (a === undefined || b === undefined || c === undefined) return undefined;
  const [u, v] = [subtract(b, a), subtract(c, a)];
  const twice = 2 * cross(u, v);
  if (Math.abs(twice) <= 1e-12 * (dot(u, u) + dot(v, v))) return undefined;
  const [uu, vv] = [dot(u, u), dot(v, v)];
  return add(a, { x: (v.y * uu - u.y * vv) / twice, y: (u.x * vv - v.x * uu) / twice });
}

function arcsAbout(centre: Point, from: Point, to: Point, side: number): FitPiece[] {
  const [u, v] = [subtract(from, centre), subtract(to, centre)];
  const signed = Math.atan2(side * cross(u, v), dot(u, v));
  const turn = signed < 0 ? signed + 2 * Math.PI : signed;
  const count = Math.max(1, Math.ceil(turn / MOST_TURN));
  const places = Array.from({ length: count + 1 }, (_, i) => (i === count ? to : add(centre, rotate(u, (side * turn * i * 180) / Math.PI / count))));
  places[0] = from;
  return places.slice(1).map((end, i) => arcAbout(centre, places[i]!, end, side < 0));
}
