import { type Cubic, straightCubic } from './cubic.ts';
import { type ArcSegment } from './path.ts';
import { add, cosSin, distance, type Point, rotate, same, scale, subtract, type Vector } from './point.ts';

/** An arc as centre, radius and angles in radians; `sweep` is signed, counter-clockwise positive, at most 2 pi. */
export interface ArcAngles {
  readonly centre: Point;
  readonly startRadius: number;
  /** Differs from the start radius only by what rounding did to the arc's points. */
  readonly endRadius: number;
  readonly startAngle: number;
  readonly sweep: number;
}

export function arcAngles(start: Point, arc: ArcSegment): ArcAngles {
  const from = subtract(start, arc.centre);
  const to = subtract(arc.end, arc.centre);
  const startAngle = Math.atan2(from.y, from.x);
  return {
    centre: arc.centre,
    startRadius: Math.hypot(from.x, from.y),
    endRadius: Math.hypot(to.x, to.y),
    startAngle,
    sweep: same(start, arc.end, 0) ? fullTurn(arc.clockwise) : signedTurn(Math.atan2(to.y, to.x) - startAngle, arc.clockwise),
  };
}

const fullTurn = (clockwise: boolean) => (clockwise ? -2 : 2) * Math.PI;

function signedTurn(difference: number, clockwise: boolean): number {
  const turn = 2 * Math.PI;
  const positive = ((difference % turn) + turn) % turn;
  return clockwise && positive > 0 ? positive - turn : positive;
}

export const arcRadius = (start: Point, arc: ArcSegment): number => (distance(start, arc.centre) + distance(arc.end, arc.centre)) / 2;

/** The point at fraction `t` of the arc's turn. A radius that differs between the ends changes evenly. */
export function arcPoint(arc: ArcAngles, t: number): Point {
  const angle = arc.startAngle + arc.sweep * t;
  const radius = arc.startRadius + (arc.endRadius - arc.startRadius) * t;
  return { x: arc.centre.x + radius * Math.cos(angle), y: arc.centre.y + radius * Math.sin(angle) };
}

/** Unit tangent at fraction `t`, in the direction of travel. */
export function arcTangent(arc: ArcAngles, t: number): Vector {
  const angle = arc.startAngle + arc.sweep * t;
  const sign = arc.sweep < 0 ? -1 : 1;
  return { x: -sign * Math.sin(angle), y: sign * Math.cos(angle) };
}

/**
 * Cubics along the arc, each over at most 90 degrees, with handles (4/3) tan(turn/4) r.
 * Greatest radial error 2.73e-4 r at 90 degrees, falling with the sixth power of the turn
 * (M. Goldapp, Computer Aided Geometric Design 8, 1991, 227-238); `tolerance` in mm chooses how many.
 */
export function arcToCubics(start: Point, arc: ArcSegment, tolerance: number): Cubic[] {
  const angles = arcAngles(start, arc);
  const radius = Math.max(angles.startRadius, angles.endRadius);
  const count = cubicCount(Math.abs(angles.sweep), radius, tolerance);
  const cubics: Cubic[] = [];
  let from = start;
  for (let i = 1; i <= count; i++) {
    const to = i === count ? arc.end : arcPoint(angles, i / count);
    cubics.push(arcPieceAsCubic(angles, from, to, [(i - 1) / count, i / count]));
    from = to;
  }
  return cubics;
}

function cubicCount(sweep: number, radius: number, tolerance: number): number {
  if (!(tolerance > 0)) throw new RangeError(`tolerance must be positive, not ${tolerance}`);
  let count = Math.max(1, Math.ceil((2 * sweep) / Math.PI - 1e-9));
  // Even a micrometre on a kilometre needs no more than 64 pieces a quarter.
  while (count < 256 && cubicError(sweep / count) * radius > tolerance) count *= 2;
  return count;
}

const cubicError = (turn: number) => (2 / 27) * Math.cos(turn / 4) ** 4 * Math.tan(turn / 4) ** 6;

