import { distance, type Point } from '../../geometry/index.ts';
import { reachOf } from './act.ts';
import { type Layout, type Meeting, type Passage, waysOf } from './junctions.ts';
import { spotOn } from './lines.ts';

/** A place of a junction nearer than so many of its radii is the junction. */
const AT = 1.25;

/**
 * The junction meant by a place: the one it lies in; else what strokes pass it there without touching, as after they were led past
 * one another; else the nearest one within reach.
 */
export function meetingAt(layout: Layout, place: Point): Meeting | undefined {
  const nearest = nearestMeeting(layout, place);
  if (nearest && distance(nearest.at, place) <= AT * nearest.radius) return nearest;
  return passing(layout, place) ?? (nearest && distance(nearest.at, place) <= reachOf(layout) ? nearest : undefined);
}

/** Places at which strokes were led past one another, as junctions, so that they can be led on otherwise; those that are junctions anyway left out. */
export function ledApart(layout: Layout, places: readonly Point[]): Meeting[] {
  return places.reduce<Meeting[]>((found, place) => {
    const isKnown = [...layout.meetings, ...found].some(({ at, radius }) => distance(at, place) <= AT * radius);
    const meeting = isKnown ? undefined : passing(layout, place);
    return meeting && meeting.ways.length > 2 ? [...found, meeting] : found;
  }, []);
}

const nearestMeeting = ({ meetings }: Layout, place: Point): Meeting | undefined =>
  meetings.reduce<Meeting | undefined>((best, one) => (best && distance(best.at, place) <= distance(one.at, place) ? best : one), undefined);

/** Strokes that pass a place within a width, as a junction there; undefined when only one does. */
export function passing(layout: Layout, at: Point): Meeting | undefined {
  const found = passagesNear(layout, at);
  if (found.length < 2) return undefined;
  const radius = Math.max(...found.map(({ stroke }) => layout.pens[stroke]!));
  const passages = layout.passages.map((list) => [...list]);
  for (const passage of found) passages[passage.stroke] = [...passages[passage.stroke]!.filter(({ from }) => Math.abs(from - passage.from) > radius), passage].sort((a, b) => a.from - b.from);
  const draft = { at, radius, passages: found, contacts: [] };
  return { ...draft, ways: waysOf({ lines: layout, passages }, draft) };
}

/** The nearest place of every run of chords that come within a width. */
function passagesNear({ chords, pens, lengths, strokes }: Layout, at: Point): Passage[] {
  const found: { stroke: number; along: number; away: number; until: number }[] = [];
  for (const chord of chords) {
    const reach = pens[chord.stroke]!;
    const spot = spotOn(chord, footShare(chord.from, chord.to, at));
    const away = distance(spot.at, at);
    if (away > reach) continue;
    const last = found.at(-1);
    const until = chord.along + chord.length;
    if (last?.stroke !== chord.stroke || chord.along > last.until + 1e-9 * reach) found.push({ stroke: chord.stroke, along: spot.along, away, until });
    else found[found.length - 1] = { ...(away < last.away ? { stroke: chord.stroke, along: spot.along, away } : last), until };
  }
  return found.map(({ stroke, along }): Passage => ({ stroke, from: along, to: along })).filter((one, i, all) => i === 0 || !isSame(one, all.find(({ stroke }) => stroke === one.stroke)!));

  /** A run over a closed stroke's start is found twice. */
  function isSame(one: Passage, first: Passage): boolean {
    return one !== first && strokes[one.stroke]!.path.closed && one.from - first.from > lengths[one.stroke]! - 2 * pens[one.stroke]!;
  }
}

function footShare(from: Point, to: Point, at: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const squared = dx * dx + dy * dy;
  return squared === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - from.x) * dx + (at.y - from.y) * dy) / squared));
}
