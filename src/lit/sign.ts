import type { Region } from '../geometry/index.ts';
import { type Lighting, stripLength } from '../lighting/index.ts';
import type { Channel, Hole } from '../machining/index.ts';
import type { LitSign } from './scene.ts';
import type { ShiningLine } from './trail.ts';

export interface SignParts {
  readonly channel: Channel;
  readonly board: Region | undefined;
  /** Where it is not known how the groove is lit, all of it shines. */
  readonly lighting: Lighting | undefined;
  readonly holes: readonly Hole[];
  /** Diameter of the fixings' heads, mm; 0 where they are hidden. */
  readonly headDiameter: number;
}

/** What is seen of a sign from the front. Holes for cables lie under the tubes. */
export function signOf({ channel, board, lighting, holes, headDiameter }: SignParts): LitSign {
  const heads = headDiameter > 0 ? holes.filter(({ purpose }) => purpose === 'mounting') : [];
  return {
    tubes: channel.region.loops, lines: lighting ? litLines(lighting) : channel.centreLines.map((path) => ({ path })), tubeWidth: channel.width,
    ...(board && board.loops.length > 0 && { board: board.loops }), fixings: heads.map(({ centre }) => ({ centre, diameter: headDiameter })),
  };
}

const litLines = ({ runs, strip }: Lighting): ShiningLine[] => runs.flatMap(({ pieces }) => pieces.map(({ lit }) => ({ path: lit, module: strip.moduleLength })));

/** Light that leaves the tubes' fronts, lm: what the strip sends out by its length, less what the tube keeps. */
export const fluxOf = ({ runs, strip }: Lighting, transmission: number): number =>
  (stripLength(runs.flatMap(({ pieces }) => pieces)) / 1000) * strip.lumensPerMetre * transmission;