function arcPieceAsCubic(arc: ArcAngles, from: Point, to: Point, [t0, t1]: readonly [number, number]): Cubic {
  const handle = (4 / 3) * Math.tan((Math.abs(arc.sweep) * (t1 - t0)) / 4);
  const out = scale(arcTangent(arc, t0), handle * distance(from, arc.centre));
  const back = scale(arcTangent(arc, t1), -handle * distance(to, arc.centre));
  return [from, add(from, out), add(to, back), to];
}

/** An elliptical arc as SVG path data states it; rotation in degrees, sweep true for increasing angle. */
export interface EllipticalArc {
  readonly radiusX: number;
  readonly radiusY: number;
  readonly rotation: number;
  readonly large: boolean;
  readonly sweep: boolean;
  readonly end: Point;
}

/** Centre, repaired radii and angles (radians) of an elliptical arc. */
export interface EllipseAngles {
  readonly centre: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  readonly rotation: number;
  readonly startAngle: number;
  readonly sweep: number;
}

/**
 * Centre form of an elliptical arc, by the conversion in SVG 2, implementation notes (SVG 1.1, F.6.5 and F.6.6):
 * negative radii count as positive, radii too small to reach are enlarged. Undefined where SVG draws a straight line
 * (a radius 0) or nothing (equal ends).
 */
export function ellipseAngles(start: Point, arc: EllipticalArc): EllipseAngles | undefined {
  const half = rotate(scale(subtract(start, arc.end), 0.5), -arc.rotation);
  let [rx, ry] = [Math.abs(arc.radiusX), Math.abs(arc.radiusY)];
  if (rx === 0 || ry === 0 || same(start, arc.end, 0)) return undefined;
  // All in units of the radii: the arc lies on the unit circle and cannot overflow on the way.
  let [x, y] = [half.x / rx, half.y / ry];
  const reach = Math.hypot(x, y);
  if (reach > 1) [rx, ry, x, y] = [rx * reach, ry * reach, x / reach, y / reach];
  const size = reach > 1 ? 1 : reach;
  const offset = (arc.large === arc.sweep ? -1 : 1) * (Math.sqrt(Math.max(0, 1 - size * size)) / size);
  if (!Number.isFinite(offset)) return undefined;
  const unit = { x: offset * y, y: -offset * x };
  const startAngle = Math.atan2(y - unit.y, x - unit.x);
  const difference = Math.atan2(-y - unit.y, -x - unit.x) - startAngle;
  const middle = { x: start.x / 2 + arc.end.x / 2, y: start.y / 2 + arc.end.y / 2 };
  const centre = add(middle, rotate({ x: unit.x * rx, y: unit.y * ry }, arc.rotation));
  return { centre, radiusX: rx, radiusY: ry, rotation: arc.rotation, startAngle, sweep: signedTurn(difference, !arc.sweep) };
}

/**
 * Cubics along an elliptical arc within `tolerance` mm. A radius of 0 gives one straight cubic, equal ends give none.
 */
export function ellipticalArcToCubics(start: Point, arc: EllipticalArc, tolerance: number): Cubic[] {
  if (same(start, arc.end, 0)) return [];
  const ellipse = ellipseAngles(start, arc);
  if (ellipse === undefined) return [straightCubic(start, arc.end)];
  const count = cubicCount(Math.abs(ellipse.sweep), Math.max(ellipse.radiusX, ellipse.radiusY), tolerance);
  const turn = ellipse.sweep / count;
  const handle = (4 / 3) * Math.tan(turn / 4);
  return Array.from({ length: count }, (_, i): Cubic => {
    const [a, b] = [ellipse.startAngle + turn * i, ellipse.startAngle + turn * (i + 1)];
    const place = (angle: number, reach: number) => ellipsePoint(ellipse, angle, reach);
    return [i === 0 ? start : place(a, 0), place(a, handle), place(b, -handle), i === count - 1 ? arc.end : place(b, 0)];
  });
}

/** The point at an angle, moved along the tangent by `reach` times the derivative. */
function ellipsePoint(ellipse: EllipseAngles, angle: number, reach: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const x = ellipse.radiusX * (cos - reach * sin);
  const y = ellipse.radiusY * (sin + reach * cos);
  const turn = cosSin(ellipse.rotation);
  return { x: ellipse.centre.x + turn.cos * x - turn.sin * y, y: ellipse.centre.y + turn.sin * x + turn.cos * y };
}
