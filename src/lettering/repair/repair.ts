import type { Stroke } from '../../artwork/artwork.ts';
import type { Point } from '../../geometry/index.ts';
import type { Act, Acted } from './act.ts';
import { withoutDoubts } from './doubts.ts';
import { draw } from './draw.ts';
import { laidAgain } from './follow.ts';
import { frameOf, fromFrame } from './frame.ts';
import type { JunctionMap } from './junction-map.ts';
import { join } from './join.ts';
import { type Layout, layOut, mapOf } from './junctions.ts';
import { move } from './move.ts';
import { ledApart } from './near.ts';
import { pair } from './pair.ts';
import { remove } from './remove.ts';
import { split } from './split.ts';

/** One thing done by hand; its places are fractions of the frame of the strokes that come in. */
export interface Repair {
  readonly act: string;
  readonly places: readonly Point[];
}

/** An edit (by its place in the list) that found nothing to act on. */
export interface Missed {
  readonly edit: number;
  readonly act: string;
  /** What it looked for, and near which place, mm. */
  readonly wanted: string;
  readonly at: Point;
}

export interface Repaired {
  readonly strokes: readonly Stroke[];
  readonly junctions: JunctionMap;
  readonly done: number;
  readonly missed: readonly Missed[];
}

const ACTS: Readonly<Record<string, Act>> = { split, join, pair, move, delete: remove, add: draw };

/** Acts that take strokes elsewhere: what ended on them goes along. */
const CARRYING: ReadonlySet<string> = new Set(['join', 'pair']);

/** Does edits one after the other. One that finds nothing does nothing; the others still apply. */
export function repairStrokes(strokes: readonly Stroke[], repairs: readonly Repair[]): Repaired {
  const frame = frameOf(strokes);
  const missed: Missed[] = [];
  const paired: Point[] = [];
  let layout = layOut(strokes, frame);
  for (const [edit, { act, places }] of repairs.entries()) {
    const spots = places.map((place) => fromFrame(frame, place));
    const acted = ACTS[act]?.(layout, spots) ?? { done: false, wanted: 'such an act', at: spots[0] ?? frame.origin };
    if (acted.done) layout = after(layout, act, acted);
    if (acted.done && act === 'pair') paired.push(...acted.at);
    if (!acted.done) missed.push({ edit, act, wanted: acted.wanted, at: acted.at });
  }
  return { strokes: layout.strokes, junctions: mapOf(layout, ledApart(layout, paired)), done: repairs.length - missed.length, missed };
}

function after(layout: Layout, act: string, { strokes, at }: Extract<Acted, { done: true }>): Layout {
  if (strokes === layout.strokes && at.length === 0) return layout;
  const decided = withoutDoubts(strokes, at, layout.pen);
  return CARRYING.has(act) ? laidAgain(layout, decided) : layOut(decided, layout.frame);
}
