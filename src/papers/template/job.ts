import { type Box, growBox, type Region, regionBounds, simplifyLoop, unionBoxes } from '../../geometry/index.ts';
import { type Hole, holeEnds } from '../../machining/index.ts';
import { EDGE, type Paper, PAPERS, type Size } from '../paper.ts';
import { planTemplate, type Shown, type TemplatePlan } from './tiles.ts';
import type { Wording } from './wording.ts';

export interface TemplateJob {
  readonly paper: Paper;
  readonly name: string;
  readonly board: Region;
  readonly holes: readonly Hole[];
  readonly wording: Wording;
}

/** A mounting hole with its number, and its place from the board's lower left corner, mm. */
export interface NumberedHole extends Hole {
  readonly number: number;
  readonly x: number;
  readonly y: number;
}

export interface Template {
  readonly job: TemplateJob;
  readonly lying: boolean;
  readonly plan: TemplatePlan;
  /** The board, drawing coordinates. */
  readonly bounds: Box;
  /** The board's outline with no more points than show. */
  readonly outline: Region;
  readonly mounting: readonly NumberedHole[];
  /** Where cables come through the board: for the eye, not to be drilled. */
  readonly cables: readonly Hole[];
}

/** Above each page's window, mm: its name, the ruler, the map. */
export const HEAD = 26;
/** Below it: the foot. */
const FOOT = 6;

/** What an eye sees, mm. */
const SHOWN = 0.02;

/** Room that a hole's cross and words take, mm. */
const ROUND_HOLE = 16;

/** Pages upright or lying, whichever are fewer; undefined when there is no mounting hole or no board. */
export function templateOf(job: TemplateJob): Template | undefined {
  const bounds = regionBounds(job.board);
  const mounting = job.holes.filter(({ purpose }) => purpose === 'mounting');
  if (!bounds || mounting.length === 0) return undefined;
  const outline = { loops: job.board.loops.map((loop) => simplifyLoop(loop, SHOWN)).filter((loop) => loop.length > 2) };
  const boxes = mounting.map((hole) => growBox(holeBox(hole), ROUND_HOLE));
  const all = unionBoxes([growBox(bounds, 2), ...boxes])!;
  const shown: Shown = { boxes, edges: outline.loops.flatMap((loop) => loop.map((point, i) => [point, loop[(i + 1) % loop.length]!] as const)) };
  const plans = [false, true].map((lying) => ({ lying, plan: planTemplate(all, windowOf(job.paper, lying), shown) }));
  const fewest = plans.reduce((a, b) => (b.plan.pages.length < a.plan.pages.length ? b : a));
  return {
    job, ...fewest, bounds, outline, cables: job.holes.filter(({ purpose }) => purpose === 'cable'),
    mounting: mounting.map((hole, i) => ({ ...hole, number: i + 1, x: hole.centre.x - bounds.minX, y: hole.centre.y - bounds.minY })),
  };
}

export function holeBox(hole: Hole): Box {
  const [a, b] = holeEnds(hole), radius = hole.diameter / 2;
  return { minX: Math.min(a.x, b.x) - radius, minY: Math.min(a.y, b.y) - radius, maxX: Math.max(a.x, b.x) + radius, maxY: Math.max(a.y, b.y) + radius };
}

/** How much of the wall a page shows. */
export function windowOf(paper: Paper, lying: boolean): Size {
  const [short, long] = PAPERS[paper];
  const [width, height] = lying ? [long, short] : [short, long];
  return { width: width - 2 * EDGE, height: height - 2 * EDGE - HEAD - FOOT };
}
