import type { Hole } from '../../machining/index.ts';
import type { Carried, JunctionMap, NamedJunctions, NamedSpots } from '../picture.ts';

/** Places a person may take hold of, by port: the centres of its holes. Ports without any are left out. */
export function spotsOf(carried: readonly Carried[]): NamedSpots {
  return Object.fromEntries(carried.flatMap(({ port, type, value }) =>
    (type === 'holes' ? [[port, (value as readonly Hole[]).map(({ centre: { x, y } }) => [x, y] as const)]] : [])));
}

/** Where strokes meet and end, by port. Ports that carry nothing of the kind are left out. */
export function junctionsOf(carried: readonly Carried[]): NamedJunctions {
  return Object.fromEntries(carried.flatMap(({ port, type, value }) => (type === 'junctions' ? [[port, value as JunctionMap]] : [])));
}
