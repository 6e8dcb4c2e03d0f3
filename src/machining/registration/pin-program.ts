import type { Cutter } from '../job/cutter.ts';
import type { Router } from '../job/machine.ts';
import type { MachiningProblems } from '../job/problem.ts';
import type { Registration } from '../job/registration.ts';
import type { Program } from '../job/setup.ts';
import { holePasses } from '../passes/hole-passes.ts';
import { orderPasses } from '../passes/order.ts';
import { buildProgram } from '../program/program.ts';

export interface PinHoles {
  readonly registration: Registration;
  readonly cutter: Cutter;
  readonly machine: Router;
  /** Depth of the pins' holes in the spoilboard, mm. */
  readonly depth: number;
  /** What the work is called. */
  readonly name: string;
}

export type PinProgram = { readonly ok: true; readonly program: Program } | { readonly ok: false; readonly problems: MachiningProblems };

/** Deepest the cutter goes before it is lifted to clear chips, in its own diameters (common practice, no source). */
const PECK_DIAMETERS = 1;

/** The program that makes the pins' holes in the spoilboard, before any sheet lies on it. Its Z0 is the spoilboard's top face. */
export function pinProgram({ registration, cutter, machine, depth, name }: PinHoles): PinProgram {
  const holes = registration.pins.map(({ at, diameter }) => ({ centre: at, diameter, purpose: 'dowel' as const }));
  const plan = holePasses({
    holes, cutter, throughDepth: depth, peckDepth: PECK_DIAMETERS * cutter.diameter, direction: 'climb', retract: machine.heights.retract, greatestFeed: machine.greatestFeed,
  });
  if (!plan.ok) return plan;
  return {
    ok: true,
    program: buildProgram({
      file: 'programs/spoilboard-pins.ngc', name: `${name}, holes for the pins in the spoilboard`, cutter, passes: orderPasses(plan.passes, { x: 0, y: 0 }),
      heights: machine.heights, machine, tolerance: 0.002, shift: [0, 0], on: 'spoilboard',
      notes: ['Run this first, without a sheet', 'X0 Y0 stays for all set-ups; set Z again on the sheet'],
    }),
  };
}
