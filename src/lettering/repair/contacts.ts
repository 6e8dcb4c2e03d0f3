import { distance, pathEnd, type Point, segmentCrossings } from '../../geometry/index.ts';
import { type Chord, type Lines, nearestSpot, type Spot, spotOn } from './lines.ts';

/** A place where two strokes, or a stroke and itself, cross or touch. */
export interface Contact {
  readonly at: Point;
  readonly spots: readonly [Spot, Spot];
}

/** Ends this near to a stroke, as a share of its width, lie on it. */
export const TOUCH = 0.25;

/** A stroke's own course counts only where it is so many widths away along it. */
const OWN = 1.5;

/** All places where strokes cross one another or themselves, or end on one another. */
export function contactsOf(lines: Lines): Contact[] {
  return [...crossings(lines), ...landings(lines)].sort((a, b) => a.at.x - b.at.x || a.at.y - b.at.y);
}

/** How far apart two places of one stroke are along it; on a closed one the shorter way. */
export function apart({ strokes, lengths }: Lines, stroke: number, a: number, b: number): number {
  const way = Math.abs(a - b);
  return strokes[stroke]!.path.closed ? Math.min(way, lengths[stroke]! - way) : way;
}

function crossings(lines: Lines): Contact[] {
  const { chords, pens } = lines;
  const accepts = (a: number, b: number) => {
    const [one, other] = [chords[a]!, chords[b]!];
    return one.stroke !== other.stroke || apart(lines, one.stroke, one.along + one.length / 2, other.along + other.length / 2) > OWN * pens[one.stroke]!;
  };
  return segmentCrossings(chords, accepts).map(({ a, b, at, alongA, alongB }) =>
    ({ at, spots: [snapped(lines, spotOn(chords[a]!, alongA)), snapped(lines, spotOn(chords[b]!, alongB))] }));
}

function landings(lines: Lines): Contact[] {
  return lines.strokes.flatMap(({ path }, stroke) => {
    const length = lines.lengths[stroke]!;
    if (path.closed || length === 0) return [];
    return [{ stroke, along: 0, at: path.start }, { stroke, along: length, at: pathEnd(path) }].flatMap((tip) => landingsOf(lines, tip));
  });
}

/** Every stroke that passes an end near enough, nearest first. */
function landingsOf(lines: Lines, tip: Spot): Contact[] {
  const found: Contact[] = [];
  const reach = TOUCH * lines.pens[tip.stroke]!;
  const seen = new Set<number>();
  const accepts = ({ stroke, along, length }: Chord) => !seen.has(stroke)
    && (stroke !== tip.stroke || Math.min(apart(lines, stroke, along, tip.along), apart(lines, stroke, along + length, tip.along)) > 2 * OWN * lines.pens[stroke]!);
  for (let near = nearestSpot(lines, tip.at, reach, accepts); near; near = nearestSpot(lines, tip.at, reach, accepts)) {
    seen.add(near.stroke);
    found.push({ at: tip.at, spots: [tip, snapped(lines, near)] });
  }
  return found;
}

/** The end of the stroke where it is so near that what is beyond it is no stroke of its own. */
function snapped({ strokes, lengths, pens }: Lines, spot: Spot): Spot {
  const { path } = strokes[spot.stroke]!;
  const reach = TOUCH * pens[spot.stroke]!;
  const length = lengths[spot.stroke]!;
  if (path.closed || length < 4 * reach) return spot;
  if (spot.along <= reach) return { ...spot, along: 0, at: path.start };
  return spot.along >= length - reach ? { ...spot, along: length, at: pathEnd(path) } : spot;
}

/** Contacts in groups of which every one lies within `reach` of another of its group. They come sorted by x. */
export function groupsWithin(contacts: readonly Contact[], reach: (contact: Contact) => number): Contact[][] {
  const most = contacts.reduce((sum, contact) => Math.max(sum, reach(contact)), 0);
  const group = contacts.map((_, i) => i);
  const rootOf = (i: number): number => (group[i] === i ? i : (group[i] = rootOf(group[i]!)));
  contacts.forEach((contact, i) => {
    for (let k = i + 1; k < contacts.length && contacts[k]!.at.x - contact.at.x <= most; k++) {
      if (distance(contact.at, contacts[k]!.at) <= Math.max(reach(contact), reach(contacts[k]!))) group[rootOf(k)] = rootOf(i);
    }
  });
  const groups = new Map<number, Contact[]>();
  contacts.forEach((contact, i) => groups.set(rootOf(i), [...(groups.get(rootOf(i)) ?? []), contact]));
  return [...groups.values()];
}
