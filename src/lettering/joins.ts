import type { Point } from '../geometry/index.ts';
import type { Course, Sample } from './course.ts';
import { alongCircle, courseAtEnd } from './ends.ts';
import type { Knot } from './junctions.ts';
import type { Settled } from './settle.ts';

/** How far a lone arm is run on beyond the middle of its junction, in the junction's radius, to meet its partner. */
const BEYOND = 1.3;

/** The course's samples with each lone end run on into its junction, for the walls there to place. */
export function runIn({ samples, ends, closed }: Course, knots: readonly Knot[]): Sample[] {
  if (closed) return [...samples];
  const head = ends[0].kind === 'lone' ? tail([...samples].reverse(), knots[ends[0].knot]!, ends[0].view.curvature) : [];
  const last = ends[1].kind === 'lone' ? tail(samples, knots[ends[1].knot]!, ends[1].view.curvature) : [];
  return [...head.reverse(), ...samples, ...last];
}

function tail(samples: readonly Sample[], knot: Knot, curvature: number): Sample[] {
  const last = samples.at(-1)!;
  const course = samples.length > 2 ? courseAtEnd(samples, 2 * last.half) : { heading: Math.atan2(knot.at.y - last.y, knot.at.x - last.x), curvature: 0 };
  const way = Math.hypot(knot.at.x - last.x, knot.at.y - last.y) + BEYOND * knot.radius;
  const count = Math.max(2, Math.ceil((way / last.half) * 3.5));
  const bend = Math.abs(curvature) < Math.abs(course.curvature) ? -curvature : course.curvature;
  return Array.from({ length: count }, (_, k): Sample => ({ ...last, left: [], right: [], ...alongCircle(last, course.heading, bend, ((k + 1) * way) / count) }));
}

/** Where a lone end meets a stroke. */
export interface Meeting {
  readonly line: readonly Settled[];
  readonly stroke: number;
  readonly at: Point;
}

interface Partner {
  readonly stroke: number;
  readonly line: readonly Point[];
  readonly closed: boolean;
}

/** The line's last part cut where it first crosses a partner's line, or bent onto the nearest one where it crosses none. */
export function meet(line: readonly Settled[], way: number, partners: readonly Partner[], fallback: Point): Meeting | { readonly line: readonly Settled[] } {
  const from = Math.max(1, indexBack(line, way));
  for (let i = from; i < line.length; i++) {
    const crossing = firstCrossing(line[i - 1]!, line[i]!, partners);
    if (crossing) return { line: [...withoutTouching(line.slice(0, i), crossing.at), { ...line[i]!, ...crossing.at }], stroke: crossing.stroke, at: crossing.at };
  }
  const near = nearestApproach(line, from, partners);
  if (near === undefined) return { line: landed(line, from, closestIndex(line, from, fallback), fallback) };
  return { line: landed(line, from, near.index, near.at), stroke: near.stroke, at: near.at };
}

/** Without a last place so near the new end that the direction between them would be noise. */
function withoutTouching(line: readonly Settled[], at: Point): readonly Settled[] {
  const last = line.at(-1)!;
  return line.length > 2 && Math.hypot(last.x - at.x, last.y - at.y) < 0.12 * last.half ? line.slice(0, -1) : line;
}

function indexBack(line: readonly Settled[], way: number): number {
  let [i, left] = [line.length - 1, way];
  while (i > 1 && left > 0) {
    left -= Math.hypot(line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y);
    i--;
  }
  return i;
}

function firstCrossing(a: Point, b: Point, partners: readonly Partner[]): { at: Point; stroke: number } | undefined {
  let best: { at: Point; stroke: number; t: number } | undefined;
  for (const { stroke, line, closed } of partners) {
    for (let k = closed ? 0 : 1; k < line.length; k++) {
      const t = crossingAt(a, b, line.at(k - 1)!, line[k]!);
      if (t !== undefined && (best === undefined || t < best.t)) best = { t, stroke, at: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) } };
    }
  }
  return best;
}

/** Share of the way from a to b at which it crosses the piece from c to d. */
function crossingAt(a: Point, b: Point, c: Point, d: Point): number | undefined {
  const [ux, uy, vx, vy, wx, wy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y, c.x - a.x, c.y - a.y];
  const det = ux * vy - uy * vx;
  if (det === 0) return undefined;
  const [t, s] = [(wx * vy - wy * vx) / det, (wx * uy - wy * ux) / det];
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? t : undefined;
}

function nearestApproach(line: readonly Settled[], from: number, partners: readonly Partner[]): { index: number; stroke: number; at: Point } | undefined {
  let best: { index: number; stroke: number; at: Point; gap: number } | undefined;
  for (let index = from; index < line.length; index++) {
    for (const { stroke, line: other } of partners) {
      for (const at of other) {
        const gap = Math.hypot(at.x - line[index]!.x, at.y - line[index]!.y);
        if (best === undefined || gap < best.gap) best = { index, stroke, at: { x: at.x, y: at.y }, gap };
      }
    }
  }
  return best;
}

function closestIndex(line: readonly Settled[], from: number, point: Point): number {
  let best = line.length - 1;
  for (let i = from; i < line.length; i++) {
    if (Math.hypot(line[i]!.x - point.x, line[i]!.y - point.y) < Math.hypot(line[best]!.x - point.x, line[best]!.y - point.y)) best = i;
  }
  return best;
}

/** The line up to an index, its part from `from` on bent so that it ends at a point. */
function landed(line: readonly Settled[], from: number, to: number, at: Point): Settled[] {
  const last = Math.max(to, Math.min(from + 1, line.length - 1));
  const [dx, dy] = [at.x - line[last]!.x, at.y - line[last]!.y];
  const start = Math.max(0, from - 4);
  return line.slice(0, last + 1).map((sample, i) => {
    const t = Math.max(0, (i - start) / (last - start));
    const share = t * t * (3 - 2 * t);
    return { ...sample, x: sample.x + share * dx, y: sample.y + share * dy };
  });
}
