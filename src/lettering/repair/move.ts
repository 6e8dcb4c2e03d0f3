import type { Stroke } from '../../artwork/artwork.ts';
import { add, distance, length as sizeOf, pathLength, type Point, scale, subtract, type Vector } from '../../geometry/index.ts';
import { type Act, reachOf } from './act.ts';
import { bent, type Pull, shareAt } from './bend.ts';
import type { Layout, Passage } from './junctions.ts';
import { nearestSpot, type Spot } from './lines.ts';

/** A place so near to a junction or an end, as a share of the width, means that. */
const AT = 0.5;

/** How far along a stroke bends with a place: so many widths, and so many times the way it is moved. */
const WIDTHS = 3;
const WAYS = 3;

/** Also past the next junction it bends at least so many times the way, so that it does not fold. */
const LEAST_WAYS = 2;

/** Moves the place of a stroke nearest to one place to another one, its neighbourhood bending along. What ends there stays joined. */
export const move: Act = (layout, [from, to]) => {
  const near = nearestSpot(layout, from!, reachOf(layout));
  if (!near) return { done: false, wanted: 'stroke', at: from! };
  if (distance(from!, to!) === 0) return { done: true, strokes: layout.strokes, at: [] };
  return { done: true, strokes: moved(layout, near, to!), at: [near.at] };
};

function moved(layout: Layout, near: Spot, to: Point): readonly Stroke[] {
  const junction = layout.meetings.find(({ at, radius, passages }) => distance(at, near.at) <= AT * radius && passages.some((passage) => isOn(layout, passage, near)));
  const spots = junction ? junction.passages.map((passage): Spot => ({ stroke: passage.stroke, along: middleOf(layout, passage), at: junction.at })) : [atEnd(layout, near)];
  const by = subtract(to, junction ? near.at : spots[0]!.at);
  const pulls = new Map<number, Pull[]>();
  for (const { stroke, along } of spots) pulls.set(stroke, [...(pulls.get(stroke) ?? []), pullOf(layout, stroke, along, sizeOf(by))]);
  return settled(layout, [...pulls].map(([stroke, list]) => ({ stroke, pulls: list, by })));
}

function isOn({ pens }: Layout, { stroke, from, to }: Passage, near: Spot): boolean {
  const slack = AT * pens[stroke]!;
  return stroke === near.stroke && near.along >= from - slack && near.along <= to + slack;
}

/** The middle of a passage; the stroke's end where it ends there. */
function middleOf({ strokes, lengths }: Layout, { stroke, from, to }: Passage): number {
  if (strokes[stroke]!.path.closed) return ((from + to) / 2) % lengths[stroke]!;
  return from <= 0 ? 0 : to >= lengths[stroke]! ? lengths[stroke]! : (from + to) / 2;
}

/** The stroke's end where a place is as good as there. */
function atEnd({ strokes, lengths, pens }: Layout, spot: Spot): Spot {
  const { path } = strokes[spot.stroke]!;
  const [slack, length] = [AT * pens[spot.stroke]!, lengths[spot.stroke]!];
  if (path.closed || length < 4 * slack) return spot;
  if (spot.along <= slack) return { ...spot, along: 0, at: path.start };
  return spot.along >= length - slack ? { ...spot, along: length, at: path.segments.at(-1)!.end } : spot;
}

/** How a stroke bends when its place at a length along it is moved so far, mm. */
export function pullOf(layout: Layout, stroke: number, along: number, way: number): Pull {
  const length = layout.lengths[stroke]!;
  const { closed } = layout.strokes[stroke]!.path;
  const wanted = Math.max(WIDTHS * layout.pens[stroke]!, WAYS * way);
  const reach = (side: -1 | 1) => {
    const { room, fixed } = roomFrom(layout, stroke, along, side);
    const most = Math.min(wanted, room);
    const least = fixed ? most : Math.max(most, LEAST_WAYS * way);
    return closed ? Math.min(least, length / 2) : least;
  };
  if (closed || (along > 0 && along < length)) return { along, back: reach(-1), ahead: reach(1) };
  const inwards = reach(along === 0 ? 1 : -1);
  return inwards >= length ? { along, back: length, ahead: length, even: true } : { along, back: inwards, ahead: inwards };
}

