import type { Stroke } from '../../artwork/artwork.ts';
import { type Path, pathEnd, type Point } from '../../geometry/index.ts';
import { type Contact, contactsOf, groupsWithin, TOUCH } from './contacts.ts';
import { frameOf } from './frame.ts';
import type { Arm, Frame, JunctionMap } from './junction-map.ts';
import { layLines, type Lines, spotOn } from './lines.ts';

/** A stroke's way through a junction: from one length along it to another, which may be the same. On a closed stroke `to` may lie beyond its length. */
export interface Passage {
  readonly stroke: number;
  readonly from: number;
  readonly to: number;
}

/** A way out of a junction: a passage's stroke against its direction (-1) or along it (1). */
export interface Way extends Arm {
  readonly passage: number;
  readonly side: -1 | 1;
  /** Length along the stroke to the next junction, or its end, mm. */
  readonly room: number;
}

export interface Meeting {
  readonly at: Point;
  readonly radius: number;
  readonly passages: readonly Passage[];
  readonly ways: readonly Way[];
  readonly contacts: readonly Contact[];
}

/** Strokes laid out, with the places where they meet. */
export interface Layout extends Lines {
  readonly meetings: readonly Meeting[];
  /** All passages of each stroke, in its direction. */
  readonly passages: readonly (readonly Passage[])[];
}

/** Contacts within this many widths are one junction; its radius is one width. */
const MERGE = 0.5;

/** A stroke's places in a junction, nearer along it than so many widths, are one passage. */
const PASSAGE = 1.5;

/** Lays out strokes and finds where they meet. */
export function layOut(strokes: readonly Stroke[], frame: Frame): Layout {
  const lines = layLines(strokes, frame);
  const widest = ({ spots: [a, b] }: Contact) => Math.max(lines.pens[a.stroke]!, lines.pens[b.stroke]!);
  const drafts = groupsWithin(contactsOf(lines), (contact) => MERGE * widest(contact)).flatMap((contacts) => {
    const radius = contacts.reduce((most, contact) => Math.max(most, widest(contact)), 0);
    const passages = passagesOf(lines, contacts);
    return passages.length < 2 ? [] : [{ at: centre(contacts), radius, passages, contacts }];
  });
  const passages: Passage[][] = strokes.map(() => []);
  for (const draft of drafts) for (const passage of draft.passages) passages[passage.stroke]!.push(passage);
  for (const list of passages) list.sort((a, b) => a.from - b.from);
  const meetings = drafts.map((draft): Meeting => ({ ...draft, ways: waysOf({ lines, passages }, draft) }));
  return { ...lines, meetings: meetings.sort((a, b) => a.at.x - b.at.x || a.at.y - b.at.y), passages };
}

/** What gestures take hold of, in strokes of which edits' places are counted from `frame`: their own unless given. */
export const junctionsOf = (strokes: readonly Stroke[], frame = frameOf(strokes)): JunctionMap => mapOf(layOut(strokes, frame));

/** The map of a layout; `more` are places that are taken for junctions although nothing touches there. */
export function mapOf(layout: Layout, more: readonly Meeting[] = []): JunctionMap {
  const tipped = new Set(layout.meetings.flatMap(({ passages }) => passages.flatMap((passage) => tipsIn(layout, passage))));
  const ends = layout.strokes.flatMap(({ path }, stroke) => (path.closed || layout.lengths[stroke] === 0 ? []
    : ([[0, path.start], [1, pathEnd(path)]] as const).filter(([end]) => !tipped.has(`${stroke} ${end}`)).map(([, at]) => ({ stroke, at }))));
  const junctions = [...layout.meetings, ...more].map(({ at, radius, ways }) => ({ at, radius, arms: ways.map(({ stroke, at: place }): Arm => ({ stroke, at: place })), pairs: pairsOf(ways) }));
  return { frame: layout.frame, junctions, ends };
}

/** Ends of its stroke that a passage takes in. */
export function tipsIn({ strokes, lengths }: Lines, { stroke, from, to }: Passage): string[] {
  if (strokes[stroke]!.path.closed) return [];
  return [...(from <= 0 ? [`${stroke} 0`] : []), ...(to >= lengths[stroke]! ? [`${stroke} 1`] : [])];
}

