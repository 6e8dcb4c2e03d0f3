import { type Affine, applyToPath, applyToPoint, type Region, unionRegions } from '../../geometry/index.ts';
import type { Channel } from '../job/channel.ts';
import type { Hole } from '../job/hole.ts';
import { movedRegion } from './nest.ts';

/** A board with what is made in it. */
export interface Sign {
  readonly board: Region;
  readonly channel: Channel | undefined;
  readonly holes: readonly Hole[];
}

/** Several signs as one work: one board of several pieces, one groove, all holes. The grooves must be alike in width and depth. */
export function together(signs: readonly Sign[]): Sign {
  const channels = signs.flatMap(({ channel }) => channel ?? []);
  const [first] = channels;
  return {
    board: unionRegions(signs.map(({ board }) => board)),
    channel: first && {
      ...first, centreLines: channels.flatMap(({ centreLines }) => centreLines), region: { loops: channels.flatMap(({ region }) => region.loops) },
      tolerance: Math.max(...channels.map(({ tolerance }) => tolerance)),
    },
    holes: signs.flatMap(({ holes }) => holes),
  };
}

/** A sign turned and shifted. */
export function movedSign({ board, channel, holes }: Sign, by: Affine): Sign {
  const angle = (Math.atan2(by[1], by[0]) * 180) / Math.PI;
  const hole = (one: Hole): Hole => ({ ...one, centre: applyToPoint(by, one.centre), ...(one.slot && { slot: { ...one.slot, angle: one.slot.angle + angle } }) });
  return {
    board: movedRegion(board, by),
    channel: channel && { ...channel, centreLines: channel.centreLines.map((path) => applyToPath(by, path)), region: movedRegion(channel.region, by) },
    holes: holes.map(hole),
  };
}
