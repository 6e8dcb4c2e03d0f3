import { offsetRegion, type Point, type Point3, type Region } from '../../geometry/index.ts';
import { type DesignSurface } from './design.ts';
import { fromFrame, moveToFrame, placeToFrame, toFrame } from './frame.ts';
import { makeJudge, newTallies, type Tallies } from './judge.ts';
import { makeRowJudge } from './judge-rows.ts';
import { reachBeyond, type Overhang } from './overhang.ts';
import { watchOutline, type OutlineProof } from './outline-proof.ts';
import { type Move } from '../job/pass.ts';
import { type DepthGrid, removeByRapid, removeSwath } from './removal.ts';
import { type Swath, swathOf } from './swath.ts';
import { type Fault, faultOf, placeOf } from './tally.ts';

/** What one cutter does, as planned or, better, as read back from the program's words. `shift` + program place = drawing place. */
export interface ProvenProgram {
  readonly start: Point3;
  readonly moves: readonly Move[];
  readonly cutterDiameter: number;
  readonly shift: readonly [number, number];
}

export interface ProofOptions {
  readonly design: DesignSurface;
  /** In the order they run. */
  readonly programs: readonly ProvenProgram[];
  /** Distance between samples, mm; grown, and the proof says so, if the sheet would need more than `GREATEST_SAMPLES`. */
  readonly cell: number;
  /** Sideways, mm: what lies nearer to a designed edge does not count as an area. At least the chord tolerance of the regions. */
  readonly tolerance: number;
  /** Up and down, mm. */
  readonly depthTolerance: number;
  /** Told how much of the sheet has been gone through, 0 to 1; it may throw to stop the proof. */
  readonly progress?: (done: number) => void;
}

/**
 * What is left of the sheet held against the design. Lengths mm, areas mm2, places in the drawing's coordinates.
 *
 * Every `mm` of a fault is the largest distance, over all wrong samples, from the deepest removed point of a sample (or the
 * highest standing one) to the nearest designed surface, sideways or up and down; it is exact at the sample. Every
 * `mm2` is the area of the samples for which it exceeds the tolerance. A long edge moved by d shows as d less a few
 * hundredths of a cell; a fault smaller than about a cell each way may lie between samples.
 */
export interface Proof {
  /** Distance between samples used, and how many samples lay on the sheet. */
  readonly cell: number;
  readonly samples: number;
  /** Material of the finished board that was removed. */
  readonly wrongCut: Fault;
  /** Material of channel and holes left standing that the cutter could reach. */
  readonly remainder: Fault;
  /** Material of the channel left standing where the cutter does not fit. */
  readonly unreachable: Fault;
  /** Cuts in the waste farther from the board than allowed. */
  readonly strayCut: Fault;
  /** Cuts into the spoilboard deeper than the breakthrough and the depth tolerance. */
  readonly spoilboardCut: Fault;
  /** How far a cut below the top face reaches beyond the sheet's edges; from the moves themselves, not from samples. */
  readonly offSheet: Overhang;
  /** Largest error of the channel's floor, over what was cut at all, farther than the tolerance from walls and holes. */
  readonly depthError: { readonly mm: number; readonly at?: Point; readonly tooDeep: number; readonly tooShallow: number };
  readonly outline: OutlineProof;
  /** Rapids that met material, and where the first of them met most. */
  readonly rapidsThroughMaterial: { readonly count: number; readonly at?: Point };
}

/** Most samples of a proof: some seconds of work. A sheet of 2.4 x 1.2 m fits at 0.1 mm. */
const GREATEST_SAMPLES = 3e8;
/** The sheet is gone through in bands of at most this many cells: 16 MB at a time, whatever the sheet. */
const BAND_CELLS = 2 ** 22;
/** Chords of regions made here stay this share of the tolerance away from the truth. */
const CHORD_SHARE = 0.25;

interface Step {
  readonly swath: Swath;
  readonly rapid: boolean;
  /** Place in the order of all moves of all programs. */
  readonly order: number;
}

/**
 * Removes what the programs remove, on samples that slope against the sheet, and compares every sample with the design.
 * Knows nothing of how the passes were planned. Throws a RangeError for sizes that are not positive numbers.
 */
