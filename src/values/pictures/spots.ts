import type { Hole } from '../../machining/index.ts';
import type { Carried, NamedSpots } from '../picture.ts';

/** Places a person may take hold of, by port: the centres of its holes. Ports without any are left out. */
export function spotsOf(carried: readonly Carried[]): NamedSpots {
  return Object.fromEntries(carried.flatMap(({ port, type, value }) =>
    (type === 'holes' ? [[port, (value as readonly Hole[]).map(({ centre: { x, y } }) => [x, y] as const)]] : [])));
}
