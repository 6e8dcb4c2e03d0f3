import type { Stroke } from '../../artwork/artwork.ts';
import { distance, flattenPath, type Path, type Point, reversePath, scale, segmentCrossings, subtract } from '../../geometry/index.ts';
import { type Act, reachOf } from './act.ts';
import { type Layout, type Meeting, type Passage, placeAt, type Way } from './junctions.ts';
import { linkOf, type Part, runsOf, turn } from './link.ts';
import { meetingAt } from './near.ts';
import { pieceOf, runStroke } from './pieces.ts';

/** Two arms left over become one stroke unless that would turn by so much more than the new stroke does, radians: at a crossing it is alike. */
const MORE_TURN = Math.PI / 4;

/** An arm's end is looked at over this share of its width. */
const LAST = 0.05;

/** How finely the course of an arm is looked at where it may meet the new stroke. */
const STEPS = 128;

/** How much of an arm without other junctions before its end a link may take the place of. */
const MOST_OF_ARM = 0.5;

/** Makes one stroke of two arms of a junction. What they were one stroke with goes on together too where both were; else it ends on the new stroke. */
export const pair: Act = (layout, [place, first, second]) => {
  const meeting = meetingAt(layout, place!);
  if (!meeting) return { done: false, wanted: 'junction', at: place! };
  const arms = armsAt(layout, meeting, first!, second!);
  if (!arms) return { done: false, wanted: 'two arms of the junction', at: first! };
  const at = [meeting.at];
  if (arms[0].passage === arms[1].passage) return { done: true, strokes: layout.strokes, at };
  return { done: true, strokes: paired(layout, meeting, arms), at };
};

/** The two different arms whose places together are nearest to two places, both within reach. */
function armsAt(layout: Layout, { ways, radius }: Meeting, first: Point, second: Point): readonly [Way, Way] | undefined {
  const reach = radius + reachOf(layout);
  const away = (way: Way, place: Point) => distance(way.at, place);
  const pairs = ways.flatMap((a) => ways.filter((b) => b !== a && away(a, first) <= reach && away(b, second) <= reach).map((b) => [a, b] as const));
  return pairs.reduce<readonly [Way, Way] | undefined>((best, one) =>
    (best && away(best[0], first) + away(best[1], second) <= away(one[0], first) + away(one[1], second) ? best : one), undefined);
}

/** An arm as it is used: its stroke, from which length along it, and in which direction it leaves. */
interface Arm {
  readonly way: Way;
  readonly passage: Passage;
  /** Where it has left the junction's disc. */
  readonly exit: number;
}

function paired(layout: Layout, meeting: Meeting, [a, b]: readonly [Way, Way]): readonly Stroke[] {
  const opposite = (way: Way) => meeting.ways.find((other) => other !== way && other.passage === way.passage);
  const armOf = (way: Way): Arm => ({ way, passage: meeting.passages[way.passage]!, exit: exitOf(layout, meeting, way) });
  const taken = [armOf(a), armOf(b)] as const;
  const left = [opposite(a), opposite(b)].flatMap((way) => (way ? [armOf(way)] : []));
  const towardsExit = ({ way, exit }: Arm) => subtract(placeAt(layout, way.stroke, exit), meeting.at);
  const turnOf = (one: Arm, other: Arm) => turn(scale(towardsExit(one), -1), towardsExit(other));
  const goOn = left.length === 2 && turnOf(left[0]!, left[1]!) <= turnOf(...taken) + MORE_TURN;
  const arms: Placed[] = [...taken, ...left].map((arm, i) => ({ ...arm, until: i < 2 || goOn ? arm.exit : landingOf(layout, arm, taken, meeting.radius) }));
  const numbers = [...new Set([a.stroke, b.stroke])].sort((one, other) => one - other);
  const parts = numbers.flatMap((stroke) => partsOf(layout, stroke, arms));
  const links = [[nameOf(a), nameOf(b)] as const, ...(goOn ? [[nameOf(left[0]!.way), nameOf(left[1]!.way)] as const] : [])];
  const made = runsOf(parts, links).map((run) => runStroke(run, meeting.radius));
  return layout.strokes.flatMap((stroke, i) => (i === numbers[0] ? made : numbers.includes(i) ? [] : [stroke]));
}

