import { type FitArc, type FitLine, type FitPiece, pieceEndTangent } from './fit-piece.ts';
import { distance, type Point, type Vector } from './point.ts';
import { distanceToChord } from './simplify.ts';

/** Arcs of more than 2 x 85 degrees or of less than two tolerances' radius are refused: nearest points would not be certain. */
const MOST_HALF_TURN = (85 * Math.PI) / 180;

/**
 * Whether the polyline from index `from` to `to` and the pieces, taken as one smooth chain, stay within `tolerance` of
 * each other, both ways. Each place of the polyline is compared with its nearest place on one piece, passing from a piece
 * to the next where it crosses their common normal. That nearest place moves without jumps from the chain's start to its
 * end, so it meets every place of the chain: a bound one way is a bound both ways.
 */
export function followsPolyline(points: readonly Point[], from: number, to: number, pieces: readonly FitPiece[], tolerance: number): boolean {
  if (!pieces.every((piece) => isMeasurable(piece, tolerance))) return false;
  const tangents = pieces.map(pieceEndTangent);
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  let [index, p] = [0, points[from]!];
  if (distance(p, first.start) > tolerance || distance(points[to]!, last.end) > tolerance) return false;
  for (let i = from + 1; i <= to; i++) {
    const q = points[i]!;
    while (index < pieces.length - 1) {
      const crossing = crossingOf(pieces[index]!.end, tangents[index]!, p, q);
      if (crossing === undefined) break;
      if (!edgeIsNear(pieces[index]!, p, crossing, tolerance)) return false;
      index++;
      p = crossing;
    }
    if (!edgeIsNear(pieces[index]!, p, q, tolerance)) return false;
    p = q;
  }
  return index === pieces.length - 1;
}

const isMeasurable = (piece: FitPiece, tolerance: number) =>
  piece.kind === 'line' || (piece.half <= MOST_HALF_TURN && piece.radius >= 2 * tolerance);

/** Where the edge from `p` to `q` crosses, going forward, the normal at a piece's end; undefined when it stays before it. */
function crossingOf(end: Point, tangent: Vector, p: Point, q: Point): Point | undefined {
  const after = (q.x - end.x) * tangent.x + (q.y - end.y) * tangent.y;
  if (after <= 0) return undefined;
  const before = (p.x - end.x) * tangent.x + (p.y - end.y) * tangent.y;
  if (before >= 0) return p;
  const t = before / (before - after);
  return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
}

/** Whether the straight edge keeps within the tolerance of the piece, when its start `p` is known to. */
function edgeIsNear(piece: FitPiece, p: Point, q: Point, tolerance: number): boolean {
  return piece.kind === 'line' ? isNearLine(piece, q, tolerance) : distanceToArc(piece, q.x, q.y) <= tolerance && footIsNear(piece, p, q, tolerance);
}

const isNearLine = (line: FitLine, q: Point, tolerance: number) => distanceToChord(q, line.start, line.end) <= tolerance;

/** Distance from a point to the arc. */
function distanceToArc(arc: FitArc, x: number, y: number): number {
  const [dx, dy] = [x - arc.centre.x, y - arc.centre.y];
  const radial = Math.sqrt(dx * dx + dy * dy);
  if (dx * arc.middle.x + dy * arc.middle.y >= radial * arc.cosHalf) return Math.abs(radial - arc.radius);
  return Math.min(Math.hypot(x - arc.start.x, y - arc.start.y), Math.hypot(x - arc.end.x, y - arc.end.y));
}

/** Inside the circle an edge strays most where it comes nearest to the centre; outside it, at its ends. */
function footIsNear(arc: FitArc, p: Point, q: Point, tolerance: number): boolean {
  const [ux, uy] = [q.x - p.x, q.y - p.y];
  const along = (arc.centre.x - p.x) * ux + (arc.centre.y - p.y) * uy;
  const size = ux * ux + uy * uy;
  if (along <= 0 || along >= size) return true;
  const t = along / size;
  return distanceToArc(arc, p.x + t * ux, p.y + t * uy) <= tolerance;
}
