import type { Stroke } from '../../artwork/artwork.ts';
import { type Act, reachOf, replaced } from './act.ts';
import { type Layout, placeAt } from './junctions.ts';
import { nearestSpot } from './lines.ts';
import { pieceOf } from './pieces.ts';

/** Takes away the piece of the nearest stroke between the junctions, or ends, on both sides of the place; without junctions the whole stroke. */
export const remove: Act = (layout, [place]) => {
  const at = place!;
  const near = nearestSpot(layout, at, reachOf(layout));
  if (!near) return { done: false, wanted: 'stroke', at };
  const piece = pieceAround(layout, near.stroke, near.along);
  const { closed } = layout.strokes[near.stroke]!.path;
  const ends = piece === undefined ? [] : [piece.from, piece.to].map((along) => placeAt(layout, near.stroke, along));
  return { done: true, strokes: replaced(layout.strokes, near.stroke, restOf(layout, near.stroke, closed, piece)), at: ends };
};

interface Span {
  readonly from: number;
  readonly to: number;
}

/** The piece between passages, or ends, that holds a length along a stroke; undefined when that is all of it. On a closed stroke `to` may lie beyond its length. */
function pieceAround(layout: Layout, stroke: number, along: number): Span | undefined {
  const length = layout.lengths[stroke]!;
  const passages = layout.passages[stroke]!;
  const before = passages.filter(({ to }) => to < along).at(-1);
  const after = passages.find((one) => one.from >= along && one.from > 0 && one !== before);
  if (!layout.strokes[stroke]!.path.closed) return passages.length === 0 ? undefined : { from: before?.to ?? 0, to: after?.from ?? length };
  if (passages.length < 2) return undefined;
  const from = before?.to ?? passages.at(-1)!.to - length;
  const to = after?.from ?? passages[0]!.from + length;
  return { from, to };
}

/** What is left of a stroke without a piece, none of it of no length. */
function restOf(layout: Layout, stroke: number, closed: boolean, piece: Span | undefined): Stroke[] {
  if (!piece) return [];
  const length = layout.lengths[stroke]!;
  if (closed) return [pieceOf(layout, stroke, piece.to, piece.from + length)];
  return [[0, piece.from] as const, [piece.to, length] as const].filter(([from, to]) => to > from).map(([from, to]) => pieceOf(layout, stroke, from, to));
}
