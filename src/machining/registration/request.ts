import type { Path, Point, Region } from '../../geometry/index.ts';
import type { Hole } from '../job/hole.ts';
import type { MachiningProblems } from '../job/problem.ts';
import type { Registration } from '../job/registration.ts';
import type { Stock } from '../job/stock.ts';
import type { Tiling } from '../job/tiling.ts';

/** What the set-ups are to find their place by. Lengths mm, drawing coordinates. */
export interface RegistrationRequest {
  readonly tiling: Tiling;
  readonly stock: Pick<Stock, 'width' | 'height'>;
  readonly board: Region;
  readonly channel: Region;
  /** The middles of its grooves. */
  readonly centreLines: readonly Path[];
  readonly holes: readonly Hole[];
  readonly pinDiameter: number;
  /** Diameter of a dowel hole less that of its pin. */
  readonly clearance: number;
  /** Greatest error of a drilled hole's place, sideways. */
  readonly pitchError: number;
  /** Material that must stand beside a dowel hole. */
  readonly wall: number;
  /** Room the cutter takes beside the board: its diameter and allowances. */
  readonly cutRoom: number;
  /** By how much the temperature may change between two set-ups, K: the slots allow for it. */
  readonly kelvin: number;
  /** Largest step at a seam that will do: below it, holes out of view are worth more than smaller steps. */
  readonly limit: number;
  /** Pins put by hand, in program coordinates: the first two are used for every set-up. */
  readonly pins: readonly Point[];
}

export type RegistrationOutcome = { readonly ok: true; readonly registration: Registration } | { readonly ok: false; readonly problems: MachiningProblems };
