import { type Point } from '../../geometry/point.ts';
import { adaptMoves } from './adapt.ts';
import { type Cutter } from '../job/cutter.ts';
import { linkEach, type LinkedPass } from './link.ts';
import { type Controller, type Machine } from '../job/machine.ts';
import { PROGRAM_START, displacePass, movesReach, shiftPass, type Reach } from '../job/moves.ts';
import { type Heights, type Move, type Pass } from '../job/pass.ts';
import { unitLength } from './resolution.ts';
import type { Displacement } from '../job/registration.ts';
import { type Program } from '../job/setup.ts';
import { programTime } from './time.ts';
import { numberText } from './words.ts';
import { programStats, writeProgram, type Heading } from './writer.ts';

export interface ProgramPlan {
  readonly file: string;
  /** First comment of the program. */
  readonly name: string;
  readonly cutter: Cutter;
  /** In drawing coordinates, in the order to cut them; at least one, all with this cutter. */
  readonly passes: readonly Pass[];
  readonly heights: Heights;
  readonly machine: Machine;
  /** Greatest chord deviation where arcs must become lines, mm. */
  readonly tolerance: number;
  /** `shift` + program coordinate = drawing coordinate. */
  readonly shift: readonly [number, number];
  /** How the sheet was found to lie; the passes are displaced by it. */
  readonly correction?: Displacement;
  /** On what the tip is set to Z0; the sheet when absent. */
  readonly on?: 'sheet' | 'spoilboard';
  readonly notes: readonly string[];
  /** Where the cutter waits at the end, in program coordinates; above its last cut if absent. */
  readonly park?: Point;
}

/**
 * The program that makes these passes: linked by rapids, shifted, adapted to the controller, written, measured and timed.
 * Its reach leaves out where the cutter stands before. Throws a RangeError without passes, with passes of another
 * cutter, or with moves that are no coordinates or feeds.
 */
export function buildProgram(plan: ProgramPlan): Program {
  const { cutter, passes, heights, machine, tolerance, shift } = plan;
  if (passes.length === 0) throw new RangeError('a program has at least one pass');
  const other = passes.find((pass) => pass.cutter.diameter !== cutter.diameter);
  if (other !== undefined) throw new RangeError(`"${other.name}" is for a cutter of ${other.cutter.diameter} mm, not ${cutter.diameter} mm`);
  const linked = linkEach(passes.map((pass) => inProgram(pass, plan)), heights, plan.park);
  const { moves, headings } = adaptEach(linked, machine.controller, tolerance);
  const reach = workReach(moves);
  const notes = [...plan.notes, zeroNote(shift, machine.controller), reachNote(reach, machine.controller)];
  const text = writeProgram({ name: plan.name, cutter, moves, machine, notes, headings, ...(plan.on && { on: plan.on }) });
  const time = programTime(PROGRAM_START, moves, machine);
  return {
    file: plan.file, cutter, kinds: [...new Set(passes.map(({ kind }) => kind))], moves, text, reach,
    minutes: (time.seconds + machine.spindleStart) / 60,
    cuttingMinutes: time.cuttingSeconds / 60,
    seconds: time.ends,
    spindleStart: machine.spindleStart,
    blocks: programStats(text).blocks,
  };
}

function inProgram(pass: Pass, { shift, correction }: ProgramPlan): Pass {
  const shifted = shiftPass(pass, -shift[0], -shift[1]);
  return correction ? displacePass(shifted, correction) : shifted;
}

function adaptEach(linked: readonly LinkedPass[], controller: Controller, tolerance: number): { moves: Move[]; headings: Heading[] } {
  const moves: Move[] = [];
  const headings: Heading[] = [];
  let planned = PROGRAM_START;
  for (const pass of linked) {
    // The first pass is announced after the lift and the start of the spindle.
    headings.push({ before: Math.max(1, moves.length), text: pass.name });
    for (const move of adaptMoves(pass.moves, controller, tolerance, planned)) moves.push(move);
    planned = pass.moves[pass.moves.length - 1]?.to ?? planned;
  }
  return { moves, headings };
}

function workReach(moves: readonly Move[]): Reach {
  const [lift, across] = moves;
  const { x, y } = (across ?? lift)!.to;
  return movesReach({ x, y, z: lift!.to.z }, moves.slice(1));
}

function zeroNote([x, y]: readonly [number, number], controller: Controller): string {
  const unit = unitLength(controller);
  return `X0 Y0 lies at X ${numberText(x / unit, 2)}, Y ${numberText(y / unit, 2)} of the drawing`;
}

function reachNote({ min, max }: Reach, controller: Controller): string {
  const unit = unitLength(controller);
  const span = (axis: 'x' | 'y' | 'z') => `${axis.toUpperCase()} ${numberText(min[axis] / unit, 2)} to ${numberText(max[axis] / unit, 2)}`;
  return `Reach ${(['x', 'y', 'z'] as const).map(span).join(', ')}`;
}
