import type { Point3 } from '../../geometry/point.ts';
import type { Cutter } from './cutter.ts';
import type { Move, PassKind } from './pass.ts';
import type { Displacement } from './registration.ts';

/** One program: what one cutter does in one set-up. */
export interface Program {
  /** File name relative to the results folder, such as `programs/set-up-1-cutter-1.ngc`. */
  readonly file: string;
  readonly cutter: Cutter;
  /** What it cuts, each kind once, in the order of their first pass. */
  readonly kinds: readonly PassKind[];
  /** The planned moves in program coordinates, the first from PROGRAM_START, as adapted to the controller. */
  readonly moves: readonly Move[];
  /** The program's words. */
  readonly text: string;
  readonly reach: { readonly min: Point3; readonly max: Point3 };
  /** Estimated running time, and the part of it spent with the cutter in the material's plane or below. */
  readonly minutes: number;
  readonly cuttingMinutes: number;
  /** Seconds of motion from the program's start to the end of each move, without the wait for the spindle. */
  readonly seconds: readonly number[];
  /** Seconds the program waits after its first move until the spindle runs at speed. */
  readonly spindleStart: number;
  readonly blocks: number;
}

/** One clamping of the sheet. `shift` + program coordinate = drawing coordinate. */
export interface SetUp {
  readonly name: string;
  /** Its place in the tiling; its place in the list when absent. */
  readonly place?: number;
  readonly shift: readonly [number, number];
  /** The programs are displaced by this, because the sheet was found to lie so: undone before `shift` is added. */
  readonly correction?: Displacement;
  readonly programs: readonly Program[];
}

/** A set-up's place in the tiling, given its place in the list. */
export const placeOf = ({ place }: Pick<SetUp, 'place'>, inList: number): number => place ?? inList;
