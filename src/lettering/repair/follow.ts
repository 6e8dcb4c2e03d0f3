import type { Stroke } from '../../artwork/artwork.ts';
import { distance, type Point } from '../../geometry/index.ts';
import { type Layout, layOut, tipsIn } from './junctions.ts';
import { nearestSpot } from './lines.ts';
import { broughtTo } from './move.ts';
import { type Tip, tipsOf } from './tips.ts';

/** An end that lost its joint goes to the nearest stroke no farther off than so many widths. */
const REACH = 1.5;

/** A gap that grew by more than this share of the width is closed again. */
const GROWN = 0.001;

/** The layout of changed strokes, in which ends that lay on something, and lie where they lay but not on it now, are brought to what is nearest. */
export function laidAgain(before: Layout, strokes: readonly Stroke[]): Layout {
  const after = layOut(strokes, before.frame);
  const tipped = new Set(before.meetings.flatMap(({ passages }) => passages.flatMap((passage) => tipsIn(before, passage))));
  const joints = new Map(tipsOf(before).filter(({ stroke, end }) => tipped.has(`${stroke} ${end}`)).map((tip) => [nameOf(tip.at), gapAt(before, tip)?.gap ?? Infinity]));
  let made = [...strokes];
  for (const tip of tipsOf(after)) {
    const gap = joints.get(nameOf(tip.at));
    const now = gap === undefined ? undefined : gapAt(after, tip);
    if (now && now.gap > gap! + GROWN * after.pen) made = made.map((stroke, i) => (i === tip.stroke ? broughtTo(layOut(made, before.frame), i, tip.end, now.at) : stroke));
  }
  return made.every((stroke, i) => stroke === strokes[i]) ? after : layOut(made, before.frame);
}

const nameOf = ({ x, y }: Point) => `${x} ${y}`;

/** The nearest place of another stroke, or of the same one far along it, and how far it is; undefined when there is none in reach. */
function gapAt(layout: Layout, { stroke, end, at }: Tip): { readonly at: Point; readonly gap: number } | undefined {
  const along = end === 0 ? 0 : layout.lengths[stroke]!;
  const reach = REACH * layout.pens[stroke]!;
  const near = nearestSpot(layout, at, reach, (chord) => chord.stroke !== stroke || Math.min(Math.abs(chord.along - along), Math.abs(chord.along + chord.length - along)) > 2 * reach);
  return near && { at: near.at, gap: distance(near.at, at) };
}
