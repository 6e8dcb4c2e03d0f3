import { type Piece, pieceAt } from '../path.ts';
import type { Shape } from '../shapes.ts';
import type { Point } from '../view.ts';

/** Chords that stand for a cubic; fine enough to walk along a letter. */
const CHORDS = 24;

/** A shape's lines as points, with the way from the first to each, mm. */
export interface Track {
  readonly points: readonly Point[];
  readonly ways: readonly number[];
  readonly length: number;
}

const tracks = new WeakMap<Shape, Track>();

/** The first line of a shape as points to walk along; remembered for as long as the shape is. */
export function trackOf(shape: Shape): Track {
  const known = tracks.get(shape);
  if (known) return known;
  const pieces = shape.chains[0]?.pieces ?? [];
  const points = pieces.length === 0 ? [] : [pieces[0]!.from, ...pieces.flatMap(chords)];
  const ways: number[] = [];
  points.forEach(({ x, y }, i) => {
    const before = points[i - 1];
    ways.push(before === undefined ? 0 : ways[i - 1]! + Math.hypot(x - before.x, y - before.y));
  });
  const track = { points, ways, length: ways.at(-1) ?? 0 };
  tracks.set(shape, track);
  return track;
}

function chords(piece: Piece): Point[] {
  const count = piece.controls ? CHORDS : 1;
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? piece.to : pieceAt(piece, (i + 1) / count)));
}

/** The place so many mm along, no farther than the ends; undefined where there is no line. */
export function placeAlong({ points, ways, length }: Track, along: number): Point | undefined {
  const at = Math.min(length, Math.max(0, along));
  const after = Math.max(1, ways.findIndex((way) => way >= at));
  const [from, to] = [points[after - 1], points[after]];
  if (from === undefined || to === undefined) return points[0];
  const chord = ways[after]! - ways[after - 1]!;
  const share = chord > 0 ? (at - ways[after - 1]!) / chord : 0;
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** How far along a line a place on it lies, mm. */
export function wayTo({ points, ways }: Track, at: Point): number {
  let [best, least] = [0, Infinity];
  points.slice(1).forEach((to, i) => {
    const from = points[i]!;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const square = dx * dx + dy * dy;
    const share = square > 0 ? Math.min(1, Math.max(0, ((at.x - from.x) * dx + (at.y - from.y) * dy) / square)) : 0;
    const far = Math.hypot(from.x + dx * share - at.x, from.y + dy * share - at.y);
    if (far < least) [best, least] = [ways[i]! + share * Math.sqrt(square), far];
  });
  return best;
}
