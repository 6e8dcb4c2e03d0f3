import { followsPolyline } from './fit-check.ts';
import { featuresOf } from './fit-features.ts';
import { circleAlong, type CircleEnd } from './fit-circle.ts';
import { type Gate, gateAt, noiseOf } from './fit-gates.ts';
import { type FitLine, type FitPiece, lineBetween, pieceSegment } from './fit-piece.ts';
import { fitSmooth } from './fit-smooth.ts';
import { type Path, polylinePath } from './path.ts';
import { lerp, type Point, same } from './point.ts';
import { simplifyLoop, simplifyPolyline } from './simplify.ts';
import { type Span, spansOf } from './fit-spans.ts';

export interface FitOptions {
  /** A closed polyline does not need to repeat its first point. */
  readonly closed: boolean;
  /** Greatest distance in mm between the polyline and the result, either way. */
  readonly tolerance: number;
}

/** Farther out, a double's last digit is no longer small beside a tolerance. */
const FARTHEST = 1e9;

/** The polyline as straight lines between some of its points, within the tolerance both ways. */
export function fitLines(points: readonly Point[], { closed, tolerance }: FitOptions): Path {
  const distinct = withoutRepeats(points, closed);
  checkInput(distinct, tolerance);
  return polylinePath(closed ? simplifyLoop(distinct, tolerance) : simplifyPolyline(distinct, tolerance), closed);
}

/**
 * Lines and arcs along a dense polyline, within the tolerance both ways. The polyline should stand off the curve meant by
 * less than half the tolerance. Where it is smooth, pieces meet with tangents within 0.05 degree; where a point cannot
 * lie on a smooth curve sampled that densely, it stays a corner. The path starts exactly at the first point, ends exactly at
 * the last one or, closed, at the first; arcs turn by at most 170 degrees. Time grows about as n log n.
 * @throws RangeError when there are no points, one is not finite or over 1e9 mm away, or the tolerance is not positive.
 */
export function fitArcs(points: readonly Point[], { closed, tolerance }: FitOptions): Path {
  const distinct = withoutRepeats(points, closed);
  checkInput(distinct, tolerance);
  if (distinct.length < 3) return polylinePath(distinct, closed);
  const pieces = (closed ? wholeCircle(distinct, tolerance) : undefined) ?? piecesAlong(distinct, closed, tolerance);
  return { start: distinct[0]!, segments: pieces.map(pieceSegment), closed };
}

/** A loop that one circle through its start follows; asked first, as a circle of a few tolerances is all corners otherwise. */
function wholeCircle(distinct: readonly Point[], tolerance: number): readonly FitPiece[] | undefined {
  const [point, curve] = [distinct[0]!, [...distinct, distinct[0]!]];
  return circleAlong({ start: { point }, end: { point }, curve, head: [point], tail: [point] }, tolerance)?.before;
}

function checkInput(points: readonly Point[], tolerance: number): void {
  if (!(tolerance > 0) || !Number.isFinite(tolerance)) throw new RangeError(`tolerance must be positive, not ${tolerance}`);
  if (points.length === 0) throw new RangeError('a path needs at least one point');
  const bad = points.find(({ x, y }) => !(Math.abs(x) <= FARTHEST && Math.abs(y) <= FARTHEST));
  if (bad) throw new RangeError(`points must lie within ${FARTHEST} mm of the origin, not at (${bad.x}, ${bad.y})`);
}

function withoutRepeats(points: readonly Point[], closed: boolean): Point[] {
  const distinct = points.filter((p, i) => i === 0 || !same(p, points[i - 1]!, 0));
  while (closed && distinct.length > 1 && same(distinct.at(-1)!, distinct[0]!, 0)) distinct.pop();
  return distinct;
}

/** A span with the line or, once fitted, the pieces that stand for it. */
interface Fitted {
  readonly span: Span;
  pieces: readonly FitPiece[];
}

function piecesAlong(distinct: readonly Point[], closed: boolean, tolerance: number): FitPiece[] {
  const points = closed ? [...distinct, distinct[0]!] : distinct;
  const at = (index: number) => distinct[closed ? ((index % distinct.length) + distinct.length) % distinct.length : index]!;
  const noise = noiseOf(at, points.length, tolerance);
  const spans = spansOf(points, closed, featuresOf(distinct, closed, tolerance, noise)).map((span) => certain(points, span, tolerance));
  const fitted = spans.map((span): Fitted => ({ span, pieces: span.straight ? [lineBetween(points[span.from]!, points[span.to]!)] : [] }));
  const job: Job = { points, closed, tolerance, fitted };
  roundStart(job);
  fitted.forEach((_, i) => roundOne(job, i));
  const gates = gateFinder(at, noise, tolerance);
  fitted.forEach((one, i) => {
    if (one.pieces.length === 0) one.pieces = curvesAlong(job, i, gates);
  });
  return fitted.flatMap(({ pieces }) => pieces);
}

/** A span is straight only if its chord really stays within the tolerance: trimming its ends may have moved it. */
function certain(points: readonly Point[], span: Span, tolerance: number): Span {
  const chord = () => lineBetween(points[span.from]!, points[span.to]!);
  return span.straight && !followsPolyline(points, span.from, span.to, [chord()], tolerance) ? { ...span, straight: false } : span;
}

interface Job {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly tolerance: number;
  readonly fitted: readonly Fitted[];
}

type GateFinder = (index: number, window: readonly [number, number]) => Gate;

