import { nearestOnSegment, type Point } from '../../geometry/point.ts';
import type { HoldDown } from '../job/holding.ts';
import { type ArcMove, arcRadius, arcSweep, type PlacedMove, placedMoves } from '../job/moves.ts';
import { placeOf, type SetUp } from '../job/setup.ts';
import { runsOf } from '../proof/seams.ts';

/** For every set-up and hold-down the move that comes nearest: its gap between cutter and disc; negative where it clashes. */
export interface Gap {
  readonly setUp: number;
  readonly holdDown: number;
  readonly mm: number;
  readonly at: Point;
  readonly rapid: boolean;
}

/** Whether a hold-down is there in a set-up. */
export const isThere = ({ setUps }: HoldDown, setUp: number): boolean => setUps === undefined || setUps.includes(setUp);

/**
 * The least gap between the cutter and each hold-down in each set-up, cutting moves and rapids alike; moves that stay above
 * a hold-down's height pass over it.
 */
export function holdDownGaps(setups: readonly SetUp[], holdDowns: readonly HoldDown[]): Gap[] {
  return setups.flatMap((setup, i) => {
    const setUp = placeOf(setup, i);
    const runs = runsOf(setup).map(({ start, moves, cutterDiameter }) => ({ moves: placedMoves(start, moves), radius: cutterDiameter / 2 }));
    return holdDowns.flatMap((holdDown, number): Gap[] => {
      if (!isThere(holdDown, setUp)) return [];
      const gaps = runs.flatMap(({ moves, radius }) => nearestMove(moves, holdDown, radius));
      return gaps.length > 0 ? [{ setUp, holdDown: number, ...gaps.reduce((a, b) => (b.mm < a.mm ? b : a)) }] : [];
    });
  });
}

type MoveGap = Pick<Gap, 'mm' | 'at' | 'rapid'>;

function nearestMove(moves: readonly PlacedMove[], { at, keepOut, height }: HoldDown, radius: number): MoveGap[] {
  let best: MoveGap | undefined;
  moves.forEach(({ from, move }, index) => {
    // The first move only lifts the cutter from where the operator set it.
    if (index === 0 || Math.min(from.z, move.to.z) >= height) return;
    const place = move.kind === 'arc' ? nearestOnArc(from, move, at) : nearestOnSegment(from, move.to, at);
    const mm = Math.hypot(place.x - at.x, place.y - at.y) - keepOut / 2 - radius;
    if (mm < (best?.mm ?? Infinity)) best = { mm, at: place, rapid: move.kind === 'rapid' };
  });
  return best ? [best] : [];
}

function nearestOnArc(from: Point, arc: ArcMove, place: Point): Point {
  const { centre, to, clockwise } = arc;
  const away = Math.hypot(place.x - centre.x, place.y - centre.y);
  const radius = arcRadius(from, arc);
  const ahead = (angle: number) => {
    const turn = (angle - Math.atan2(from.y - centre.y, from.x - centre.x)) * (clockwise ? -1 : 1);
    return ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  };
  if (away > 0 && (ahead(Math.atan2(place.y - centre.y, place.x - centre.x)) * 180) / Math.PI <= arcSweep(from, arc))
    return { x: centre.x + (radius * (place.x - centre.x)) / away, y: centre.y + (radius * (place.y - centre.y)) / away };
  const apart = (end: Point) => Math.hypot(end.x - place.x, end.y - place.y);
  return apart(from) <= apart(to) ? from : to;
}
