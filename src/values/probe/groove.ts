import { type Point, type RegionIndex, leftNormal, makeRegionIndex, scale } from '../../geometry/index.ts';
import type { Channel } from '../../machining/index.ts';
import type { Reading } from '../picture.ts';
import { type Foot, type MeasuredLines, footOn, measureLines, readLine } from './lines.ts';
import { reading } from './reading.ts';

interface MeasuredGroove {
  readonly lines: MeasuredLines;
  readonly walls: RegionIndex;
  readonly channel: Channel;
}

/** A wall belongs to the place it is seen from when no other centre line is nearer to it by more than this share of the width. */
const SAME_PLACE = 0.01;

export function measureGroove(channel: Channel): MeasuredGroove {
  return { channel, lines: measureLines(channel.centreLines, 'centre line'), walls: makeRegionIndex(channel.region) };
}

/** The groove at the place of its centre lines nearest to a point that lies in it, or within so many mm of them. */
export function readGroove(groove: MeasuredGroove, at: Point, within: number): Reading[] {
  const { channel, lines } = groove;
  const foot = footOn(lines, at, Math.max(within, channel.width / 2));
  if (foot === undefined) return [];
  const width = widthAt(groove, foot);
  return [
    ...(width === undefined ? [] : [reading('width here', width, 'mm', foot.point)]),
    reading('depth of the groove', channel.depth, 'mm', foot.point),
    ...readLine(lines, foot),
  ];
}

/** From wall to wall, square to the centre line; undefined where grooves cross, since the walls there belong to both. */
function widthAt(groove: MeasuredGroove, foot: Foot): number | undefined {
  const sides = [1, -1].map((side) => sideAt(groove, foot, side));
  return sides.every((side) => side !== undefined) ? sides[0]! + sides[1]! : undefined;
}

function sideAt({ lines, walls, channel: { width } }: MeasuredGroove, { point, tangent }: Foot, side: number): number | undefined {
  if (tangent.x === 0 && tangent.y === 0) return undefined;
  const normal = scale(leftNormal(tangent), side);
  const away = walls.castRay(point, normal);
  if (!Number.isFinite(away)) return undefined;
  const wall = { x: point.x + normal.x * away, y: point.y + normal.y * away };
  const nearest = footOn(lines, wall, away);
  return nearest !== undefined && away - Math.hypot(wall.x - nearest.point.x, wall.y - nearest.point.y) > SAME_PLACE * width ? undefined : away;
}
