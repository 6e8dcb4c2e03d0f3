import { type Box, emptyRegion, type Region, simplifyLoop } from '../../geometry/index.ts';
import { type Bed, bedOf, type Channel, type Hole, type Holding, type Registration, type Router, type SetUp, sideOverhangs, type SideOverhang, type Stock, type Tile, type Tiling } from '../../machining/index.ts';
import type { Paper } from '../paper.ts';

/** What a check came to, as far as paper tells it. */
export interface PaperCheck {
  readonly status: 'pass' | 'caution' | 'fail';
  readonly says: string;
}

export interface SheetsJob {
  readonly paper: Paper;
  /** What the work is called. */
  readonly name: string;
  /** What the bench should know besides; paragraphs parted by line breaks. */
  readonly notes: string;
  readonly setups: readonly SetUp[];
  /** The set-ups as planned; one of the whole sheet without. */
  readonly tiling?: Tiling | undefined;
  readonly stock: Stock;
  readonly machine: Router;
  readonly board?: Region | undefined;
  readonly channel?: Channel | undefined;
  readonly holes: readonly Hole[];
  readonly registration?: Registration | undefined;
  readonly holding?: Holding | undefined;
  readonly checks: readonly PaperCheck[];
}

/** A set-up in its turn. */
export interface Turn {
  /** From 1. */
  readonly number: number;
  /** Place in the tiling. */
  readonly place: number;
  readonly tile: Tile;
  readonly setup: SetUp;
  readonly before: Turn | undefined;
}

/** The job as all pages look at it. */
export interface Work extends Omit<SheetsJob, 'tiling' | 'board' | 'holding'> {
  readonly tiling: Tiling;
  readonly board: Region;
  readonly groove: Region;
  readonly holding: Holding;
  /** In program coordinates. */
  readonly bed: Bed;
  readonly hangs: readonly SideOverhang[];
  readonly turns: readonly Turn[];
  readonly failed: readonly PaperCheck[];
  readonly cautions: readonly PaperCheck[];
}

const NOTHING_HELD: Holding = { holdDowns: [], areas: [], supports: [] };

export function workOf(job: SheetsJob): Work {
  const tiling = job.tiling && job.tiling.tiles.length > 0 ? job.tiling : wholeSheet(job);
  const bed = bedOf(tiling, job.machine.bedMargin);
  return {
    ...job, tiling, bed, board: job.board ?? emptyRegion, groove: job.channel?.region ?? emptyRegion, holding: job.holding ?? NOTHING_HELD, turns: turnsOf(job.setups, tiling),
    hangs: sideOverhangs(job.stock, tiling.tiles, bed), failed: job.checks.filter(({ status }) => status === 'fail'), cautions: job.checks.filter(({ status }) => status === 'caution'),
  };
}

function wholeSheet({ stock, machine }: SheetsJob): Tiling {
  const box: Box = { minX: 0, minY: 0, maxX: stock.width, maxY: stock.height };
  return { tiles: [{ name: 'set-up 1', column: 0, row: 0, core: box, window: box, shift: [0, 0] }], seams: [], lap: 0, travel: [machine.travelX, machine.travelY] };
}

/** Set-ups that cut nothing are not among them: numbers follow the tiling, as the programs' names do. */
function turnsOf(setups: readonly SetUp[], tiling: Tiling): Turn[] {
  const turns: Turn[] = [];
  setups.forEach((setup, i) => {
    const named = tiling.tiles.findIndex(({ name }) => name === setup.name);
    const place = named === -1 ? Math.min(i, tiling.tiles.length - 1) : named;
    turns.push({ number: place + 1, place, tile: tiling.tiles[place]!, setup, before: turns.at(-1) });
  });
  return turns;
}

/** The drawing with no more points than show at a scale. */
export function simplified(work: Work, scale: number): Work {
  const fewer = ({ loops }: Region): Region => ({ loops: loops.map((loop) => simplifyLoop(loop, SHOWN * scale)).filter((loop) => loop.length > 2) });
  return { ...work, groove: fewer(work.groove), board: fewer(work.board) };
}

/** What an eye sees at reading distance, mm on paper. */
const SHOWN = 0.02;

export const totalMinutes = (turns: readonly Turn[]): number => turns.reduce((sum, { setup }) => sum + setupMinutes(setup), 0);
export const setupMinutes = ({ programs }: SetUp): number => programs.reduce((sum, { minutes }) => sum + minutes, 0);
