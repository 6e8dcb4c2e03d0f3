import { type Point, add, distance, dot, leftNormal, scale, segmentCrossings } from '../../geometry/index.ts';
import { OWN, type Retreat, isClear, retreat } from './clear.ts';
import { type Course, type Courses, type Stretch, apartAlong, placeAt } from './course.ts';

/** A part of a centre line where no tube can lie because another one does; lengths along it in mm, from below 0 or to beyond its length on a closed one. */
export interface Gap {
  readonly stroke: number;
  readonly from: number;
  readonly to: number;
  readonly at: Point;
  readonly why: 'meets' | 'crosses';
  /** The stroke that is lit through there. */
  readonly by: number;
  /** Length of it that lies in no tube at all, mm. */
  readonly dark: number;
}

/**
 * Where tubes of one width cannot all lie. An end that comes upon another stroke starts clear of it; of two ends that meet, the shorter
 * stroke's does. Of two strokes that cross, the shorter is cut; of a stroke's two passages through one place the one that is farther from its ends.
 */
export function findGaps(courses: Courses, width: number): Gap[] {
  const ends = courses.list.flatMap((_, stroke) => [endGap(courses, width, stroke, 0), endGap(courses, width, stroke, 1)]).filter((gap) => gap !== undefined);
  return [...ends, ...crossingGaps(courses, width, ends)];
}

function endGap(courses: Courses, width: number, stroke: number, end: 0 | 1): Gap | undefined {
  const course = courses.list[stroke]!;
  if (course.path.closed || course.length === 0) return undefined;
  const along = end * course.length;
  const others = yieldedTo(courses, width, stroke, along);
  if (others.size === 0) return undefined;
  const { back, dark } = retreat({ courses, stroke, width, among: (stretch) => others.has(stretch.stroke) }, along, end === 0 ? 1 : -1, course.length);
  if (back === 0) return undefined;
  const [from, to] = end === 0 ? [0, back] : [along - back, along];
  return { stroke, from, to, at: placeAt(course, along).at, why: 'meets', by: [...others][0]!, dark };
}

/** The strokes, nearest first, whose tubes an end runs into and has to keep clear of. */
function yieldedTo(courses: Courses, width: number, stroke: number, along: number): Set<number> {
  const found = new Set<number>(), seen = new Set<number>();
  const { at, ahead } = placeAt(courses.list[stroke]!, along);
  for (const side of [0, -1, 1]) {
    const corner = add(at, scale(leftNormal(ahead), (side * width) / 2));
    for (;;) {
      const near = courses.index.nearest(corner, width / 2, (k) => !seen.has(courses.stretches[k]!.stroke) && isOther(courses, width, stroke, along, courses.stretches[k]!));
      if (!near) break;
      const stretch = courses.stretches[near.segment]!;
      seen.add(stretch.stroke);
      const place = stretch.along + distance(stretch.from, near.point);
      if (yields(courses, width, { stroke, along }, { stroke: stretch.stroke, along: place })) found.add(stretch.stroke);
    }
  }
  return found;
}

const isOther = ({ list }: Courses, width: number, stroke: number, along: number, other: Stretch): boolean =>
  other.stroke !== stroke || apartAlong(list[stroke]!, other, along) > OWN * width;

interface Along {
  readonly stroke: number;
  readonly along: number;
}

/** An end gives way to what runs through; where another end comes upon it as well, the shorter stroke does, and of equal ones the later. */
function yields({ list }: Courses, width: number, one: Along, other: Along): boolean {
  const [mine, theirs] = [list[one.stroke]!, list[other.stroke]!];
  const meetsEnd = !theirs.path.closed && Math.min(other.along, theirs.length - other.along) < width;
  if (!meetsEnd) return true;
  if (areInLine(mine, one.along, theirs, other.along)) return false;
  if (one.stroke === other.stroke) return one.along > 0;
  return isShorter(mine.length, theirs.length) || (!isShorter(theirs.length, mine.length) && one.stroke > other.stroke);
}

/** Ends that go on in one line, but for a bend of 30 degrees, stand against one another: tubes cut at a slant close the joint. */
const IN_LINE = -Math.cos(Math.PI / 6);

