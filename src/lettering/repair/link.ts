import type { Stroke } from '../../artwork/artwork.ts';
import { cross, distance, dot, endTangents, type Path, pathEnd, type Point, type Segment, subtract, type Vector } from '../../geometry/index.ts';
import { bridge } from '../edit/join.ts';

/** Ends that meet nearer than this share of the width, and turn by less than so many radians, go on as they are. */
const ONE_PLACE = 1e-4;
const ONE_WAY = 1e-4;

/** What leads from the end of one path to the start of another with both their directions; nothing where they go on as they are. */
export function linkOf(from: Path, to: Path, pen: number): Segment | undefined {
  const goesOn = distance(pathEnd(from), to.start) <= ONE_PLACE * pen && turn(endTangents(from).last, endTangents(to).first) <= ONE_WAY;
  return goesOn ? undefined : bridge(from, to);
}

/** The angle between two directions, radians. */
export const turn = (u: Vector, v: Vector): number => Math.abs(Math.atan2(cross(u, v), dot(u, v)));

/** All turning from one direction to another by way of the straight line between two places, radians. */
export function turnBetween(from: Point, leaving: Vector, to: Point, arriving: Vector, pen: number): number {
  const across = subtract(to, from);
  return Math.hypot(across.x, across.y) <= ONE_PLACE * pen ? turn(leaving, arriving) : turn(leaving, across) + turn(across, arriving);
}

/** A turn sharper than this, radians, is no longer rounded with the radius of the pen. */
const SHARPEST = 2.2;

/**
 * How much of two ends a link must take the place of so that it bends about as gently as a pen's width: what a round corner
 * takes of its sides, less what the gap gives. Nothing where they go on straight.
 */
export const cutBack = (turned: number, gap: number, pen: number): number => Math.max(0, pen * Math.tan(Math.min(turned, SHARPEST) / 2) - gap / 2);

/** Strokes as parts run one after the other; those whose ends are linked become one. */
export interface Part {
  readonly stroke: Stroke;
  /** Names of its start and of its end. */
  readonly ends: readonly [string, string];
}

export interface Run {
  readonly parts: readonly { readonly part: Part; readonly backwards: boolean }[];
  readonly closed: boolean;
}

/** Which parts follow one another by the links between their ends' names. The first part of each run keeps its direction. */
export function runsOf(parts: readonly Part[], links: readonly (readonly [string, string])[]): Run[] {
  const mates = new Map(links.flatMap(([a, b]) => [[a, b], [b, a]] as const));
  const owners = new Map(parts.flatMap((part) => part.ends.map((end) => [end, part] as const)));
  const seen = new Set<Part>();
  return parts.flatMap((part): Run[] => {
    if (seen.has(part)) return [];
    const ahead = walk(part, 1);
    if (ahead.closed) return [ahead];
    const behind = walk(part, 0).parts.slice(1).map((one) => ({ part: one.part, backwards: !one.backwards })).reverse();
    return [{ parts: [...behind, ...ahead.parts], closed: false }];
  });

  /** From a part out of one of its ends, link after link. */
  function walk(first: Part, out: 0 | 1): Run {
    const found: { part: Part; backwards: boolean }[] = [];
    let [part, leaves] = [first, out];
    for (;;) {
      seen.add(part);
      found.push({ part, backwards: leaves === 0 });
      const next = mates.get(part.ends[leaves]);
      const owner = next === undefined ? undefined : owners.get(next);
      if (next === undefined || owner === undefined) return { parts: found, closed: false };
      const enters = owner.ends[0] === next ? 0 : 1;
      if (owner === first && enters !== out) return { parts: found, closed: true };
      [part, leaves] = [owner, enters === 0 ? 1 : 0];
    }
  }
}