function curvesAlong(job: Job, i: number, gates: GateFinder): FitPiece[] {
  const { points, tolerance } = job;
  const { from, to, window } = job.fitted[i]!.span;
  const gate = (index: number) => gates(index, window);
  const start = fixedGate(startPoint(job, i), lineBeside(job, i, -1)?.tangent, () => gate(from));
  const end = fixedGate(endPoint(job, i), lineBeside(job, i, 1)?.tangent, () => gate(to));
  return fitSmooth({ points, from, to, start, end, gateAt: gate, tolerance });
}

/** A gate exactly at a point, in a direction that is given or else the curve's own. */
const fixedGate = (point: Point, tangent: Gate['tangent'] | undefined, own: () => Gate): Gate => ({ point, tangent: tangent ?? own().tangent });

/** A span's neighbour in order, over the start of a closed path too; undefined where a corner or the path's end lies between. */
function beside({ fitted, closed }: Job, i: number, side: -1 | 1): Fitted | undefined {
  const { span } = fitted[i]!;
  if (side < 0 ? span.cornerBefore : span.cornerAfter) return undefined;
  return fitted[closed ? (i + side + fitted.length) % fitted.length : i + side];
}

/** The straight stretch that a span joins smoothly on one side, if there is one. */
function lineBeside(job: Job, i: number, side: -1 | 1): FitLine | undefined {
  const other = beside(job, i, side);
  const piece = other?.span.straight ? other.pieces[0] : undefined;
  return piece?.kind === 'line' ? piece : undefined;
}

const startPoint = ({ points, fitted }: Job, i: number): Point => fitted[i - 1]?.pieces.at(-1)?.end ?? points[fitted[i]!.span.from]!;
const endPoint = ({ points, fitted }: Job, i: number): Point => fitted[i + 1]?.pieces[0]?.start ?? points[fitted[i]!.span.to]!;

/** Tries one circle in place of a smooth span, and cuts the straight stretches it touches. */
function roundOne(job: Job, i: number): void {
  const { points, fitted, tolerance } = job;
  const { span, pieces } = fitted[i]!;
  if (span.straight || pieces.length > 0) return;
  // The direction at a place inside a smooth curve is not known well enough to bind a circle to it.
  if (beside(job, i, -1)?.span.straight === false || beside(job, i, 1)?.span.straight === false) return;
  const [start, end] = [endOf(job, i, -1), endOf(job, i, 1)];
  const found = circleAlong({ start: start.bound, end: end.bound, curve: points.slice(span.from, span.to + 1), head: start.points, tail: end.points }, tolerance);
  if (found === undefined) return;
  fitted[i]!.pieces = found.before;
  cutLines(job, [i - 1, found.first], [i + 1, found.last]);
}

/** The same for a smooth curve over the start of a closed path: the circle passes through the start and its arcs divide there. */
function roundStart(job: Job): void {
  const { points, fitted, tolerance } = job;
  const last = fitted.length - 1;
  const [head, tail] = [fitted[0]!, fitted[last]!];
  if (last < 1 || head.span.straight || tail.span.straight || beside(job, 0, -1) !== tail) return;
  const [start, end] = [endOf(job, last, -1), endOf(job, 0, 1)];
  const curve = [...points.slice(tail.span.from), ...points.slice(1, head.span.to + 1)];
  const found = circleAlong({ start: start.bound, end: end.bound, curve, through: points[0]!, head: start.points, tail: end.points }, tolerance);
  if (found === undefined) return;
  tail.pieces = found.before;
  head.pieces = found.after;
  cutLines(job, [last - 1, found.first], [1, found.last]);
}

/** What binds a circle on one side of a span, and the points from there to the middle of the straight stretch it may cut. */
function endOf(job: Job, i: number, side: -1 | 1): { readonly bound: CircleEnd; readonly points: readonly Point[] } {
  const { points, fitted } = job;
  const { span } = fitted[i]!;
  const point = points[side < 0 ? span.from : span.to]!;
  const line = lineBeside(job, i, side);
  if (line === undefined) return { bound: { point }, points: [point] };
  const bound = { line: { place: side < 0 ? line.end : line.start, tangent: line.tangent } };
  const other = fitted[i + side];
  // Beyond the path's start the line stays as it is: the path starts exactly there.
  if (other === undefined) return { bound: { ...bound, point }, points: [point] };
  return { bound, points: side < 0 ? secondHalf(points, other.span) : firstHalf(points, other.span) };
}

function cutLines({ fitted }: Job, [before, first]: readonly [number, Point], [after, last]: readonly [number, Point]): void {
  const [lineBefore, lineAfter] = [fitted[before], fitted[after]];
  if (lineBefore?.span.straight) lineBefore.pieces = [lineBetween(lineBefore.pieces[0]!.start, first)];
  if (lineAfter?.span.straight) lineAfter.pieces = [lineBetween(last, lineAfter.pieces[0]!.end)];
}

/** The points of a straight span from its middle on; a single edge is cut there. */
function secondHalf(points: readonly Point[], { from, to }: Span): Point[] {
  if (to - from === 1) return [lerp(points[from]!, points[to]!, 0.5), points[to]!];
  return points.slice((from + to) >> 1, to + 1);
}

const firstHalf = (points: readonly Point[], { from, to }: Span): Point[] =>
  to - from === 1 ? [points[from]!, lerp(points[from]!, points[to]!, 0.5)] : points.slice(from, ((from + to) >> 1) + 1);

/** Gates by index, each computed once. */
function gateFinder(at: (index: number) => Point, noise: number, tolerance: number): GateFinder {
  const known = new Map<number, Gate>();
  return (index, window) => {
    const gate = known.get(index) ?? gateAt(at, index, window, { noise, tolerance });
    known.set(index, gate);
    return gate;
  };
}
