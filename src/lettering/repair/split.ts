import { type Act, reachOf, replaced } from './act.ts';
import { nearestSpot } from './lines.ts';
import { pieceOf } from './pieces.ts';

/** A piece shorter than this share of the stroke's width is none: the place is the stroke's end. */
const LEAST = 1e-3;

/** Cuts the nearest stroke at its place nearest to the one given; a closed stroke is opened there. */
export const split: Act = (layout, [place]) => {
  const at = place!;
  const near = nearestSpot(layout, at, reachOf(layout));
  if (!near) return { done: false, wanted: 'stroke', at };
  const { stroke, along } = near;
  const length = layout.lengths[stroke]!;
  if (layout.strokes[stroke]!.path.closed) return { done: true, strokes: replaced(layout.strokes, stroke, [pieceOf(layout, stroke, along, along + length)]), at: [near.at] };
  const least = LEAST * layout.pens[stroke]!;
  if (along < least || along > length - least) return { done: false, wanted: 'place between the ends of a stroke', at };
  return { done: true, strokes: replaced(layout.strokes, stroke, [pieceOf(layout, stroke, 0, along), pieceOf(layout, stroke, along, length)]), at: [near.at] };
};
