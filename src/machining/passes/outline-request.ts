import { type Region } from '../../geometry/index.ts';
import { cutterProblems, notNegative, positive } from './cutter-problems.ts';
import { type Cutter } from '../job/cutter.ts';
import { type CutDirection } from './groove-request.ts';
import { type Pass } from '../job/pass.ts';
import { type Caution, type MachiningProblem, type MachiningProblems, millimetres } from '../job/problem.ts';
import { type Stock, throughDepth } from '../job/stock.ts';
import { type Tab } from '../job/tab.ts';
import { type Tiling } from '../job/tiling.ts';

/** How many tabs each outline gets, or how far apart they may be along the cut (mm, then at least two). */
export type TabSpacing = { readonly count: number } | { readonly pitch: number };

export type TabRequest = TabSpacing & Pick<Tab, 'width' | 'height'>;

/** The board to part from the sheet and how. Lengths mm, feeds mm/min. */
export interface OutlineRequest {
  /** The finished board, in the sheet's coordinates; its holes are cut-outs. */
  readonly region: Region;
  readonly cutter: Cutter;
  readonly stock: Stock;
  /** Absent: no tabs, the board comes loose. */
  readonly tabs?: TabRequest;
  /** Radius of the arc that leads from the waste onto the outline; 0 for none. Not needed before a finishing pass. */
  readonly leadIn: number;
  /** Left on the edge for one finishing pass at full depth; 0 for no finishing pass. */
  readonly finishingAllowance: number;
  readonly direction: CutDirection;
  /** Greatest deviation that offsetting the region may add. */
  readonly tolerance: number;
  /** Height above the sheet where passes begin. */
  readonly retract: number;
  /** The machine's greatest feed. */
  readonly greatestFeed: number;
  /** Greatest deviation of fitted lines and arcs; 0.004 when absent. */
  readonly fitTolerance?: number;
  /** Where the sheet is cut in several set-ups: every pass then says which it belongs to. */
  readonly tiling?: Tiling;
}

/** The passes around a board and the tabs they leave. */
export type OutlinePlan =
  | { readonly ok: true; readonly passes: readonly Pass[]; readonly tabs: readonly Tab[]; readonly cautions: readonly Caution[] }
  | { readonly ok: false; readonly problems: MachiningProblems };

/** Everything that keeps an outline from being cut at all. */
export function outlineProblems(request: OutlineRequest): MachiningProblem[] {
  const { cutter, stock, tabs, leadIn, finishingAllowance, tolerance, retract, greatestFeed } = request;
  const problems = [
    ...cutterProblems({ cutter, depth: throughDepth(stock), retract, greatestFeed }), ...positive('tolerance', tolerance),
    ...notNegative('lead-in', leadIn), ...notNegative('finishing allowance', finishingAllowance),
    ...(tabs ? tabProblems(tabs, stock) : []),
  ];
  if (finishingAllowance > cutter.diameter / 4) {
    problems.push({
      place: 'finishing allowance', expected: `at most a quarter of the cutter's diameter, ${millimetres(cutter.diameter / 4)} mm`,
      found: `${millimetres(finishingAllowance)} mm`, advice: 'Leave 0.1 to 0.3 mm for the finishing pass.',
    });
  }
  return problems;
}

function tabProblems(tabs: TabRequest, { thickness }: Stock): MachiningProblem[] {
  const spacing = 'count' in tabs ? notNegative('tab count', tabs.count) : positive('tab pitch', tabs.pitch);
  const problems = [...spacing, ...positive('tab width', tabs.width), ...positive('tab height', tabs.height)];
  if (tabs.height >= thickness) {
    problems.push({
      place: 'tab height', expected: `less than the sheet's thickness, ${millimetres(thickness)} mm`,
      found: `${millimetres(tabs.height)} mm`, advice: 'Make the tabs a quarter to a half of the sheet high.',
    });
  }
  return problems;
}
