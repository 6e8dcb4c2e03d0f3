import type { Cutter } from '../job/cutter.ts';
import type { Router } from '../job/machine.ts';
import type { Pass } from '../job/pass.ts';
import { buildProgram } from './program.ts';
import type { Program, SetUp } from '../job/setup.ts';

export interface SetUpPlan {
  /** Passes in drawing coordinates and running order. */
  readonly passes: readonly Pass[];
  readonly machine: Router;
  /** What the work is called, for the first comment. */
  readonly name: string;
  /** Greatest chord deviation where arcs must become lines, mm. */
  readonly tolerance: number;
}

/**
 * One clamping of the whole sheet, its zero at the sheet's lower left corner: one program for each run of passes with the same
 * cutter. After a change of cutter the operator sets Z again, which each program after the first says.
 */
export function oneSetUp({ passes, machine, name, tolerance }: SetUpPlan): SetUp {
  const runs = cutterRuns(passes);
  const programs = runs.map((run, i): Program => buildProgram({
    file: `programs/set-up-1-cutter-${i + 1}.ngc`,
    name: runs.length > 1 ? `${name}, program ${i + 1} of ${runs.length}` : name,
    cutter: run[0]!.cutter, passes: run, heights: machine.heights, machine, tolerance, shift: [0, 0],
    notes: ['X0 Y0 is the lower left corner of the sheet', ...(i > 0 ? ['Change the cutter and set Z again first'] : [])],
  }));
  return { name: 'set-up 1', shift: [0, 0], programs };
}

/** Neighbouring passes with one cutter belong to one program. */
function cutterRuns(passes: readonly Pass[]): Pass[][] {
  const runs: Pass[][] = [];
  for (const pass of passes) {
    const last = runs.at(-1);
    if (last && sameCutter(last[0]!.cutter, pass.cutter)) last.push(pass);
    else runs.push([pass]);
  }
  return runs;
}

function sameCutter(a: Cutter, b: Cutter): boolean {
  return a.name === b.name && a.diameter === b.diameter && a.spindleSpeed === b.spindleSpeed;
}
