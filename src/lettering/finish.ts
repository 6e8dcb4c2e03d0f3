import type { Doubt, WidthAt } from '../artwork/artwork.ts';
import { makeRegionIndex, type Path, pathLength, type Point, type Region } from '../geometry/index.ts';
import type { Course, CourseEnd } from './course.ts';
import type { Shore } from './crotch.ts';
import { finishEnd, type Ground } from './ends.ts';
import { fitCubics } from './fit-cubics.ts';
import { meet, type Partner, partnerOf } from './joins.ts';
import type { Knot } from './junctions.ts';
import { CLEAR } from './pairing.ts';
import type { Settled } from './settle.ts';
import { type TightBend, tightBends } from './tight.ts';
import type { Junction, StrokeEnd, TracedStroke } from './types.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;

const sure = ({ matching }: Knot): number => Math.min(1, Math.max(0, matching.margin / CLEAR));

/** A junction as the result tells it. */
export const junctionOf = (knot: Knot): Junction => ({
  at: knot.at, radius: knot.radius, arms: knot.views.map(({ direction }) => degrees(direction)), pairs: knot.matching.pairs, confidence: sure(knot),
});

/** What the last steps work on: the settled lines of all courses of one part. */
export interface Draft {
  readonly region: Region;
  readonly shore: Shore;
  readonly courses: readonly Course[];
  readonly lines: readonly (readonly Settled[])[];
  readonly knots: readonly Knot[];
  readonly tolerance: number;
}

/** A line with one end done. */
interface Ended {
  readonly line: readonly Settled[];
  readonly end: StrokeEnd;
  readonly doubts: readonly Doubt[];
}

/** For each junction the strokes that run through it. */
type Through = ReadonlyMap<number, readonly Partner[]>;

function strokesThrough({ courses, lines }: Draft): Through {
  const through = new Map<number, Partner[]>();
  courses.forEach(({ knots, closed }, stroke) => {
    const partner = partnerOf(stroke, lines[stroke]!, closed);
    for (const knot of new Set(knots)) through.set(knot, [...(through.get(knot) ?? []), partner]);
  });
  return through;
}

/** Brings free ends to the outline and lone ends to their partners, and fits curves. */
export function finishStrokes(draft: Draft): TracedStroke[] {
  const [ground, through]: [Ground, Through] = [{ index: makeRegionIndex(draft.region), shore: draft.shore }, strokesThrough(draft)];
  return draft.courses.map((course, stroke) => {
    const line = draft.lines[stroke]!;
    if (course.closed) {
      const end: StrokeEnd = { kind: 'joins', stroke, at: { x: line[0]!.x, y: line[0]!.y } };
      return strokeOf(draft, course, line, [end, end], []);
    }
    const last = ended(draft, ground, through, stroke, course.ends[1], line);
    const first = ended(draft, ground, through, stroke, course.ends[0], turned(last.line));
    return strokeOf(draft, course, turned(first.line), [first.end, last.end], [...first.doubts, ...last.doubts]);
  });
}

/** The same line the other way: left becomes right. */
const turned = (line: readonly Settled[]): Settled[] => line.map((place) => ({ ...place, left: place.right, right: place.left })).reverse();

function ended(draft: Draft, ground: Ground, through: Through, stroke: number, end: CourseEnd, line: readonly Settled[]): Ended {
  if (end.kind === 'free') return { line: line.length > 3 ? finishEnd(ground, line).line : line, end: { kind: 'free' }, doubts: [] };
  const knot = draft.knots[end.knot]!;
  const met = meet(line, end.followed + 2 * knot.radius, through.get(end.knot) ?? [], knot.meeting);
  const doubts = doubtsAt(knot);
  if ('stroke' in met) return { line: met.line, end: { kind: 'joins', stroke: met.stroke, at: met.at }, doubts };
  const other = broadestLone(draft, end.knot, stroke);
  const { x, y } = met.line.at(-1)!;
  return { line: met.line, end: other === undefined ? { kind: 'free' } : { kind: 'joins', stroke: other, at: { x, y } }, doubts };
}

/** Where no stroke runs through a junction: the broadest of the others that end there. */
function broadestLone({ courses, lines }: Draft, knot: number, own: number): number | undefined {
  const others = courses.flatMap(({ ends }, stroke) => (stroke === own ? [] : ends.flatMap((end, k) => (end.kind === 'lone' && end.knot === knot ? [{ stroke, half: lines[stroke]!.at(-k)!.half }] : []))));
  return others.length === 0 ? undefined : others.reduce((a, b) => (b.half > a.half ? b : a)).stroke;
}

/** Below this confidence a junction is worth a look. */
const DOUBTFUL = 0.5;

const doubtsAt = (knot: Knot): Doubt[] =>
  (sure(knot) >= DOUBTFUL ? [] : [{ at: knot.at, says: 'here the strokes could also run on in another way. Look at which ones run through: if a pen would have gone otherwise, repair it with “Lead on” from one arm to the other' }]);

function strokeOf(draft: Draft, course: Course, line: readonly Settled[], ends: readonly [StrokeEnd, StrokeEnd], more: readonly Doubt[]): TracedStroke {
  const path: Path = fitCubics(line.map(({ x, y }): Point => ({ x, y })), course.closed, draft.tolerance);
  const lone = course.ends.flatMap((end) => (end.kind === 'lone' ? [end.knot] : []));
  const knots = [...new Set([...course.knots, ...lone])].map((k) => draft.knots[k]!);
  const through = course.knots.flatMap((k) => doubtsAt(draft.knots[k]!));
  const widths = widthsOf(line, path, course.closed);
  return { path, widths, ends, confidence: Math.min(1, ...knots.map(sure)), doubts: [...through, ...more, ...tightBends(path, widths).map(tightDoubt)] };
}

const tightDoubt = ({ at, radius, width }: TightBend): Doubt => ({
  at, says: `the line bends too tightly here for a groove as wide as the lettering: it bends to a radius of ${(radius / width).toFixed(2)} of that width, and under a half the groove overlaps itself. Choose a narrower groove, or widen the bend with “Move”`,
});

/** Widths by length along the fitted path: the line's own lengths, brought to the path's. A closed one comes back to its first. */
function widthsOf(places: readonly Settled[], path: Path, closed: boolean): WidthAt[] {
  const line = closed ? [...places, places[0]!] : places;
  let along = 0;
  const widths = line.map(({ x, y, half }, i) => {
    if (i > 0) along += Math.hypot(x - line[i - 1]!.x, y - line[i - 1]!.y);
    return { along, width: 2 * half };
  });
  const stretch = along > 0 ? pathLength(path) / along : 1;
  return widths.map((one) => ({ ...one, along: one.along * stretch }));
}
