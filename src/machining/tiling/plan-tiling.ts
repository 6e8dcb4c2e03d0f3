import type { Box } from '../../geometry/index.ts';
import { type MachiningProblem, type MachiningProblems, millimetres } from '../job/problem.ts';
import type { Seam, Tile } from '../job/tiling.ts';
import { type AxisWork, axisWork, hasWork, workBoxes } from './axis-work.ts';
import { type TileLimits, cheapestSeams, fewestFromEnd, fewestSeams, tileExtent } from './choose-seams.ts';
import { featuresAlong, workLines } from './features.ts';
import { AXES, MARGIN, type Axis, type AxisPlan, type SeamClearance, type TilingPlan, type TilingRequest } from './request.ts';
import { type CostField, costField } from './seam-cost.ts';
import { type Shifts, shiftsFor } from './shifts.ts';

export type TilingOutcome = ({ readonly ok: true } & TilingPlan) | { readonly ok: false; readonly problems: MachiningProblems };

/** Kept of the travel so that shifts can be whole hundredths, mm. */
const ROUNDING = 0.02;

/** One axis, all but its tiles. */
interface AxisLayout extends AxisPlan {
  readonly work: AxisWork;
  readonly field: CostField;
  readonly extents: readonly (readonly [number, number])[];
  readonly frame: number;
}

/**
 * Plans in how many set-ups a sheet is cut, and where its seams lie: for each axis the fewest tiles the travel allows,
 * then the least cost of seams (see `costField`), then even sizes. Seams put by hand are taken as they are.
 * Throws a RangeError without cutters.
 */
export function planTiling(request: TilingRequest): TilingOutcome {
  const { cutters, travel, sheet } = request;
  if (cutters.length === 0) throw new RangeError('a tiling is planned for at least one cutter');
  const lap = Math.max(request.lap, ...cutters);
  const lines = workLines(request);
  const boxes = workBoxes(request);
  const layouts = AXES.map((axis, i) => {
    const features = featuresAlong(lines, axis);
    const field = costField(lines.lines, features, axis, lap + MARGIN);
    const work = axisWork(boxes, axis, axis === 'x' ? sheet.width : sheet.height);
    return layOut({ request, axis, field, work, lap, frame: travel[i]! + Math.min(...cutters) });
  });
  const problems = layouts.filter((layout) => 'problem' in layout).map(({ problem }) => problem);
  if (problems.length > 0) return { ok: false, problems: problems as unknown as MachiningProblems };
  const [x, y] = layouts as [AxisLayout, AxisLayout];
  return { ok: true, ...composed(request, lap, [x, y]) };
}

interface AxisRequest {
  readonly request: TilingRequest;
  readonly axis: Axis;
  readonly field: CostField;
  readonly work: AxisWork;
  readonly lap: number;
  /** How far cutters' edges can range: the travel and the narrowest cutter. */
  readonly frame: number;
}

function layOut(of: AxisRequest): AxisLayout | { readonly problem: MachiningProblem } {
  const { request, axis, field, work, lap, frame } = of;
  const one = work.ends[1] - work.ends[0] <= frame;
  const limits: TileLimits = { frame: frame - (one ? 0 : ROUNDING), lap };
  const fewest = fewestSeams(work, limits);
  const hand = request.byHand[axis];
  if (fewest === undefined) return { problem: travelTooShort(of) };
  const seams = hand ? [...new Set(hand)].sort((a, b) => a - b) : plannedSeams(of, limits, fewest);
  const bounds = [undefined, ...seams, undefined];
  const extents = bounds.slice(1).map((to, i) => tileExtent(work, limits, bounds[i], to));
  const reaches = extents.map(([low, high]) => Math.max(0, high - low - Math.min(...request.cutters)));
  const widest = reaches.indexOf(Math.max(...reaches));
  return {
    axis, seams, work, field, extents, frame, least: fewest.length + 1, byHand: hand !== undefined,
    evenCrossings: evenly(work, seams.length).reduce((sum, place) => sum + field.crossingsAt(place).length, 0),
    widest: { reach: reaches[widest]!, index: widest },
  };
}

/** The seams that cost least, at whole steps, or finer where the fewest seams leave little room. */
function plannedSeams({ request: { step = 1 }, field, work }: AxisRequest, limits: TileLimits, fewest: readonly number[]): number[] {
  if (fewest.length === 0) return [];
  const [low, high] = work.ends;
  const whole = Array.from({ length: Math.max(0, Math.ceil(high / step) - Math.floor(low / step) - 1) }, (_, i) => (Math.floor(low / step) + 1 + i) * step);
  const fromEnd = fewestFromEnd(work, limits);
  const fine = fewest.flatMap((most, i) => finePlaces(fromEnd[i] ?? most, most, step));
  const places = [...new Set([...whole, ...fine])].sort((a, b) => a - b);
  return cheapestSeams(work, limits, places, field.costsAt(places)) ?? [...fewest];
}

