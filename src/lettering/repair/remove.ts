import type { Stroke } from '../../artwork/artwork.ts';
import { type Act, reachOf, replaced } from './act.ts';
import type { Layout } from './junctions.ts';
import { nearestSpot } from './lines.ts';
import { pieceOf } from './pieces.ts';

/** Takes away the piece of the nearest stroke between the junctions, or ends, on both sides of the place; without junctions the whole stroke. */
export const remove: Act = (layout, [place]) => {
  const at = place!;
  const near = nearestSpot(layout, at, reachOf(layout));
  if (!near) return { done: false, wanted: 'stroke', at };
  return { done: true, strokes: replaced(layout.strokes, near.stroke, withoutPiece(layout, near.stroke, near.along)), at: [] };
};

/** What is left of a stroke without the piece that holds a place, none of it shorter than nothing. */
function withoutPiece(layout: Layout, stroke: number, along: number): Stroke[] {
  const length = layout.lengths[stroke]!;
  const passages = layout.passages[stroke]!;
  if (layout.strokes[stroke]!.path.closed) {
    const before = passages.findLast(({ to }) => to <= along) ?? passages.at(-1);
    const after = passages.find(({ from }) => from > along) ?? passages[0];
    if (passages.length < 2) return [];
    const [from, to] = [after!.from, before!.to];
    return [pieceOf(layout, stroke, from, to < from ? to + length : to)];
  }
  const before = passages.findLast(({ to }) => to <= along)?.to ?? 0;
  const after = passages.find(({ from }) => from > along || (from === along && from > before))?.from ?? length;
  return [[0, before] as const, [after, length] as const].filter(([from, to]) => to > from).map(([from, to]) => pieceOf(layout, stroke, from, to));
}