/** How far it is to the next junction or end on a side, mm, and whether the stroke is held there because it ends on another. */
function roomFrom({ strokes, lengths, passages, pens }: Layout, stroke: number, along: number, side: -1 | 1): { readonly room: number; readonly fixed: boolean } {
  const length = lengths[stroke]!;
  const slack = AT * pens[stroke]!;
  const { closed } = strokes[stroke]!.path;
  const ways = passages[stroke]!.flatMap(({ from, to }) => {
    const way = side === 1 ? from - along : along - to;
    const ahead = closed && way <= slack ? way + length : way;
    const fixed = !closed && (side === 1 ? to >= length : from <= 0);
    return ahead > slack ? [{ room: ahead, fixed }] : [];
  });
  const end = { room: closed ? Infinity : side === 1 ? length - along : along, fixed: false };
  return ways.reduce((least, one) => (one.room < least.room || (one.fixed && one.room <= least.room) ? one : least), end);
}

/** A stroke's part in a movement. */
interface Movement {
  readonly stroke: number;
  readonly pulls: readonly Pull[];
  readonly by: Vector;
}

/** The strokes after movements and all that follow from them: an end that lies on a moved stroke, or on a moved end, goes along. */
function settled(layout: Layout, first: readonly Movement[]): readonly Stroke[] {
  const movements = [...first];
  const handled = new Set<string>();
  for (let found = followers(layout, movements, handled); found.length > 0; found = followers(layout, movements, handled)) movements.push(...found);
  return movements.reduce<readonly Stroke[]>((strokes, movement) => strokes.map((stroke, i) => (i === movement.stroke ? bent(stroke, fresh(layout, stroke, movement), movement.by) : stroke)), layout.strokes);

  /** A stroke bent before has another length: what pulls at its end still does. */
  function fresh({ lengths }: Layout, stroke: Stroke, { stroke: number, pulls }: Movement): readonly Pull[] {
    if (stroke === layout.strokes[number]) return pulls;
    return pulls.map((pull) => (pull.along === lengths[number] ? { ...pull, along: lengthOf(stroke) } : pull));
  }
}

const lengthOf = ({ path }: Stroke) => pathLength(path);

/** Ends not handled yet whose joint has moved away from them. */
function followers(layout: Layout, movements: readonly Movement[], handled: Set<string>): Movement[] {
  const found: Movement[] = [];
  for (const { spots: [a, b] } of layout.meetings.flatMap(({ contacts }) => contacts)) {
    for (const [tip, other] of [[a, b], [b, a]] as const) {
      const name = `${tip.stroke} ${tip.along}`;
      if (!isTip(layout, tip) || handled.has(name)) continue;
      const [goal, own] = [shiftOf(layout, movements, other), shiftOf(layout, movements, tip)];
      // Of two ends the one that moves leads.
      if (isTip(layout, other) && sizeOf(own) >= sizeOf(goal)) continue;
      const by = subtract(goal, own);
      if (sizeOf(by) <= 1e-9 * layout.frame.size) continue;
      handled.add(name);
      found.push({ stroke: tip.stroke, pulls: [pullOf(layout, tip.stroke, tip.along, sizeOf(by))], by });
    }
  }
  return found;
}

const isTip = ({ strokes, lengths }: Layout, { stroke, along }: Spot) => !strokes[stroke]!.path.closed && (along === 0 || along === lengths[stroke]!);

/** How far a place of a stroke is shifted by all movements. */
function shiftOf({ lengths, strokes }: Layout, movements: readonly Movement[], { stroke, along }: Spot): Vector {
  const round = { length: lengths[stroke]!, closed: strokes[stroke]!.path.closed };
  return movements.filter((one) => one.stroke === stroke).reduce<Vector>((sum, { pulls, by }) => add(sum, scale(by, shareAt(pulls, along, round).value)), { x: 0, y: 0 });
}

/** Brings one end of a stroke to a place, the stroke bending along as when it is moved there by hand. */
export function broughtTo(layout: Layout, stroke: number, end: 0 | 1, at: Point): Stroke {
  const { path } = layout.strokes[stroke]!;
  const along = end === 0 ? 0 : layout.lengths[stroke]!;
  const by = subtract(at, end === 0 ? path.start : path.segments.at(-1)!.end);
  return bent(layout.strokes[stroke]!, [pullOf(layout, stroke, along, sizeOf(by))], by);
}
