import { followsPolyline } from './fit-check.ts';
import { arcAbout, type FitPiece, lineBetween } from './fit-piece.ts';
import { add, cross, distance, dot, leftNormal, normalize, type Point, rotate, same, scale, subtract, type Vector } from './point.ts';

/**
 * What binds a circle at one end of a stretch: a point to pass through, a line to touch anywhere (a place on it and its
 * direction), or both: touching the line at that very point.
 */
export interface CircleEnd {
  readonly point?: Point;
  readonly line?: { readonly place: Point; readonly tangent: Vector };
}

/** A stretch of polyline that one circle may replace. */
export interface CircleStretch {
  readonly start: CircleEnd;
  readonly end: CircleEnd;
  /** The points on the curve, from end to end. */
  readonly curve: readonly Point[];
  /** A point of the curve that the circle passes through and the arcs divide at. */
  readonly through?: Point;
  /** Points of the straight stretch before, from a place on it up to the curve; just the curve's first without one. */
  readonly head: readonly Point[];
  readonly tail: readonly Point[];
}

/** Arcs of one circle; the first and last ends are where it touches lines or passes through points. */
export interface CircleArcs {
  readonly before: readonly FitPiece[];
  /** The arcs after the point passed through; empty without one. */
  readonly after: readonly FitPiece[];
  readonly first: Point;
  readonly last: Point;
}

interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/** Arcs are split above this turn, radians: a half circle is two arcs, a quarter circle one, a whole circle three. */
const MOST_TURN = (3 * Math.PI) / 4;

/** The arcs of one circle along the stretch, bound to its ends; undefined when no such circle stays within the tolerance. */
export function circleAlong(stretch: CircleStretch, tolerance: number): CircleArcs | undefined {
  const { curve, start, end, through } = stretch;
  const side = turningSide(curve);
  const family = familyOf(start, end, curve, side);
  const circle = family && nearest(family, through === undefined ? curve : [through]);
  if (circle === undefined) return undefined;
  const [first, last] = [endOn(circle, start, side), endOn(circle, end, side)];
  const [before, after] = through === undefined
    ? [arcsAbout(circle.centre, first, last, side), []]
    : [arcsAbout(circle.centre, first, through, side), arcsAbout(circle.centre, through, last, side)];
  const chain = chainOf(stretch, first, [...before, ...after], last);
  const whole = [...stretch.head, ...curve.slice(1, -1), ...stretch.tail];
  return chain && followsPolyline(whole, 0, whole.length - 1, chain, tolerance) ? { before, after, first, last } : undefined;
}

/** The arcs between what is left of the lines before and after; undefined when nothing is left of one. */
function chainOf({ start, end, head, tail }: CircleStretch, first: Point, arcs: readonly FitPiece[], last: Point): FitPiece[] | undefined {
  const chain = [...arcs];
  if (start.line && head.length > 1) {
    const rest = lineBetween(footOn(start.line, head[0]!), first);
    if (dot(rest.tangent, start.line.tangent) <= 0) return undefined;
    chain.unshift(rest);
  }
  if (end.line && tail.length > 1) {
    const rest = lineBetween(last, footOn(end.line, tail.at(-1)!));
    if (dot(rest.tangent, end.line.tangent) <= 0) return undefined;
    chain.push(rest);
  }
  return chain;
}

const footOn = ({ place, tangent }: { place: Point; tangent: Vector }, p: Point): Point => add(place, scale(tangent, dot(subtract(p, place), tangent)));

/** 1 where the points turn left, -1 where they turn right: the sign of the area between them and their chord. */
function turningSide(curve: readonly Point[]): number {
  const first = curve[0]!;
  let twice = 0;
  for (let i = 1; i < curve.length; i++) twice += cross(subtract(curve[i - 1]!, first), subtract(curve[i]!, first));
  return twice < 0 ? -1 : 1;
}

function endOn(circle: Circle, { point, line }: CircleEnd, side: number): Point {
  return point ?? add(circle.centre, scale(leftNormal(line!.tangent), -side * circle.radius));
}

/** Circles that keep all that binds them; `at` takes the one unknown left, and ignores it when none is. */
interface Family {
  readonly at: (unknown: number) => Circle | undefined;
  readonly guess: number;
}

function familyOf(start: CircleEnd, end: CircleEnd, curve: readonly Point[], side: number): Family | undefined {
  const about = circleThrough(curve[0]!, curve[curve.length >> 1]!, same(curve[0]!, curve.at(-1)!, 0) ? curve[curve.length >> 2]! : curve.at(-1)!);
  if (about === undefined) return undefined;
  const [n1, n2] = [start, end].map(({ line }) => line && scale(leftNormal(line.tangent), side));
  const [p1, p2] = [start.point, end.point];
  if (p1 && p2 && !n1 && !n2) return throughBoth(p1, same(p1, p2, 0) ? curve[curve.length >> 1]! : p2, about);
  if (p1 && n1) return fixedFamily(p2 ? touchingThrough(p1, n1, p2) : touchingFrom(p1, n1, end.line!.place, n2!));
  if (p2 && n2) return fixedFamily(p1 ? touchingThrough(p2, n2, p1) : touchingFrom(p2, n2, start.line!.place, n1!));
  if (n1 && n2) return touchingBoth(start.line!.place, n1, end.line!.place, n2, about);
  return n1 ? slidingThrough(start.line!, n1, p2!, about) : slidingThrough(end.line!, n2!, p1!, about);
}

