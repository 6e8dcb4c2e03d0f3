import { type Point, type Point3 } from '../geometry/point.ts';
import { type Heights, type Move, type Pass } from './pass.ts';
import { PROGRAM_START } from './moves.ts';

/** A pass with the rapids that lead to it and up from it. */
export interface LinkedPass {
  readonly name: string;
  readonly moves: readonly Move[];
}

const rapid = (to: Point3): Move => ({ kind: 'rapid', to });
const above = ({ x, y }: Point, z: number): Point3 => ({ x, y, z });
const sameColumn = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

/** Straight up where the next pass starts above the end of this one; else up to clearance, across, and down to retract. */
function approach(from: Point3, start: Point3, clearance: number): Move[] {
  if (sameColumn(from, start) && from.z <= start.z) return from.z === start.z ? [] : [rapid(start)];
  const across = sameColumn(from, start) ? [] : [rapid(above(start, clearance))];
  const lift = from.z === clearance ? [] : [rapid(above(from, clearance))];
  return [...lift, ...across, ...(start.z === clearance ? [] : [rapid(start)])];
}

/**
 * The passes of one program in their order, each with the rapids before it. The first move of all lifts the cutter
 * from PROGRAM_START to clearance; the last one lifts it there again, or brings it to `park` at that height.
 * Rapids across the sheet run only at clearance height; no passes give no moves.
 */
export function linkEach(passes: readonly Pass[], heights: Heights, park?: Point): LinkedPass[] {
  let at = above(PROGRAM_START, heights.clearance);
  const linked = passes.map((pass, index): LinkedPass => {
    const before = [...(index === 0 ? [rapid(at)] : []), ...approach(at, pass.start, heights.clearance)];
    at = pass.moves[pass.moves.length - 1]?.to ?? pass.start;
    return { name: pass.name, moves: [...before, ...pass.moves] };
  });
  const last = linked.pop();
  if (last === undefined) return [];
  const lift = at.z === heights.clearance ? [] : [rapid(above(at, heights.clearance))];
  const home = park === undefined || sameColumn(park, at) ? [] : [rapid(above(park, heights.clearance))];
  return [...linked, { name: last.name, moves: [...last.moves, ...lift, ...home] }];
}

/** The moves of `linkEach` in one list: all that one program does, from PROGRAM_START. */
export const linkPasses = (passes: readonly Pass[], heights: Heights, park?: Point): Move[] =>
  linkEach(passes, heights, park).flatMap(({ moves }) => moves);
