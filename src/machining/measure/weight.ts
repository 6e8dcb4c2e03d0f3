import { type Region, regionArea } from '../../geometry/index.ts';
import type { Channel } from '../job/channel.ts';
import type { Hole } from '../job/hole.ts';
import type { Stock } from '../job/stock.ts';

interface Board {
  readonly board: Region;
  readonly channel: Pick<Channel, 'region' | 'depth'> | undefined;
  readonly holes: readonly Pick<Hole, 'diameter' | 'slot'>[];
  readonly stock: Pick<Stock, 'thickness' | 'density'>;
}

/** Weight of the finished board in kg: its area times thickness, less groove and holes (as if none lay in the groove). */
export function boardWeight({ board, channel, holes, stock }: Board): number {
  const groove = channel ? regionArea(channel.region) * channel.depth : 0;
  const bored = holes.reduce((sum, { diameter, slot }) => sum + ((Math.PI / 4) * diameter ** 2 + diameter * (slot?.length ?? 0)) * stock.thickness, 0);
  const volume = regionArea(board) * stock.thickness - groove - bored;
  return volume * 1e-9 * stock.density;
}
