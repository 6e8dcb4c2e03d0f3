import { featuresOf } from './fit-features.ts';
import { filletBetween } from './fit-fillet.ts';
import { type Gate, gateAt } from './fit-gates.ts';
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
 * @throws RangeError when there are no points, one is not finite, or the tolerance is not positive.
 */
export function fitArcs(points: readonly Point[], { closed, tolerance }: FitOptions): Path {
  const distinct = withoutRepeats(points, closed);
  checkInput(distinct, tolerance);
  if (distinct.length < 3) return polylinePath(distinct, closed);
  const pieces = piecesAlong(distinct, closed, tolerance);
  return { start: distinct[0]!, segments: pieces.map(pieceSegment), closed };
}

function checkInput(points: readonly Point[], tolerance: number): void {
  if (!(tolerance > 0) || !Number.isFinite(tolerance)) throw new RangeError(`tolerance must be positive, not ${tolerance}`);
  if (points.length === 0) throw new RangeError('a path needs at least one point');
  const bad = points.find(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y));
  if (bad) throw new RangeError(`points must be finite, not (${bad.x}, ${bad.y})`);
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
  const spans = spansOf(points, closed, featuresOf(distinct, closed, tolerance));
  const fitted = spans.map((span): Fitted => ({ span, pieces: span.straight ? [lineBetween(points[span.from]!, points[span.to]!)] : [] }));
  fitted.forEach((_, i) => fillet(points, fitted, i, tolerance));
  const gates = gateFinder(distinct, closed, tolerance);
  fitted.forEach((one, i) => {
    if (one.pieces.length > 0) return;
    const { from, to, window } = one.span;
    const gate = (index: number) => gates(index, window);
    const start = fixedGate(points[from]!, neighbour(fitted, i, -1, closed)?.tangent, () => gate(from));
    const end = fixedGate(points[to]!, neighbour(fitted, i, 1, closed)?.tangent, () => gate(to));
    one.pieces = fitSmooth({ points, from, to, start, end, gateAt: gate, tolerance });
  });
  return fitted.flatMap(({ pieces }) => pieces);
}

/** A gate exactly at a point, in a direction that is given or else the curve's own. */
const fixedGate = (point: Point, tangent: Gate['tangent'] | undefined, own: () => Gate): Gate => ({ point, tangent: tangent ?? own().tangent });

/** The straight stretch that a smooth span joins smoothly on one side, if there is one. */
function neighbour(fitted: readonly Fitted[], i: number, side: -1 | 1, closed: boolean): FitLine | undefined {
  const { span } = fitted[i]!;
  if (side < 0 ? span.cornerBefore : span.cornerAfter) return undefined;
  const other = fitted[closed ? (i + side + fitted.length) % fitted.length : i + side];
  const piece = other?.span.straight ? other.pieces[0] : undefined;
  return piece?.kind === 'line' ? piece : undefined;
}

/** Tries one arc between two straight stretches, in place of the smooth span there, and cuts them to it. */
function fillet(points: readonly Point[], fitted: readonly Fitted[], i: number, tolerance: number): void {
  const [one, before, after] = [fitted[i]!, fitted[i - 1], fitted[i + 1]];
  if (one.span.straight || one.span.cornerBefore || one.span.cornerAfter || !before?.span.straight || !after?.span.straight) return;
  const whole = [...secondHalf(points, before.span), ...points.slice(one.span.from + 1, one.span.to), ...firstHalf(points, after.span)];
  const stretch = { curve: points.slice(one.span.from, one.span.to + 1), whole };
  const found = filletBetween(before.pieces[0] as FitLine, stretch, after.pieces[0] as FitLine, tolerance);
  if (found === undefined) return;
  before.pieces = [found.before];
  one.pieces = found.arcs;
  after.pieces = [found.after];
}

/** The points of a straight span from its middle on; a single edge is cut there. */
function secondHalf(points: readonly Point[], { from, to }: Span): Point[] {
  if (to - from === 1) return [lerp(points[from]!, points[to]!, 0.5), points[to]!];
  return points.slice((from + to) >> 1, to + 1);
}

const firstHalf = (points: readonly Point[], { from, to }: Span): Point[] =>
  to - from === 1 ? [points[from]!, lerp(points[from]!, points[to]!, 0.5)] : points.slice(from, ((from + to) >> 1) + 1);

/** Gates by index, each computed once for a window. */
function gateFinder(distinct: readonly Point[], closed: boolean, tolerance: number): (index: number, window: readonly [number, number]) => Gate {
  const count = distinct.length;
  const at = (index: number) => distinct[closed ? ((index % count) + count) % count : index]!;
  const known = new Map<number, Gate>();
  return (index, window) => {
    const gate = known.get(index) ?? gateAt(at, index, window, tolerance);
    known.set(index, gate);
    return gate;
  };
}