function areInLine(one: Course, alongOne: number, other: Course, alongOther: number): boolean {
  const inward = (course: Course, along: number) => scale(placeAt(course, along).ahead, along < course.length / 2 ? 1 : -1);
  return dot(inward(one, alongOne), inward(other, alongOther)) < IN_LINE;
}

/** Lengths that differ by less than this share are alike: their last digits depend on how the drawing is turned. */
const ALIKE = 1e-6;
const isShorter = (a: number, b: number): boolean => a < b * (1 - ALIKE);

function crossingGaps(courses: Courses, width: number, ends: readonly Gap[]): Gap[] {
  const gaps: Gap[] = [];
  const taken = ({ stroke, along }: Along) => [...ends, ...gaps].some((gap) => gap.stroke === stroke && isWithin(courses, gap, along, width * HAIR));
  for (const [a, b, at] of crossings(courses, width)) {
    if (taken(a) || taken(b)) continue;
    const [cut, through] = cutFirst(courses, a, b) ? [a, b] : [b, a];
    const gap = crossingGap(courses, width, cut, through, at);
    if (gap) gaps.push(gap);
  }
  return gaps;
}

/** A crossing this near to a gap, in tube widths, is the contact that made it. */
const HAIR = 0.01;

function isWithin({ list }: Courses, { stroke, from, to }: Gap, along: number, hair: number): boolean {
  const { length, path } = list[stroke]!;
  return (path.closed ? [along - length, along, along + length] : [along]).some((place) => place >= from - hair && place <= to + hair);
}

function crossings(courses: Courses, width: number): (readonly [Along, Along, Point])[] {
  const { stretches, list } = courses;
  const along = (k: number, share: number): Along => ({ stroke: stretches[k]!.stroke, along: stretches[k]!.along + share * stretches[k]!.length });
  const found = segmentCrossings(stretches, (a, b) => stretches[a]!.stroke !== stretches[b]!.stroke || !followOn(list[stretches[a]!.stroke]!, stretches[a]!, stretches[b]!));
  return found.map(({ a, b, at, alongA, alongB }) => [along(a, alongA), along(b, alongB), at] as const)
    .filter(([a, b]) => a.stroke !== b.stroke || apartAlong(list[a.stroke]!, { along: a.along, length: 0 }, b.along) > OWN * width);
}

/** Stretches one right after the other share a point without crossing. */
const followOn = (course: Course, a: Stretch, b: Stretch): boolean => Math.min(apartAlong(course, a, b.along), apartAlong(course, b, a.along)) === 0;

function cutFirst({ list }: Courses, a: Along, b: Along): boolean {
  const [one, other] = [list[a.stroke]!, list[b.stroke]!];
  if (a.stroke !== b.stroke) return isShorter(one.length, other.length) || (!isShorter(other.length, one.length) && a.stroke > b.stroke);
  const fromEnds = ({ along }: Along) => Math.min(along, one.length - along);
  return fromEnds(a) >= fromEnds(b);
}

/** How much of the stroke that runs through counts, to both sides, in tube widths. */
const PASSAGE = 8;

/** The other passage alone counts: what else comes near there is a contact of its own. */
function crossingGap(courses: Courses, width: number, cut: Along, through: Along, at: Point): Gap | undefined {
  const course = courses.list[cut.stroke]!;
  const other = courses.list[through.stroke]!;
  const among = (stretch: Stretch) => stretch.stroke === through.stroke && apartAlong(other, stretch, through.along) < PASSAGE * width;
  const asking = { courses, stroke: cut.stroke, width, among };
  if (isClear(asking, cut.along)) return undefined;
  const before: Retreat = retreat(asking, cut.along, -1, course.path.closed ? course.length / 2 : cut.along);
  const after: Retreat = retreat(asking, cut.along, 1, course.path.closed ? course.length / 2 : course.length - cut.along);
  return { stroke: cut.stroke, from: cut.along - before.back, to: cut.along + after.back, at, why: 'crosses', by: through.stroke, dark: before.dark + after.dark };
}
