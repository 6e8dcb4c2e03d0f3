import { type FitArc, type FitPiece, pieceEndTangent } from './fit-piece.ts';
import { distance, dot, lerp, type Point, subtract } from './point.ts';
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
  let index = 0;
  let p = points[from]!;
  if (distance(p, pieces[0]!.start) > tolerance || distance(points[to]!, pieces.at(-1)!.end) > tolerance) return false;
  for (let i = from + 1; i <= to; i++) {
    const q = points[i]!;
    let start = p;
    while (index < pieces.length - 1) {
      const crossing = crossingOfEnd(pieces[index]!, start, q);
      if (crossing === undefined) break;
      if (distance(crossing, pieces[index]!.end) > tolerance || !edgeIsNear(pieces[index]!, start, crossing, tolerance)) return false;
      index++;
      start = crossing;
    }
    if (!edgeIsNear(pieces[index]!, start, q, tolerance)) return false;
    p = q;
  }
  return index === pieces.length - 1;
}

const isMeasurable = (piece: FitPiece, tolerance: number) =>
  piece.kind === 'line' || (piece.half <= MOST_HALF_TURN && piece.radius >= 2 * tolerance);

/** Where the edge from `p` to `q` crosses the normal at the piece's end, going forward; undefined when it stays before it. */
function crossingOfEnd(piece: FitPiece, p: Point, q: Point): Point | undefined {
  const tangent = pieceEndTangent(piece);
  const after = dot(subtract(q, piece.end), tangent);
  if (after <= 0) return undefined;
  const before = dot(subtract(p, piece.end), tangent);
  return before >= 0 ? p : lerp(p, q, before / (before - after));
}

/** Whether the straight edge keeps within the tolerance of the piece. */
function edgeIsNear(piece: FitPiece, p: Point, q: Point, tolerance: number): boolean {
  if (piece.kind === 'line') return distanceToChord(p, piece.start, piece.end) <= tolerance && distanceToChord(q, piece.start, piece.end) <= tolerance;
  return distanceToArc(piece, p) <= tolerance && distanceToArc(piece, q) <= tolerance && footIsNear(piece, p, q, tolerance);
}

/** Distance from a point to the arc. */
export function distanceToArc(arc: FitArc, p: Point): number {
  const radial = distance(p, arc.centre);
  const inSector = (p.x - arc.centre.x) * arc.middle.x + (p.y - arc.centre.y) * arc.middle.y >= radial * arc.cosHalf;
  return inSector ? Math.abs(radial - arc.radius) : Math.min(distance(p, arc.start), distance(p, arc.end));
}

/** Inside the circle an edge strays most where it comes nearest to the centre; outside it, at its ends. */
function footIsNear(arc: FitArc, p: Point, q: Point, tolerance: number): boolean {
  const edge = subtract(q, p);
  const size = dot(edge, edge);
  const t = size === 0 ? 0 : dot(subtract(arc.centre, p), edge) / size;
  return t <= 0 || t >= 1 || distanceToArc(arc, lerp(p, q, t)) <= tolerance;
}