const nameOf = ({ stroke, passage, side }: Way) => `${stroke} ${passage} ${side}`;

/** The length along an arm's stroke at which it has left the junction's disc; never more than half of the way to the next junction or end. */
function exitOf(layout: Layout, { at, radius, passages }: Meeting, { stroke, passage, side, room }: Way): number {
  const from = side === 1 ? passages[passage]!.to : passages[passage]!.from;
  const most = room * MOST_OF_ARM;
  const away = (way: number) => distance(placeAt(layout, stroke, from + side * way), at);
  const steps = 64;
  const inside = Array.from({ length: steps + 1 }, (_, i) => (i / steps) * Math.min(most, 2 * radius)).filter((way) => away(way) < radius).at(-1);
  let [low, high] = [inside ?? 0, Math.min(most, (inside ?? 0) + (2 * radius) / steps)];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (away(middle) < radius) low = middle;
    else high = middle;
  }
  return from + side * high;
}

/** An arm with the length along its stroke up to which it is kept. */
interface Placed extends Arm {
  readonly until: number;
}

/** A stroke in parts, cut where it passes the junction. */
function partsOf(layout: Layout, stroke: number, arms: readonly Placed[]): Part[] {
  const length = layout.lengths[stroke]!;
  const cuts = [...new Set(arms.filter(({ way }) => way.stroke === stroke).map(({ passage }) => passage))].sort((a, b) => a.from - b.from);
  const armAt = (cut: Passage | undefined, side: -1 | 1) => arms.find(({ way, passage }) => passage === cut && way.side === side);
  const { closed } = layout.strokes[stroke]!.path;
  const spans = closed ? cuts.map((cut, i) => [cut, cuts[(i + 1) % cuts.length]] as const) : [undefined, ...cuts].map((cut, i) => [cut, cuts[i]] as const);
  return spans.flatMap(([before, after]): Part[] => {
    const [first, last] = [armAt(before, 1), armAt(after, -1)];
    // A stroke that ends in the junction has nothing beyond it.
    if ((before && !first) || (after && !last)) return [];
    const from = first?.until ?? 0;
    const to = last?.until ?? length;
    const ends = [first ? nameOf(first.way) : `${stroke} start`, last ? nameOf(last.way) : `${stroke} end`] as const;
    return [{ stroke: pieceOf(layout, stroke, from, closed && to <= from ? to + length : to), ends }];
  });
}

/**
 * Up to where an arm left alone goes on, the way it went, to end on the new stroke: to where it meets the link, at the latest to where
 * the arm it was one stroke with leaves the junction, for there the new stroke has taken its way.
 */
function landingOf(layout: Layout, { way, passage, exit }: Arm, taken: readonly [Arm, Arm], pen: number): number {
  const mate = taken.find((arm) => arm.passage === passage)!;
  const link = linkOf(towards(layout, taken[0]), reversePath(towards(layout, taken[1])), pen);
  if (!link) return mate.exit;
  const start = placeAt(layout, taken[0].way.stroke, taken[0].exit);
  const over = flattenPath({ start, segments: [link], closed: false }, pen / 1000);
  const alongs = Array.from({ length: STEPS + 1 }, (_, i) => exit + ((mate.exit - exit) * i) / STEPS);
  const course = chordsOf(alongs.map((along) => placeAt(layout, way.stroke, along)));
  const met = segmentCrossings([...course, ...chordsOf(over)], (i, k) => i < STEPS && k >= STEPS).reduce((least, { a, alongA }) => Math.min(least, a + alongA), STEPS);
  return exit + ((mate.exit - exit) * met) / STEPS;
}

const chordsOf = (points: readonly Point[]) => points.slice(1).map((to, i) => ({ from: points[i]!, to }));

/** The last of an arm, run towards the junction as far as where it leaves its disc. */
function towards(layout: Layout, { way, exit }: Arm): Path {
  const far = exit + way.side * LAST * layout.pens[way.stroke]!;
  const { path } = pieceOf(layout, way.stroke, Math.min(exit, far), Math.max(exit, far));
  return way.side === 1 ? reversePath(path) : path;
}
