import { boxHolds, growBox, makeRegionIndex, type Point } from '../../geometry/index.ts';
import { holeEnds } from '../job/hole.ts';
import type { Dowel } from '../job/registration.ts';
import { signedDistance } from '../measure/signed-distance.ts';
import type { RegistrationRequest } from './request.ts';

export type Lies = Dowel['lies'];

/** What places are good for, the best first. */
export const RANK: readonly Lies[] = ['waste', 'groove', 'board'];

/** Half the length slots may need beyond a round hole, mm: more than acrylic moves against any bed. */
const SLOT_ROOM = 1;
/** How far a dowel hole hidden in the groove keeps from its walls, mm. */
const HIDDEN_WALL = 0.3;

/** Tells where on the sheet a dowel hole would lie; undefined where there must be none. */
export function makePlaces({ stock, board, channel, holes, pinDiameter, clearance, wall, cutRoom }: RegistrationRequest): (place: Point) => Lies | undefined {
  const radius = (pinDiameter + clearance) / 2 + SLOT_ROOM;
  const sheet = growBox({ minX: 0, minY: 0, maxX: stock.width, maxY: stock.height }, -radius - wall);
  const edge = board.loops.length > 0 ? makeRegionIndex(board) : undefined;
  const walls = channel.loops.length > 0 ? makeRegionIndex(channel) : undefined;
  return (place) => {
    if (!boxHolds(sheet, place) || holes.some((hole) => fromHole(hole, place) < radius + wall)) return undefined;
    const inBoard = edge ? signedDistance(edge, place) : Infinity;
    if (-inBoard >= radius + wall + cutRoom) return 'waste';
    if (inBoard < radius + wall) return undefined;
    const inGroove = walls ? signedDistance(walls, place) : -Infinity;
    if (inGroove >= radius + HIDDEN_WALL) return 'groove';
    return -inGroove >= radius + wall ? 'board' : undefined;
  };
}

function fromHole(hole: RegistrationRequest['holes'][number], { x, y }: Point): number {
  const ends = [hole.centre, ...holeEnds(hole)];
  return Math.min(...ends.map((end) => Math.hypot(end.x - x, end.y - y))) - hole.diameter / 2;
}
