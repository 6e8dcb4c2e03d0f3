import { type Point, type Region, intersectRegions, regionArea, regionCentroid } from '../../geometry/index.ts';
import type { Channel } from '../job/channel.ts';
import type { Hole } from '../job/hole.ts';
import type { Stock } from '../job/stock.ts';
import { holesRegion } from '../layout/hole-pattern.ts';

export interface MassParts {
  readonly board: Region;
  readonly channel: Pick<Channel, 'region' | 'depth' | 'width'> | undefined;
  /** Holes in the board that do not overlap each other. */
  readonly holes: readonly Pick<Hole, 'centre' | 'diameter' | 'slot'>[];
  readonly stock: Pick<Stock, 'thickness' | 'density'>;
  /** What lies in the groove, such as tube and strip: kg for each metre of it. */
  readonly filling?: number;
}

/** How heavy a body is, kg, and where its weight acts; no centre when it weighs nothing. */
export interface Mass {
  readonly kg: number;
  readonly centre: Point | undefined;
}

/** The finished board: its area times thickness, less groove and holes (of a hole in the groove only the floor counts), with what fills the groove. */
export function boardMass({ board, channel, holes, stock, filling = 0 }: MassParts): Mass {
  const perVolume = stock.density * 1e-9;
  const of = (region: Region, depth: number): Lump => ({ kg: regionArea(region) * depth * perVolume, centre: regionCentroid(region) });
  const groove = channel?.region ?? { loops: [] };
  const depth = channel?.depth ?? 0;
  return together([
    of(board, stock.thickness), of(groove, -depth),
    ...holes.map((hole) => ({ kg: -holeArea(hole) * stock.thickness * perVolume, centre: hole.centre })),
    of(intersectRegions(groove, holesRegion(holes, CHORD)), depth),
    { kg: channel ? (filling * regionArea(groove)) / channel.width / 1000 : 0, centre: regionCentroid(groove) },
  ]);
}

/** A part of a body, or with negative weight what is missing of it. */
type Lump = Mass;

/** Chord deviation of holes that are intersected with the groove, mm. */
const CHORD = 0.001;

const holeArea = ({ diameter, slot }: Pick<Hole, 'diameter' | 'slot'>): number => (Math.PI / 4) * diameter ** 2 + diameter * (slot?.length ?? 0);

function together(lumps: readonly Lump[]): Mass {
  const there = lumps.filter((lump): lump is Lump & { readonly centre: Point } => lump.centre !== undefined);
  const kg = there.reduce((sum, lump) => sum + lump.kg, 0);
  const moment = (axis: 'x' | 'y') => there.reduce((sum, lump) => sum + lump.kg * lump.centre[axis], 0);
  return { kg, centre: kg > 0 ? { x: moment('x') / kg, y: moment('y') / kg } : undefined };
}
