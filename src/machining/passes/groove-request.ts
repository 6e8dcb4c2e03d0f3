import { type Channel } from '../job/channel.ts';
import { cutterProblems, notNegative, positive } from './cutter-problems.ts';
import { type Cutter } from '../job/cutter.ts';
import { type Pass } from '../job/pass.ts';
import { type Caution, type MachiningProblem, type MachiningProblems, millimetres } from '../job/problem.ts';
import { type Tiling } from '../job/tiling.ts';

/** Whether the cutting edge enters at the thick end of the chip (climb) or at its thin end, for a clockwise spindle. */
export type CutDirection = 'climb' | 'conventional';

/** The groove to cut and how. Lengths mm, feeds mm/min. */
export interface GrooveRequest extends Channel {
  readonly cutter: Cutter;
  /** Sideways step between rings as a fraction of the cutter's diameter; more than 0.45 counts as 0.45, so that nothing is left between. */
  readonly stepover: number;
  /** Left on the walls by the roughing rings for one finishing pass at full depth; 0 for no finishing pass. */
  readonly finishingAllowance: number;
  readonly direction: CutDirection;
  /** Height above the sheet where passes begin. */
  readonly retract: number;
  /** The machine's greatest feed. */
  readonly greatestFeed: number;
  /** Greatest deviation of fitted lines and arcs; 0.004 when absent. */
  readonly fitTolerance?: number;
  /** Where the sheet is cut in several set-ups: every pass then says which it belongs to. */
  readonly tiling?: Tiling;
  /** Told how many of the groove's parts are planned, 0 to 1; it may throw to stop the planning. */
  readonly progress?: (done: number) => void;
}

/** Passes that can be cut and what is to be said about some places, or the reasons why there are none. */
export type PassPlan =
  | { readonly ok: true; readonly passes: readonly Pass[]; readonly cautions: readonly Caution[] }
  | { readonly ok: false; readonly problems: MachiningProblems };

/** Finer steps would only multiply rings. */
const LEAST_STEPOVER = 0.02;

/** Everything that keeps a groove from being cut at all. */
export function grooveProblems(request: GrooveRequest): MachiningProblem[] {
  const { cutter, width, stepover, finishingAllowance, tolerance } = request;
  const problems = [
    ...cutterProblems(request), ...positive('groove width', width), ...positive('stepover', stepover),
    ...positive('tolerance', tolerance), ...notNegative('finishing allowance', finishingAllowance),
  ];
  if (cutter.diameter > width + tolerance) {
    problems.push({
      place: 'cutter', expected: `a diameter of at most ${millimetres(width)} mm, the groove's width`,
      found: `${millimetres(cutter.diameter)} mm`, advice: 'Choose a thinner cutter or a wider groove.',
    });
  }
  if (stepover > 0 && stepover < LEAST_STEPOVER) {
    problems.push({ place: 'stepover', expected: `at least ${LEAST_STEPOVER}`, found: String(stepover), advice: 'Give the stepover as a fraction of the diameter, such as 0.4.' });
  }
  if (finishingAllowance > cutter.diameter / 4) {
    problems.push({
      place: 'finishing allowance', expected: `at most a quarter of the cutter's diameter, ${millimetres(cutter.diameter / 4)} mm`,
      found: `${millimetres(finishingAllowance)} mm`, advice: 'Leave 0.1 to 0.3 mm for the finishing pass.',
    });
  }
  return problems;
}