/** Ends of a seam's room, and places between them where that is narrow; whole hundredths where there are any. */
function finePlaces(low: number, high: number, step: number): number[] {
  const parts = high - low < FINE_PARTS * step ? FINE_PARTS : 1;
  return Array.from({ length: parts + 1 }, (_, i) => {
    const place = low + (i / parts) * (high - low);
    return [Math.round, Math.floor, Math.ceil].map((to) => to(place * 100) / 100).find((round) => round >= low && round <= high) ?? place;
  });
}

const FINE_PARTS = 20;

function evenly({ ends: [low, high] }: AxisWork, seams: number): number[] {
  return Array.from({ length: seams }, (_, i) => low + ((i + 1) * (high - low)) / (seams + 1));
}

function travelTooShort({ axis, lap, frame, request }: AxisRequest): MachiningProblem {
  const travel = request.travel[axis === 'x' ? 0 : 1];
  const letter = axis.toUpperCase();
  return {
    place: 'machine', expected: `travel along ${letter} well over ${millimetres(travel + 2 * lap - frame)} mm, two laps less a cutter`, found: `${millimetres(travel)} mm`,
    advice: `Turn the work so that it is shorter along ${letter}, take a narrower cutter or a smaller lap, or a larger machine.`,
  };
}

function composed(request: TilingRequest, lap: number, axes: readonly [AxisLayout, AxisLayout]): TilingPlan {
  const [x, y] = axes;
  const zero = -Math.min(...request.cutters) / 2;
  const shifts = axes.map(({ extents, frame }) => shiftsFor(extents, frame, zero)) as [Shifts, Shifts];
  const cells = cellsInOrder(x.seams.length + 1, y.seams.length + 1, request.order);
  const all = cells.map(([column, row]) => tileOf({ axes, shifts, lap }, column, row));
  const worked = all.filter(({ core }) => hasWork(request, core));
  const busy = worked.length > 0 ? worked : all;
  const tiles = busy.map((tile, i): Tile => ({
    ...tile, name: `set-up ${i + 1}`, shift: [hundredths(tile.shift[0] - busy[0]!.shift[0]), hundredths(tile.shift[1] - busy[0]!.shift[1])],
  }));
  const seams = axes.flatMap(({ axis, seams, field }) => seams.map((at): Seam => ({ axis, at, crossings: field.crossingsAt(at), cost: field.costsAt([at])[0]! })));
  return {
    tiling: { tiles, seams, lap, travel: request.travel },
    axes: [axisPlanOf(x), axisPlanOf(y)],
    clearances: axes.flatMap(({ seams, field }) => seams.map((at) => field.nearest(at))).map((found, seam): SeamClearance => ({ seam, wanted: lap + MARGIN, ...found })),
    idle: all.length - busy.length,
  };
}

const axisPlanOf = ({ axis, seams, least, evenCrossings, byHand, widest }: AxisLayout): AxisPlan => ({ axis, seams, least, evenCrossings, byHand, widest });

const hundredths = (value: number): number => Math.round(value * 100) / 100;

/** To and fro, so that set-ups that follow each other are neighbours. */
function cellsInOrder(columns: number, rows: number, order: TilingRequest['order']): [number, number][] {
  const [outer, inner] = order === 'rows' ? [rows, columns] : [columns, rows];
  return Array.from({ length: outer * inner }, (_, i): [number, number] => {
    const line = Math.floor(i / inner), along = line % 2 === 0 ? i % inner : inner - 1 - (i % inner);
    return order === 'rows' ? [along, line] : [line, along];
  });
}

interface Grid {
  readonly axes: readonly [AxisLayout, AxisLayout];
  readonly shifts: readonly [Shifts, Shifts];
  readonly lap: number;
}

function tileOf({ axes: [x, y], shifts: [alongX, alongY], lap }: Grid, column: number, row: number): Tile {
  const [xs, ys] = [tileSpan(x, alongX, lap, column), tileSpan(y, alongY, lap, row)];
  const box = (key: 'core' | 'window'): Box => ({ minX: xs[key][0], maxX: xs[key][1], minY: ys[key][0], maxY: ys[key][1] });
  return { name: '', column, row, core: box('core'), window: box('window'), shift: [alongX.shifts[column]!, alongY.shifts[row]!] };
}

/** Between its seams, and with the lap as far as the machine reaches; a tile that is too long for it keeps its whole window. */
function tileSpan({ seams, work: { outer }, extents, frame }: AxisLayout, { shifts, start }: Shifts, lap: number, index: number): { readonly core: readonly [number, number]; readonly window: readonly [number, number] } {
  const [from, to] = [seams[index - 1], seams[index]];
  const [low, high] = [from === undefined ? outer[0] : from - lap, to === undefined ? outer[1] : to + lap];
  const [first, last] = extents[index]!;
  const reached = start + shifts[index]!;
  const window = last - first > frame ? [low, high] as const : [Math.max(low, Math.min(reached, first)), Math.min(high, Math.max(reached + frame, last))] as const;
  return { core: [from ?? outer[0], to ?? outer[1]], window };
}
