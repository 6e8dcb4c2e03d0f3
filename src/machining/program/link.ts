import { type Point, type Point3 } from '../../geometry/point.ts';
import { type Heights, type Move, type Pass } from '../job/pass.ts';
import { PROGRAM_START } from '../job/moves.ts';

/** A pass with the rapids that lead to it and the one up from it. */
export interface LinkedPass {
  readonly name: string;
  readonly moves: readonly Move[];
}

const rapid = (to: Point3): Move => ({ kind: 'rapid', to });
const above = ({ x, y }: Point, z: number): Point3 => ({ x, y, z });
const sameColumn = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

const rapidUnlessThere = (from: Point3, to: Point3): Move[] =>
  (sameColumn(from, to) && from.z === to.z ? [] : [rapid(to)]);

/** Where the cutter goes when a pass is done: to where the next pass starts if that is in the same column, else straight up to clearance. */
const liftFrom = (end: Point3, next: Pass | undefined, clearance: number): Point3 =>
  (next !== undefined && sameColumn(end, next.start) ? next.start : above(end, clearance));

/**
 * The passes of one program in their order, each with the rapids that lead to it and the one up from it. The first move
 * of all lifts the cutter from PROGRAM_START to clearance; the last one lifts it there again, or brings it to `park` at
 * that height. Rapids across the sheet run only at clearance height; no passes give no moves.
 */
export function linkEach(passes: readonly Pass[], heights: Heights, park?: Point): LinkedPass[] {
  const { clearance } = heights;
  let at = above(PROGRAM_START, clearance);
  return passes.map((pass, index) => {
    const first = index === 0 ? [rapid(at)] : [];
    const across = at.z === clearance ? rapidUnlessThere(at, above(pass.start, clearance)) : [];
    const down = rapidUnlessThere(across[0]?.to ?? at, pass.start);
    const end = pass.moves[pass.moves.length - 1]?.to ?? pass.start;
    const next = passes[index + 1];
    at = liftFrom(end, next, clearance);
    const home = next === undefined && park !== undefined ? rapidUnlessThere(at, above(park, clearance)) : [];
    return { name: pass.name, moves: [...first, ...across, ...down, ...pass.moves, ...rapidUnlessThere(end, at), ...home] };
  });
}

/** The moves of `linkEach` in one list: all that one program does, from PROGRAM_START. */
export const linkPasses = (passes: readonly Pass[], heights: Heights, park?: Point): Move[] =>
  linkEach(passes, heights, park).flatMap(({ moves }) => moves);