const fixedFamily = (circle: Circle | undefined): Family => ({ at: () => circle, guess: 0 });

/** Centres on the perpendicular bisector. */
function throughBoth(p: Point, q: Point, about: Point): Family {
  const middle = scale(add(p, q), 0.5);
  const way = leftNormal(normalize(subtract(q, p)));
  return {
    at: (s) => {
      const centre = add(middle, scale(way, s));
      return { centre, radius: distance(centre, p) };
    },
    guess: dot(subtract(about, middle), way),
  };
}

/** The circle touching a line at `p`, its centre on the side of `normal`, that passes through `q`. */
function touchingThrough(p: Point, normal: Vector, q: Point): Circle | undefined {
  const v = subtract(q, p);
  return circleAt(p, normal, dot(v, v) / (2 * dot(normal, v)));
}

/** The circle touching one line at `p` and another, through `place`, anywhere. */
function touchingFrom(p: Point, normal: Vector, place: Point, otherNormal: Vector): Circle | undefined {
  return circleAt(p, normal, dot(subtract(p, place), otherNormal) / (1 - dot(normal, otherNormal)));
}

const circleAt = (p: Point, normal: Vector, radius: number): Circle | undefined =>
  radius > 0 && Number.isFinite(radius) ? { centre: add(p, scale(normal, radius)), radius } : undefined;

function slidingThrough({ place, tangent }: { place: Point; tangent: Vector }, normal: Vector, q: Point, about: Point): Family {
  return { at: (s) => touchingThrough(add(place, scale(tangent, s)), normal, q), guess: dot(subtract(about, place), tangent) };
}

/** Centres of circles touching two lines lie on a line of their own, along the bisector or, between parallels, midway. */
function touchingBoth(onFirst: Point, n1: Vector, onSecond: Point, n2: Vector, about: Point): Family | undefined {
  const difference = subtract(n1, n2);
  const size = dot(difference, difference);
  if (size < 1e-8) return undefined;
  const excess = dot(onFirst, n1) - dot(onSecond, n2) - dot(about, difference);
  const origin = add(about, scale(difference, excess / size));
  const way = normalize(leftNormal(difference));
  return {
    at: (s) => {
      const centre = add(origin, scale(way, s));
      const radius = dot(subtract(centre, onFirst), n1);
      return radius > 0 && Number.isFinite(radius) ? { centre, radius } : undefined;
    },
    guess: 0,
  };
}

/** The circle of the family nearest to the points, by Gauss-Newton steps on |p - c| - r with a measured slope. */
function nearest({ at, guess }: Family, points: readonly Point[]): Circle | undefined {
  let unknown = guess;
  for (let round = 0; round < 8; round++) {
    const circle = at(unknown);
    if (circle === undefined) return undefined;
    const step = 1e-5 * circle.radius;
    const moved = at(unknown + step);
    if (moved === undefined || same(moved.centre, circle.centre, 0)) return circle;
    let [above, below] = [0, 0];
    for (const p of points) {
      const miss = distance(p, circle.centre) - circle.radius;
      const slope = (distance(p, moved.centre) - moved.radius - miss) / step;
      above += slope * miss;
      below += slope * slope;
    }
    if (below === 0) return circle;
    unknown -= above / below;
  }
  return at(unknown);
}

/** Centre of the circle through three points; undefined when they lie on a line. */
function circleThrough(a: Point, b: Point, c: Point): Point | undefined {
  const [u, v] = [subtract(b, a), subtract(c, a)];
  const twice = 2 * cross(u, v);
  const [uu, vv] = [dot(u, u), dot(v, v)];
  if (Math.abs(twice) <= 1e-12 * (uu + vv)) return undefined;
  return add(a, { x: (v.y * uu - u.y * vv) / twice, y: (u.x * vv - v.x * uu) / twice });
}

function arcsAbout(centre: Point, from: Point, to: Point, side: number): FitPiece[] {
  const [u, v] = [subtract(from, centre), subtract(to, centre)];
  const signed = Math.atan2(side * cross(u, v), dot(u, v));
  const turn = signed <= 0 ? signed + 2 * Math.PI : signed;
  const count = Math.max(1, Math.ceil(turn / MOST_TURN));
  const places = Array.from({ length: count + 1 }, (_, i) => {
    if (i === 0) return from;
    return i === count ? to : add(centre, rotate(u, (side * turn * i * 180) / Math.PI / count));
  });
  return places.slice(1).map((end, i) => arcAbout(centre, places[i]!, end, side < 0));
}
