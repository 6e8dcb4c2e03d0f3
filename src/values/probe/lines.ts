import { type Path, type Point, type Vector, dot, lerp, normalize, pathLength, subtract } from '../../geometry/index.ts';
import { type StrandSample, type Strands, makeStrands } from '../../machining/index.ts';
import type { Reading } from '../picture.ts';
import { reading } from './reading.ts';

/** Lines prepared for many questions. */
export interface MeasuredLines {
  readonly strands: Strands;
  /** What one of them is called: "stroke". */
  readonly name: string;
}

/** A place on one of the lines. */
export interface Foot {
  readonly point: Point;
  readonly tangent: Vector;
  /** Number of the line, counted from 0, and the way along it, mm. */
  readonly line: number;
  readonly along: number;
  /** 1/mm, positive where the line turns left. */
  readonly curvature: number;
}

/** Bounds the samples of a drawing of any length. */
const MOST_SAMPLES = 20_000;
/** Finer than what anybody points at, mm. */
const FINEST = 0.25;
/** A bend wider than this is as good as straight, mm. */
const WIDEST_RADIUS = 10_000;
/** Curvatures of neighbours that differ by more than this share belong to different pieces of the line. */
const SAME_BEND = 0.3;
/** Directions of neighbours with a lesser cosine have a corner between them. */
const SMOOTH = 0.9;

export function measureLines(paths: readonly Path[], name: string): MeasuredLines {
  const total = paths.reduce((sum, path) => sum + pathLength(path), 0);
  return { strands: makeStrands(paths, Math.max(FINEST, total / MOST_SAMPLES)), name };
}

/** The place on the lines nearest to a point, if there is one within so many mm. */
export function footOn({ strands: { index, samples, lines } }: MeasuredLines, at: Point, within: number): Foot | undefined {
  const nearest = index.nearest(at, within);
  if (nearest === undefined) return undefined;
  const from = samples[nearest.segment]!;
  const { first, end } = lines[from.line]!;
  const to = samples[nearest.segment + 1 < end ? nearest.segment + 1 : first]!;
  const way = Math.hypot(nearest.point.x - from.point.x, nearest.point.y - from.point.y);
  const chord = Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y);
  const share = chord > 0 ? Math.min(1, way / chord) : 0;
  return {
    point: nearest.point, line: from.line, along: from.distance + way, curvature: curvatureBetween(from, to, share),
    tangent: tangentBetween(from, to, share),
  };
}

/** At a corner, the way the chord runs. */
function tangentBetween(from: StrandSample, to: StrandSample, share: number): Vector {
  const smooth = dot(from.tangent, to.tangent) > SMOOTH;
  return normalize(smooth ? lerp(from.tangent, to.tangent, share) : subtract(to.point, from.point));
}

function curvatureBetween(from: StrandSample, to: StrandSample, share: number): number {
  const [a, b] = [from.curvature, to.curvature];
  if (Math.abs(a - b) > SAME_BEND * Math.max(Math.abs(a), Math.abs(b))) return a;
  return lerp({ x: a, y: 0 }, { x: b, y: 0 }, share).x;
}

/** How tight the bend is, how far along, and how long the line is. */
export function readLine({ strands, name }: MeasuredLines, { point, line, along, curvature }: Foot): Reading[] {
  const radius = 1 / Math.abs(curvature);
  return [
    ...(radius < WIDEST_RADIUS ? [reading('radius here', radius, 'mm', point)] : []),
    reading(`along ${name} ${line + 1}`, along, 'mm', point),
    reading(`length of ${name} ${line + 1}`, strands.lines[line]!.length, 'mm', point),
  ];
}
