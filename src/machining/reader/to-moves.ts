import { type Point3 } from '../../geometry/point.ts';
import { type Move } from '../job/pass.ts';
import { arcSweep, chordCount, pointOnArc, type ArcMove } from '../job/moves.ts';
import { PLANE_AXES } from './plane.ts';
import { type ReadMove } from './types.ts';

/** The moves of a program that was read, as plans hold them, from PROGRAM_START. Arcs that stand upright become lines within `tolerance` mm. */
export const movesOf = (moves: readonly ReadMove[], tolerance: number): Move[] => moves.flatMap((move) => moveOf(move, tolerance));

function moveOf(move: ReadMove, tolerance: number): Move[] {
  if (move.kind === 'rapid') return [{ kind: 'rapid', to: move.to }];
  if (move.kind === 'line') return [{ kind: 'line', to: move.to, feed: move.feed }];
  const { to, centre, clockwise, feed } = move;
  return move.plane === 'XY'
    ? [{ kind: 'arc', to, centre: { x: centre.x, y: centre.y }, clockwise, feed }]
    : uprightLines(move, tolerance);
}

const NAMES = ['x', 'y', 'z'] as const;

function uprightLines(move: ReadMove & { kind: 'arc' }, tolerance: number): Move[] {
  const { first, second, normal } = PLANE_AXES[move.plane];
  const flat = (p: Point3): Point3 => ({ x: p[NAMES[first]], y: p[NAMES[second]], z: p[NAMES[normal]] });
  const upright = (p: Point3): Point3 => {
    const values = { x: 0, y: 0, z: 0 };
    values[NAMES[first]] = p.x;
    values[NAMES[second]] = p.y;
    values[NAMES[normal]] = p.z;
    return values;
  };
  const from = flat(move.from);
  const arc: ArcMove = { kind: 'arc', to: flat(move.to), centre: flat(move.centre), clockwise: move.clockwise, feed: move.feed };
  const count = chordCount(Math.hypot(from.x - arc.centre.x, from.y - arc.centre.y), arcSweep(from, arc), tolerance);
  return Array.from({ length: count }, (_, k): Move => ({ kind: 'line', to: upright(pointOnArc(from, arc, (k + 1) / count)), feed: move.feed }));
}