export function proveCut({ design, programs, cell: wanted, tolerance, depthTolerance, progress }: ProofOptions): Proof {
  requirePositive({ cell: wanted, tolerance, depthTolerance, width: design.stock.width, height: design.stock.height });
  const sheet = sheetRegion(design);
  const cell = Math.max(wanted, Math.sqrt((design.stock.width * design.stock.height) / GREATEST_SAMPLES));
  const board = design.outline?.board ?? sheet;
  const allowance = design.outline
    ? offsetRegion(board, design.outline.allowance, { join: 'round', tolerance: tolerance * CHORD_SHARE }) : sheet;
  const tallies = newTallies();
  const judge = makeJudge(design, board, tallies, tolerance, depthTolerance);
  const rows = makeRowJudge(design, { sheet, board, allowance }, { judge, tallies, tolerance });
  const watch = watchOutline(design, tolerance * CHORD_SHARE, depthTolerance, cell);
  const steps = stepsOf(programs);
  const rapids = new Map<number, { at: Point; thickness: number }>();
  let samples = 0;
  for (const band of bands(sheet, cell)) {
    rows.clear(band);
    runSteps(band, steps, rapids);
    watch.look(band);
    samples += rows.judge(band);
    progress?.(Math.min(1, (samples * cell * cell) / (design.stock.width * design.stock.height)));
  }
  return { ...figures(tallies, cell), cell, samples, offSheet: reachBeyond(design.stock, programs), outline: watch.found(),
    rapidsThroughMaterial: firstRapid(rapids) };
}

function figures(tallies: Tallies, cell: number): Pick<Proof, 'wrongCut' | 'remainder' | 'unreachable' | 'strayCut' | 'spoilboardCut' | 'depthError'> {
  const { tooDeep, tooShallow } = tallies;
  const worst = tooDeep.mm >= tooShallow.mm ? tooDeep : tooShallow;
  return {
    wrongCut: faultOf(tallies.wrongCut, cell),
    remainder: faultOf(tallies.remainder, cell),
    unreachable: faultOf(tallies.unreachable, cell),
    strayCut: faultOf(tallies.strayCut, cell),
    spoilboardCut: faultOf(tallies.spoilboardCut, cell),
    depthError: { mm: worst.mm, ...placeOf(worst), tooDeep: tooDeep.mm, tooShallow: tooShallow.mm },
  };
}

function requirePositive(sizes: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(sizes)) {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`proof: ${name} ${value} mm: expected a number above 0`);
  }
}

function sheetRegion({ stock: { width, height } }: DesignSurface): Region {
  return { loops: [[{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }]] };
}

function stepsOf(programs: readonly ProvenProgram[]): Step[] {
  const steps: Step[] = [];
  let order = 0;
  for (const { start, moves, cutterDiameter, shift } of programs) {
    let from = placeToFrame(start, shift);
    for (const move of moves) {
      const moved = moveToFrame(move, shift);
      const swath = swathOf(from, moved, cutterDiameter / 2);
      if (swath) steps.push({ swath, rapid: move.kind === 'rapid', order });
      from = moved.to;
      order++;
    }
  }
  return steps;
}

/** Grids one above the other that cover the sheet; all share one buffer. */
function* bands(sheet: Region, cell: number): Generator<DepthGrid> {
  const corners = sheet.loops[0]!.map(toFrame);
  const [minX, minY] = [Math.min(...corners.map((p) => p.x)), Math.min(...corners.map((p) => p.y))];
  const columns = Math.ceil((Math.max(...corners.map((p) => p.x)) - minX) / cell);
  const rows = Math.ceil((Math.max(...corners.map((p) => p.y)) - minY) / cell);
  const most = Math.min(rows, Math.max(1, Math.floor(BAND_CELLS / columns)));
  const buffer = new Float32Array(most * columns);
  for (let row = 0; row < rows; row += most) {
    const count = Math.min(most, rows - row);
    yield { origin: { x: minX, y: minY + row * cell }, cell, columns, rows: count, depth: buffer.subarray(0, count * columns) };
  }
}

function runSteps(band: DepthGrid, steps: readonly Step[], rapids: Map<number, { at: Point; thickness: number }>): void {
  const [bottom, top] = [band.origin.y, band.origin.y + band.rows * band.cell];
  for (const { swath, rapid, order } of steps) {
    if (swath.box.maxY < bottom || swath.box.minY > top) continue;
    if (!rapid) {
      removeSwath(band, swath);
      continue;
    }
    const met = removeByRapid(band, swath);
    if (met && met.thickness > (rapids.get(order)?.thickness ?? 0)) rapids.set(order, met);
  }
}

function firstRapid(rapids: ReadonlyMap<number, { at: Point }>): Proof['rapidsThroughMaterial'] {
  if (rapids.size === 0) return { count: 0 };
  const first = [...rapids.keys()].reduce((least, order) => Math.min(least, order), Infinity);
  return { count: rapids.size, at: fromFrame(rapids.get(first)!.at) };
}
