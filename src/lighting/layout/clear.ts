import { add, leftNormal, scale } from '../../geometry/index.ts';
import { type Courses, type Stretch, apartAlong, placeAt } from './course.ts';

/** Stretches of a tube's own centre line nearer along it than this many tube widths are no other tube. */
export const OWN = 3;
/** Places are tried at this share of a tube's width, and then found to the finer one. */
const STEP = 1 / 16;
const FINE = 1e-5;
/** What of half a width chords and rounding may hide. */
const HAIR = 2e-3;

/** A place at which one tube could end, and the other centre lines it must be clear of there. */
export interface Asking {
  readonly courses: Courses;
  readonly stroke: number;
  /** Width of both tubes, mm. */
  readonly width: number;
  readonly among: (stretch: Stretch) => boolean;
}

/** Whether a tube cut square at `along` keeps its end out of the others: middle and both corners half a width from their centre lines. */
export function isClear(asking: Asking, along: number): boolean {
  return offOthers(asking, along, [-1, 0, 1]);
}

/** Whether its centre line alone is out of the others' tubes there. */
function isOut(asking: Asking, along: number): boolean {
  return offOthers(asking, along, [0]);
}

function offOthers({ courses, stroke, width, among }: Asking, along: number, sides: readonly number[]): boolean {
  const course = courses.list[stroke]!;
  const { at, ahead } = placeAt(course, along);
  const other = (k: number) => {
    const stretch = courses.stretches[k]!;
    return among(stretch) && (stretch.stroke !== stroke || apartAlong(course, stretch, along) > OWN * width);
  };
  return sides.every((side) => courses.index.nearest(add(at, scale(leftNormal(ahead), (side * width) / 2)), (width / 2) * (1 - HAIR), other) === undefined);
}

/** How far a tube draws back: from where to the first place at which its end is clear, and how much of that lies outside the other tube, in mm. */
export interface Retreat {
  readonly back: number;
  readonly dark: number;
}

/** Walks from `along`, forward or backward, until the tube's end is clear; at most `room` mm, which it takes where it never is. */
export function retreat(asking: Asking, along: number, way: 1 | -1, room: number): Retreat {
  const back = firstWhere((s) => isClear(asking, along + way * s), asking.width, room);
  const out = firstWhere((s) => isOut(asking, along + way * s), asking.width, back);
  return { back, dark: back - out };
}

function firstWhere(holds: (s: number) => boolean, width: number, room: number): number {
  let low = 0;
  if (holds(0)) return 0;
  while (low < room && !holds(Math.min(room, low + STEP * width))) low += STEP * width;
  if (low >= room) return room;
  let high = Math.min(room, low + STEP * width);
  while (high - low > FINE * width) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
