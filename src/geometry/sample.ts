import { arcAngles, arcPoint, arcTangent } from './arc.ts';
import { type Cubic, cubicCurvature, cubicDerivative, cubicLength, cubicPoint, cubicTangent } from './cubic.ts';
import { segmentCubic, segmentLength } from './measure.ts';
import { type Path, pathSegmentsWithStarts, type StartedSegment } from './path.ts';
import { length, lerp, normalize, type Point, subtract, type Vector } from './point.ts';

/** What a path is like at one place. */
export interface PathSample {
  readonly point: Point;
  /** Unit vector in the direction of travel; zero only on a path that is a single point. */
  readonly tangent: Vector;
  /** 1/mm, positive where the path turns left. */
  readonly curvature: number;
  /** Length along the path from its start, mm. */
  readonly distance: number;
}

/** A bound on the work one call can be asked for. */
const MOST_SAMPLES = 10_000_000;

/**
 * Samples at even distances along the path, as far apart as possible but at most `spacing` mm. An open path has one at
 * each end; a closed path has one at its start and none at its end, which is the same place. At a corner the tangent is
 * that of the segment that follows.
 * @throws RangeError when the spacing is not positive, or so small that over ten million samples would be needed.
 */
export function samplePath(path: Path, spacing: number): PathSample[] {
  if (!(spacing > 0)) throw new RangeError(`spacing must be positive, not ${spacing}`);
  const rulers = rulersAlong(path);
  const total = rulers.reduce((sum, ruler) => sum + ruler.length, 0);
  if (total === 0) return [{ point: path.start, tangent: { x: 0, y: 0 }, curvature: 0, distance: 0 }];
  const steps = Math.max(1, Math.ceil(total / spacing - 1e-9));
  if (!(steps <= MOST_SAMPLES)) throw new RangeError(`a spacing of ${spacing} mm on ${total} mm asks for too many samples`);
  return Array.from({ length: path.closed ? steps : steps + 1 }, (_, i) => (i / steps) * total).map(walker(rulers));
}

/** Unit tangents at the path's two ends, in the direction of travel; zero for a single point. */
export function endTangents(path: Path): { readonly first: Vector; readonly last: Vector } {
  const rulers = rulersAlong(path);
  const zero = { x: 0, y: 0 };
  const last = rulers.at(-1);
  return { first: rulers[0]?.at(0).tangent ?? zero, last: last?.at(last.length).tangent ?? zero };
}

/** Finds samples at rising distances, one pass over the segments for all of them. */
function walker(rulers: readonly Ruler[]): (distance: number) => PathSample {
  let [index, passed] = [0, 0];
  return (along) => {
    while (index < rulers.length - 1 && along - passed >= rulers[index]!.length) passed += rulers[index++]!.length;
    const ruler = rulers[index]!;
    return { ...ruler.at(Math.min(ruler.length, Math.max(0, along - passed))), distance: along };
  };
}

/** A segment measured: its length and what it is like at a distance from its start. */
interface Ruler {
  readonly length: number;
  readonly at: (distance: number) => Omit<PathSample, 'distance'>;
}

const rulersAlong = (path: Path) => pathSegmentsWithStarts(path).map(rulerOf).filter((ruler) => ruler.length > 0);

function rulerOf(started: StartedSegment): Ruler {
  const { start, segment } = started;
  if (segment.kind === 'cubic') return cubicRuler(segmentCubic(start, segment));
  const size = segmentLength(started);
  if (segment.kind === 'line') {
    const tangent = normalize(subtract(segment.end, start));
    return { length: size, at: (along) => ({ point: lerp(start, segment.end, along / size), tangent, curvature: 0 }) };
  }
  const arc = arcAngles(start, segment);
  const curvature = (arc.sweep < 0 ? -2 : 2) / (arc.startRadius + arc.endRadius);
  return {
    length: size,
    at: (along) => ({ point: along === size ? segment.end : arcPoint(arc, along / size), tangent: arcTangent(arc, along / size), curvature }),
  };
}

/** Even steps of t in the table of lengths; within one of them Newton's steps settle in a few rounds. */
const TABLE_STEPS = 16;

function cubicRuler(cubic: Cubic): Ruler {
  const table = [0];
  for (let i = 1; i <= TABLE_STEPS; i++) table.push(table[i - 1]! + cubicLength(cubic, (i - 1) / TABLE_STEPS, i / TABLE_STEPS));
  return {
    length: table[TABLE_STEPS]!,
    at: (along) => {
      const t = parameterAt(cubic, table, along);
      return { point: cubicPoint(cubic, t), tangent: cubicTangent(cubic, t), curvature: cubicCurvature(cubic, t) };
    },
  };
}

/** The parameter at a distance from the start, by Newton's method kept inside a shrinking bracket. */
function parameterAt(cubic: Cubic, table: readonly number[], along: number): number {
  if (along >= table[TABLE_STEPS]!) return 1;
  const step = Math.max(1, table.findIndex((reached) => reached > along)) - 1;
  let [low, high] = [step / TABLE_STEPS, (step + 1) / TABLE_STEPS];
  let [t, reached] = [low, table[step]!];
  for (let i = 0; i < 60 && high - low > 1e-15; i++) {
    const error = along - reached;
    if (Math.abs(error) <= 1e-12 * table[TABLE_STEPS]!) break;
    if (error > 0) low = t;
    else high = t;
    const next = t + error / length(cubicDerivative(cubic, t));
    t = next > low && next < high ? next : (low + high) / 2;
    reached = table[step]! + cubicLength(cubic, step / TABLE_STEPS, t);
  }
  return t;
}
