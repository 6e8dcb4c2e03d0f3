import type { Region } from '../../geometry/region.ts';
import type { Channel } from '../job/channel.ts';
import type { DesignSurface } from './design.ts';
import type { Hole } from '../job/hole.ts';
import { PROGRAM_START, replaceMoves } from '../job/moves.ts';
import type { PassKind } from '../job/pass.ts';
import { type Proof, type ProvenProgram, proveCut } from './prove.ts';
import { type ProgramProblem, movesOf, readProgram } from '../reader/read-program.ts';
import type { SetUp } from '../job/setup.ts';
import type { Stock } from '../job/stock.ts';
import type { Tab } from '../job/tab.ts';

export interface SignDesign {
  readonly channel: Channel;
  readonly board: Region;
  readonly holes: readonly Hole[];
  readonly tabs: readonly Tab[];
  readonly stock: Stock;
  /** Room in the waste beyond the outline's cut, for lead-ins, mm. */
  readonly leadRoom: number;
}

export interface ProofSettings {
  /** Distance between samples, mm. */
  readonly cell: number;
  /** Differences up to this do not count as an area, mm: sideways and in depth. */
  readonly tolerance: number;
  readonly depthTolerance: number;
  readonly progress?: (done: number) => void;
}

export type SetUpsProof = { readonly ok: true; readonly proof: Proof } | { readonly ok: false; readonly file: string; readonly problem: ProgramProblem };

/** Reads the words of every program back and proves that what they remove is what was designed. */
export function proveSetUps(setups: readonly SetUp[], design: SignDesign, settings: ProofSettings): SetUpsProof {
  const programs: ProvenProgram[] = [];
  for (const { shift, correction, programs: own } of setups)
    for (const { file, text, cutter } of own) {
      const reading = readProgram(text);
      if (!reading.ok) return { ok: false, file, problem: reading.problems[0] };
      programs.push({ start: PROGRAM_START, moves: correction ? replaceMoves(movesOf(reading.moves, settings.tolerance / 10), correction) : movesOf(reading.moves, settings.tolerance / 10), cutterDiameter: cutter.diameter, shift });
    }
  return { ok: true, proof: proveCut({ design: surfaceOf(design, setups), programs, ...settings }) };
}

/** What the groove's thinnest cutter can reach counts; the outline's widest one says how much of the waste goes. */
function surfaceOf({ channel, board, holes, tabs, stock, leadRoom }: SignDesign, setups: readonly SetUp[]): DesignSurface {
  const grooveCutter = Math.min(channel.width, ...diametersFor(setups, 'groove'));
  const outlineCutter = Math.max(0, ...diametersFor(setups, 'outline'));
  return {
    stock, holes,
    channel: { region: channel.region, depth: channel.depth, cutterDiameter: grooveCutter },
    outline: { board, tabs, cutterDiameter: outlineCutter, allowance: outlineCutter + leadRoom },
  };
}

function diametersFor(setups: readonly SetUp[], kind: PassKind): number[] {
  return setups.flatMap(({ programs }) => programs.filter(({ kinds }) => kinds.includes(kind)).map(({ cutter }) => cutter.diameter));
}
