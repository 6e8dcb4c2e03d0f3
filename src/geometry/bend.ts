import { arcAngles, arcPoint, arcRadius, arcTangent } from './arc.ts';
import { type Cubic, cubicCurvature, cubicDerivative, cubicLength, cubicPoint, cubicSecondDerivative, cubicTangent, curvatureExtrema } from './cubic.ts';
import { segmentCubic, segmentLength } from './measure.ts';
import { type Path, pathSegmentsWithStarts, type StartedSegment } from './path.ts';
import { cross, dot, length, lerp, normalize, type Point, subtract, type Vector } from './point.ts';

/** A sharper break of the tangent than this is a corner. A drawing's rounded coordinates make smaller ones on smooth curves. */
const CORNER_DEGREES = 1;

/** The tightest place of a path. */
export interface LeastRadius {
  /** Radius of curvature in mm: 0 at a corner, Infinity on a straight path. */
  readonly radius: number;
  readonly at: Point;
  /** Length along the path from its start, mm. */
  readonly distance: number;
}

/**
 * Where the path bends most. A break of the tangent over one degree is a corner, radius 0. A cubic whose handle has no
 * length bends infinitely at that end, though it turns by nothing there: its first degree of turn is passed over.
 */
export function leastRadius(path: Path): LeastRadius {
  const pieces = pathSegmentsWithStarts(path).map(bendOf).filter((piece) => piece.length > 0);
  let least: LeastRadius = { radius: Infinity, at: path.start, distance: 0 };
  const consider = (candidate: LeastRadius) => {
    if (candidate.radius < least.radius) least = candidate;
  };
  let before = path.closed ? pieces.at(-1)?.endTangent : undefined;
  let passed = 0;
  for (const piece of pieces) {
    if (before && isCorner(before, piece.startTangent)) consider({ radius: 0, at: piece.start, distance: passed });
    const { radius, at, distance } = piece.tightest;
    consider({ radius, at, distance: passed + distance });
    passed += piece.length;
    before = piece.endTangent;
  }
  return least;
}

const isCorner = (u: Vector, v: Vector) => Math.abs(Math.atan2(cross(u, v), dot(u, v))) > (CORNER_DEGREES * Math.PI) / 180;

interface Bend {
  readonly length: number;
  readonly start: Point;
  readonly startTangent: Vector;
  readonly endTangent: Vector;
  readonly tightest: LeastRadius;
}

function bendOf(started: StartedSegment): Bend {
  const { start, segment } = started;
  const size = segmentLength(started);
  if (segment.kind === 'cubic') return cubicBend(segmentCubic(start, segment), size);
  if (segment.kind === 'line') {
    const tangent = normalize(subtract(segment.end, start));
    return { length: size, start, startTangent: tangent, endTangent: tangent, tightest: { radius: Infinity, at: lerp(start, segment.end, 0.5), distance: size / 2 } };
  }
  const arc = arcAngles(start, segment);
  const tightest = { radius: arcRadius(start, segment), at: arcPoint(arc, 0.5), distance: size / 2 };
  return { length: size, start, startTangent: arcTangent(arc, 0), endTangent: arcTangent(arc, 1), tightest };
}

function cubicBend(cubic: Cubic, size: number): Bend {
  const first = firstDegree(cubic);
  const last = 1 - firstDegree([cubic[3], cubic[2], cubic[1], cubic[0]]);
  const places = curvatureExtrema(cubic).map((t) => Math.min(Math.max(t, first), Math.max(first, last)));
  const radii = places.map((t) => radiusAt(cubic, t));
  const index = radii.indexOf(Math.min(...radii));
  const t = places[index]!;
  const tightest = { radius: radii[index]!, at: cubicPoint(cubic, t), distance: cubicLength(cubic, 0, t) };
  return { length: size, start: cubic[0], startTangent: cubicTangent(cubic, 0), endTangent: cubicTangent(cubic, 1), tightest };
}

/** A curve that stops and turns back has radius 0 there, though its curvature formula reads 0 / 0. */
function radiusAt(cubic: Cubic, t: number): number {
  const speed = length(cubicDerivative(cubic, t));
  const bend = length(cubicSecondDerivative(cubic, t));
  if (t > 0 && t < 1 && speed <= 1e-7 * bend) return 0;
  return 1 / Math.abs(cubicCurvature(cubic, t));
}

/**
 * Where a cubic with no handle at its start has turned by one degree; 0 for one with a handle, 1 where it never turns so far.
 * There B' = B'' t + B''' t^2 / 2, whose angle from B'' has the tangent (B'' x B''') t / (2 |B''|^2 + (B'' . B''') t).
 */
function firstDegree(cubic: Cubic): number {
  const second = cubicSecondDerivative(cubic, 0);
  if (length(cubicDerivative(cubic, 0)) > 1e-9 * length(second)) return 0;
  const third = subtract(cubicSecondDerivative(cubic, 1), second);
  const tangent = Math.tan((CORNER_DEGREES * Math.PI) / 180);
  const turn = Math.abs(cross(second, third)) - tangent * dot(second, third);
  return turn > 0 ? Math.min(1, (2 * tangent * dot(second, second)) / turn) : 1;
}
