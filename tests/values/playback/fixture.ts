import { buildProgram } from '../../../src/machining/program/program.ts';
import type { Controller } from '../../../src/machining/job/machine.ts';
import type { Move, Pass } from '../../../src/machining/job/pass.ts';
import type { SetUp } from '../../../src/machining/job/setup.ts';
import { controller, flat6, machine } from '../../support/machines.ts';

const to = (x: number, y: number, z: number) => ({ x, y, z });

/** A level groove that comes down steeply, and a ring of two arcs deeper than it. */
export const groove: Pass = {
  kind: 'groove', name: 'groove 1', cutter: flat6, start: to(40, 30, 2),
  moves: [
    { kind: 'line', to: to(40, 30, -3), feed: 500 },
    { kind: 'line', to: to(100, 30, -3), feed: 1800 },
  ],
};
const half = (y: number): Move => ({ kind: 'arc', to: to(70, y, -4), centre: { x: 70, y: 90 }, clockwise: false, feed: 1200 });
export const ring: Pass = {
  kind: 'groove', name: 'ring', cutter: flat6, start: to(70, 70, 2),
  moves: [{ kind: 'line', to: to(70, 70, -4), feed: 500 }, half(110), half(70)],
};
export const through: Pass = {
  kind: 'hole', name: 'hole 1', cutter: flat6, start: to(20, 20, 2), moves: [{ kind: 'line', to: to(20, 20, -12.5), feed: 400 }],
};

export function setUp(passes: readonly Pass[], shift: readonly [number, number] = [0, 0], changes: Partial<Controller> = {}): SetUp {
  const program = buildProgram({
    file: 'programs/a.ngc', name: 'a', cutter: flat6, passes, heights: { clearance: 10, retract: 2 },
    machine: { ...machine, controller: { ...controller, ...changes } }, tolerance: 0.004, shift, notes: [],
  });
  return { name: 'set-up 1', shift, programs: [program] };
}
