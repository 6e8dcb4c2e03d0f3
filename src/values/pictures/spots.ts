import type {} from '../types.ts';
import type { PortType, PortTypes } from '../../runtime/node.ts';
import { type Hole, type Holding, type Registration, type Tiling, seamMiddles } from '../../machining/index.ts';
import type { Carried, JunctionMap, NamedJunctions, NamedSpot, NamedSpots } from '../picture.ts';

type Spots = readonly NamedSpot[];

/** Places a person may take hold of, for the values that have any: under the port's own name, or with a part of it after a dot. */
const SPOTS: { readonly [T in PortType]?: (value: PortTypes[T]) => Readonly<Record<string, Spots>> } = {
  holes: (holes: readonly Hole[]) => ({ '': holes.map(({ centre: { x, y } }) => [x, y] as const) }),
  holding: ({ holdDowns, supports }: Holding) => ({
    '.down': merged(holdDowns.map(({ at: { x, y }, setUps }) => (setUps ? [x, y, setUps] : [x, y]))),
    '.x': merged(supports.filter(({ axis }) => axis === 'x').map(({ at, length = 0, setUp }) => [at, length / 2, [setUp]])),
    '.y': merged(supports.filter(({ axis }) => axis === 'y').map(({ at, length = 0, setUp }) => [length / 2, at, [setUp]])),
  }),
  registration: ({ pins }: Registration) => ({ '': pins.map(({ at: { x, y } }) => [x, y] as const) }),
  tiling: (tiling: Tiling) => ({ '.x': seamMiddles(tiling, 'x'), '.y': seamMiddles(tiling, 'y') }),
};

/** One place for all that stand there, each in a set-up of its own; in hundredths, as places put by hand are. */
function merged(exact: Spots): Spots {
  const spots = exact.map(([x, y, setUps]) => [hundredth(x), hundredth(y), setUps] as const);
  const places = new Map(spots.map(([x, y]) => [`${x} ${y}`, [x, y] as const]));
  return [...places.values()].map(([x, y]): NamedSpot => {
    const setUps = spots.filter((spot) => spot[0] === x && spot[1] === y).map((spot) => spot[2]);
    return setUps.every((one) => one !== undefined) ? [x, y, [...new Set(setUps.flat())]] : [x, y];
  });
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Places a person may take hold of, by port: the centres of its holes; by port and axis the middles of its seams. Ports without any are left out. */
export function spotsOf(carried: readonly Carried[]): NamedSpots {
  return Object.fromEntries(carried.flatMap(({ port, type, value }) =>
    Object.entries(SPOTS[type]?.(value as never) ?? {}).map(([part, spots]) => [port + part, spots])));
}

/** Where strokes meet and end, by port. Ports that carry nothing of the kind are left out. */
export function junctionsOf(carried: readonly Carried[]): NamedJunctions {
  return Object.fromEntries(carried.flatMap(({ port, type, value }) => (type === 'junctions' ? [[port, value as JunctionMap]] : [])));
}