function pairsOf(ways: readonly Way[]): (readonly [number, number])[] {
  return ways.flatMap(({ passage }, i) => {
    const mate = ways.findIndex((other, k) => k > i && other.passage === passage);
    return mate < 0 ? [] : [[i, mate] as const];
  });
}

function centre(contacts: readonly Contact[]): Point {
  const total = contacts.reduce((sum, { at }) => ({ x: sum.x + at.x, y: sum.y + at.y }), { x: 0, y: 0 });
  return { x: total.x / contacts.length, y: total.y / contacts.length };
}

function passagesOf(lines: Lines, contacts: readonly Contact[]): Passage[] {
  const places = new Map<number, number[]>();
  for (const { spots } of contacts) for (const { stroke, along } of spots) places.set(stroke, [...(places.get(stroke) ?? []), along]);
  return [...places].sort(([a], [b]) => a - b).flatMap(([stroke, alongs]) => runs(lines, stroke, alongs.sort((a, b) => a - b)));
}

/** Places along a stroke in runs without a long gap; on a closed stroke the last run may go on past its start. */
function runs({ strokes, lengths, pens }: Lines, stroke: number, alongs: readonly number[]): Passage[] {
  const gap = PASSAGE * pens[stroke]!;
  const found: Passage[] = [];
  for (const along of alongs) {
    const last = found.at(-1);
    if (last && along - last.to <= gap) found[found.length - 1] = { ...last, to: along };
    else found.push({ stroke, from: along, to: along });
  }
  const [first, last] = [found[0]!, found.at(-1)!];
  if (!strokes[stroke]!.path.closed || found.length < 2 || first.from + lengths[stroke]! - last.to > gap) return found;
  return [...found.slice(1, -1), { stroke, from: last.from, to: first.to + lengths[stroke]! }];
}

/** Strokes laid out, with all passages of each in its direction. */
export interface Drafts {
  readonly lines: Lines;
  readonly passages: readonly (readonly Passage[])[];
}

/** A junction's ways out, counter-clockwise from the one to the right. */
export function waysOf(drafts: Drafts, { at, radius, passages }: Pick<Meeting, 'at' | 'radius' | 'passages'>): Way[] {
  const ways = passages.flatMap((one, passage) => ([-1, 1] as const).flatMap((side): Way[] => {
    const room = roomBeside(drafts, one, side);
    if (room <= TOUCH * drafts.lines.pens[one.stroke]! / 4) return [];
    const along = side === 1 ? one.to + Math.min(radius, room / 2) : one.from - Math.min(radius, room / 2);
    return [{ stroke: one.stroke, passage, side, room, at: placeAt(drafts.lines, one.stroke, along) }];
  }));
  const heading = ({ at: place }: Way) => (Math.atan2(place.y - at.y, place.x - at.x) + 2 * Math.PI) % (2 * Math.PI);
  return ways.sort((a, b) => heading(a) - heading(b));
}

/** How far it is along a stroke from a passage to the next one on a side, or to the stroke's end, mm. */
export function roomBeside({ lines: { strokes, lengths }, passages }: Drafts, passage: Passage, side: -1 | 1): number {
  const list = passages[passage.stroke]!;
  const length = lengths[passage.stroke]!;
  const place = list.indexOf(passage);
  const next = list[place + side];
  if (strokes[passage.stroke]!.path.closed) {
    const other = next ?? (side === 1 ? list[0]! : list.at(-1)!);
    const way = side === 1 ? other.from - passage.to : passage.from - other.to;
    return way < 0 || other === passage ? way + length : way;
  }
  if (side === 1) return (next?.from ?? length) - passage.to;
  return passage.from - (next?.to ?? 0);
}

/** The place at a length along a stroke; on a closed one lengths go round, on an open one they stop at its ends. */
export function placeAt({ strokes, chords, lengths, chordsFrom }: Lines, stroke: number, along: number): Point {
  const length = lengths[stroke]!;
  const path: Path = strokes[stroke]!.path;
  const want = path.closed ? ((along % length) + length) % length : Math.min(length, Math.max(0, along));
  let [low, high] = [chordsFrom[stroke]!, chordsFrom[stroke + 1]! - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (chords[middle]!.along <= want) low = middle;
    else high = middle - 1;
  }
  const chord = chords[low];
  return chord ? spotOn(chord, Math.min(1, (want - chord.along) / chord.length)).at : path.start;
}
