import type { Stroke } from '../../artwork/artwork.ts';
import { distance, lerp, type Point, scale } from '../../geometry/index.ts';
import { type Act, reachOf } from './act.ts';
import type { Layout } from './junctions.ts';
import { nearestSpot } from './lines.ts';
import { cutBack, runsOf, turnBetween } from './link.ts';
import { pieceOf, runStroke } from './pieces.ts';
import { type Tip, tipsNear } from './tips.ts';

/** Of pairs of ends as near as the best but for this share of the width, those whose strokes pass nearest to the places are meant; of these, the one that turns least. */
const ALIKE = 0.01;

/** Makes one stroke of the ends nearest to two places, or closes a stroke whose two ends they are. */
export const join: Act = (layout, [first, second]) => {
  const reach = reachOf(layout);
  const [near, others] = [tipsNear(layout, first!, reach), tipsNear(layout, second!, reach)];
  if (near.length === 0) return { done: false, wanted: 'end', at: first! };
  const pairs = near.flatMap((a) => others.filter((b) => a.stroke !== b.stroke || a.end !== b.end).map((b) => ({ a, b, away: distance(a.at, first!) + distance(b.at, second!) })));
  if (pairs.length === 0) return { done: false, wanted: others.length === 0 ? 'end' : 'second end', at: second! };
  const nearest = leastBy(pairs, ({ away }) => away, ALIKE * layout.pen);
  const meant = leastBy(nearest, ({ a, b }) => offStroke(layout, a, first!) + offStroke(layout, b, second!), ALIKE * layout.pen);
  const [best] = leastBy(meant.map((pair) => ({ ...pair, turned: turnOf(pair, layout.pen) })), ({ turned }) => turned, 0);
  if (!best) return { done: false, wanted: 'end', at: second! };
  return { done: true, strokes: joinedAt(layout, best, best.turned), at: [best.a.at, best.b.at, lerp(best.a.at, best.b.at, 0.5)] };
};

/** All for which a measure is least, or no more than `slack` above that. */
function leastBy<T>(list: readonly T[], measure: (one: T) => number, slack: number): T[] {
  const values = list.map(measure);
  const least = Math.min(...values) + slack;
  return list.filter((_, i) => values[i]! <= least);
}

/** How far a place is from the stroke that an end belongs to, mm. */
function offStroke(layout: Layout, { stroke }: Tip, place: Point): number {
  const near = nearestSpot(layout, place, Infinity, (chord) => chord.stroke === stroke);
  return near ? distance(near.at, place) : 0;
}

interface Pair {
  readonly a: Tip;
  readonly b: Tip;
}

const turnOf = ({ a, b }: Pair, pen: number): number => turnBetween(a.at, a.outwards, b.at, scale(b.outwards, -1), pen);

function joinedAt(layout: Layout, { a, b }: Pair, turned: number): readonly Stroke[] {
  const strokes = [...new Set([a.stroke, b.stroke])].sort((one, other) => one - other);
  const pen = Math.max(...strokes.map((stroke) => layout.pens[stroke]!));
  const cut = cutBack(turned, distance(a.at, b.at), pen);
  const parts = strokes.map((stroke) => {
    const length = layout.lengths[stroke]!;
    const cutAt = (end: 0 | 1) => ([a, b].some((tip) => tip.stroke === stroke && tip.end === end) ? Math.min(cut, length / 3) : 0);
    return { stroke: pieceOf(layout, stroke, cutAt(0), length - cutAt(1)), ends: [`${stroke} 0`, `${stroke} 1`] as const };
  });
  const [run] = runsOf(parts, [[nameOf(a), nameOf(b)]]);
  const made = runStroke(run!, pen);
  return layout.strokes.flatMap((stroke, i) => (i === strokes[0] ? [made] : strokes.includes(i) ? [] : [stroke]));
}

const nameOf = ({ stroke, end }: Tip) => `${stroke} ${end}`;

