import { type Box } from '../../geometry/box.ts';
import { type Point, type Point3 } from '../../geometry/point.ts';
import { arcSpans, lowestOverArc, wedgesOf, type ArcSwath } from './swath-arc.ts';
import { lineSpans, lowestOverLine, type LineSwath } from './swath-line.ts';
import { type Move } from '../job/pass.ts';

/**
 * What a flat-ended cutter sweeps on the part of one move that lies below the sheet's top face. A swath always runs
 * downhill, from `high` to `low` (millimetres, at most 0): which way the cutter went makes no difference to what it removes.
 */
export type Swath = LineSwath | ArcSwath;

/** Most numbers `swathSpans` writes for one row. */
export const SPAN_NUMBERS = 16;

/** The swath of a move, or undefined when the move stays at or above the top face. `radius` is the cutter's, mm. */
export function swathOf(from: Point3, move: Move, radius: number): Swath | undefined {
  const { to } = move;
  if (!Number.isFinite(from.x + from.y + from.z + to.x + to.y + to.z)) throw new RangeError('A move needs finite coordinates.');
  if (from.z >= 0 && to.z >= 0) return undefined;
  if (move.kind !== 'arc') return lineSwath(from, to, radius);
  // The two radii may differ by what rounding to the program's decimals allows; the mean of them is the arc's.
  const bend = (distanceTo(move.centre, from) + distanceTo(move.centre, to)) / 2;
  return bend < SMALLEST_BEND ? lineSwath(from, to, radius) : arcSwath(from, move, bend, radius);
}

/** An arc with a smaller radius than this, mm, does not move the cutter sideways at all. */
const SMALLEST_BEND = 1e-9;

/** Writes the x intervals (left, right, left, right ...; they may overlap) of the swath at height y; tells how many numbers. */
export function swathSpans(swath: Swath, y: number, out: Float64Array): number {
  return swath.kind === 'line' ? lineSpans(swath, y, out) : arcSpans(swath, y, out);
}

/** The lowest z, mm, that the cutter's flat end has over a point inside the swath's spans. */
export function lowestOver(swath: Swath, x: number, y: number): number {
  if (swath.high === swath.low) return swath.low;
  return swath.kind === 'line' ? lowestOverLine(swath, x, y) : lowestOverArc(swath, x, y);
}

function lineSwath(from: Point3, to: Point3, radius: number): LineSwath {
  const upper = from.z >= to.z ? from : to;
  const lower = from.z >= to.z ? to : from;
  const above = upper.z > 0 ? upper.z / (upper.z - lower.z) : 0;
  const start = { x: upper.x + above * (lower.x - upper.x), y: upper.y + above * (lower.y - upper.y) };
  const length = distanceTo(start, lower);
  return {
    kind: 'line', radius, start, end: lower, length,
    alongX: length > 0 ? (lower.x - start.x) / length : 1, alongY: length > 0 ? (lower.y - start.y) / length : 0,
    high: Math.min(upper.z, 0), low: lower.z,
    box: {
      minX: Math.min(start.x, lower.x) - radius, minY: Math.min(start.y, lower.y) - radius,
      maxX: Math.max(start.x, lower.x) + radius, maxY: Math.max(start.y, lower.y) + radius,
    },
  };
}

function arcSwath(from: Point3, move: Move & { kind: 'arc' }, bend: number, radius: number): ArcSwath {
  const { to, centre } = move;
  const downhill = from.z >= to.z;
  const [upper, lower] = downhill ? [from, to] : [to, from];
  const sense = move.clockwise === downhill ? -1 : 1;
  const upperAngle = angleFrom(centre, upper);
  const whole = from.x === to.x && from.y === to.y;
  const turn = whole ? 2 * Math.PI : positiveTurn(sense * (angleFrom(centre, lower) - upperAngle));
  const above = upper.z > 0 ? upper.z / (upper.z - lower.z) : 0;
  const startAngle = upperAngle + sense * above * turn;
  const left = turn * (1 - above);
  const ends = [startAngle, startAngle + sense * left].map((angle) => onCircle(centre, bend, angle));
  return {
    kind: 'arc', radius, centre, bend, startAngle, sense, turn: left, wedges: wedgesOf(startAngle, sense, left), start: ends[0]!, end: ends[1]!,
    high: Math.min(upper.z, 0), low: lower.z,
    box: grownBox([...ends, ...quadrantPoints(centre, bend, startAngle, sense, left)], radius),
  };
}

/** The extreme points of the circle, right, top, left and bottom, that the arc passes. */
function quadrantPoints(centre: Point, bend: number, startAngle: number, sense: number, turn: number): Point[] {
  return [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2)
    .filter((angle) => positiveTurn(sense * (angle - startAngle)) <= turn)
    .map((angle) => onCircle(centre, bend, angle));
}

/** An angle brought into [0, 2 pi). */
function positiveTurn(angle: number): number {
  const turn = angle % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

function grownBox(points: readonly Point[], radius: number): Box {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  return {
    minX: Math.min(...xs) - radius, minY: Math.min(...ys) - radius,
    maxX: Math.max(...xs) + radius, maxY: Math.max(...ys) + radius,
  };
}

const distanceTo = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
const angleFrom = (centre: Point, p: Point): number => Math.atan2(p.y - centre.y, p.x - centre.x);
const onCircle = (centre: Point, bend: number, angle: number): Point =>
  ({ x: centre.x + bend * Math.cos(angle), y: centre.y + bend * Math.sin(angle) });
