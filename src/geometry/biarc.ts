import { arcToward, type FitPiece, pieceEndTangent } from './fit-piece.ts';
import { add, cross, dot, type Point, scale, subtract, type Vector } from './point.ts';

/**
 * Two arcs (or lines) that leave `start` along the unit vector `startTangent`, reach `end` along `endTangent` and share
 * their tangent where they meet, with handles of equal length d:
 * d = v.v / (v.t + sqrt((v.t)^2 + q v.v)), v = end - start, t = the tangents' sum, q = 2 (1 - their dot product)
 * (K. M. Bolton, Computer-Aided Design 7, 1975, 89-92; D. S. Meek and D. J. Walton, Computer-Aided Design 24, 1992, 301-306).
 * Undefined where no such arcs with a positive handle exist.
 */
export function biarc(start: Point, startTangent: Vector, end: Point, endTangent: Vector): readonly [FitPiece, FitPiece] | undefined {
  const v = subtract(end, start);
  const along = dot(v, add(startTangent, endTangent));
  const turned = subtract(startTangent, endTangent);
  // The root is written with its sum in the divisor: no difference of near-equal numbers for nearly parallel tangents.
  const handle = dot(v, v) / (along + Math.sqrt(along * along + dot(turned, turned) * dot(v, v)));
  if (!(handle > 0) || !Number.isFinite(handle)) return undefined;
  const joint = scale(add(add(start, scale(startTangent, handle)), subtract(end, scale(endTangent, handle))), 0.5);
  const first = arcToward(start, startTangent, joint);
  return [first, arcToward(joint, pieceEndTangent(first), end)];
}

/** Signed turn in radians from one unit vector to another. */
export const turnBetween = (u: Vector, v: Vector): number => Math.atan2(cross(u, v), dot(u, v));
