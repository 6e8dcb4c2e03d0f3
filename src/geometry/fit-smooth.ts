import { biarc, turnBetween } from './biarc.ts';
import { followsPolyline } from './fit-check.ts';
import { type Gate } from './fit-gates.ts';
import { arcToward, type FitPiece, lineBetween, pieceEndTangent, pieceLength } from './fit-piece.ts';
import { type Point } from './point.ts';

/** A stretch of smooth polyline to fit, with the places and directions its pieces may start and end at. */
export interface SmoothStretch {
  readonly points: readonly Point[];
  readonly from: number;
  readonly to: number;
  readonly start: Gate;
  readonly end: Gate;
  /** The gate at a point between `from` and `to`. */
  readonly gateAt: (index: number) => Gate;
  readonly tolerance: number;
}

/** Where some pieces end, and in which direction. */
interface Reach {
  readonly index: number;
  readonly pieces: readonly FitPiece[];
  readonly gate: Gate;
}

/** Fixed ends: a single arc may miss the direction there by this much (radians, 0.02 degree). */
const END_SLACK = 3.5e-4;

/** Between the ends: a single arc may leave a direction off by what strays this share of the tolerance over its own length. */
const GATE_SHARE = 0.2;

/**
 * Arcs and lines along the stretch, each tangent to the next: from every gate the farthest single arc or the farthest
 * biarc that stays within the tolerance, whichever gets on farther for its number of arcs.
 */
export function fitSmooth(stretch: SmoothStretch): FitPiece[] {
  const pieces: FitPiece[] = [];
  let [index, gate] = [stretch.from, stretch.start];
  let guess = 8;
  while (index < stretch.to) {
    const reach = farthestReach(stretch, index, gate, guess);
    pieces.push(...reach.pieces);
    guess = reach.index - index;
    ({ index, gate } = reach);
  }
  return pieces;
}

function farthestReach(stretch: SmoothStretch, index: number, gate: Gate, guess: number): Reach {
  const two = farthest(stretch, index, guess, (to) => biarcTo(stretch, index, gate, to));
  const one = farthest(stretch, index, Math.ceil(guess / 2), (to) => arcTo(stretch, index, gate, to));
  if (one !== undefined && (two === undefined || one.index === two.index || lengthOf(one) > lengthOf(two) / 2)) return one;
  return two ?? chordTo(stretch, gate, index + 1);
}

const lengthOf = (reach: Reach) => reach.pieces.reduce((total, piece) => total + pieceLength(piece), 0);

/** The last resort: the polyline's own edge. Its direction is the polyline's, not the neighbours'. */
function chordTo(stretch: SmoothStretch, gate: Gate, to: number): Reach {
  const end = endGate(stretch, to);
  const line = lineBetween(gate.point, end.point);
  return { index: to, pieces: [line], gate: end };
}

const endGate = (stretch: SmoothStretch, index: number): Gate => (index === stretch.to ? stretch.end : stretch.gateAt(index));

function biarcTo(stretch: SmoothStretch, from: number, gate: Gate, to: number): Reach | undefined {
  const end = endGate(stretch, to);
  const pieces = biarc(gate.point, gate.tangent, end.point, end.tangent);
  return pieces && followsPolyline(stretch.points, from, to, pieces, stretch.tolerance) ? { index: to, pieces, gate: end } : undefined;
}

function arcTo(stretch: SmoothStretch, from: number, gate: Gate, to: number): Reach | undefined {
  const end = endGate(stretch, to);
  const piece = arcToward(gate.point, gate.tangent, end.point);
  const tangent = pieceEndTangent(piece);
  const slack = to === stretch.to ? END_SLACK : Math.max(END_SLACK, (GATE_SHARE * stretch.tolerance) / pieceLength(piece));
  if (Math.abs(turnBetween(tangent, end.tangent)) > slack) return undefined;
  if (!followsPolyline(stretch.points, from, to, [piece], stretch.tolerance)) return undefined;
  return { index: to, pieces: [piece], gate: { point: end.point, tangent } };
}

/**
 * The farthest index that `attempt` reaches: steps doubled while they succeed or halved while they fail, then the gap
 * between the last success and the first failure halved. About 2 log2 attempts, each over the points it spans.
 */
function farthest(stretch: SmoothStretch, from: number, guess: number, attempt: (to: number) => Reach | undefined): Reach | undefined {
  let step = Math.min(Math.max(1, guess), stretch.to - from);
  let best = attempt(from + step);
  let failed = best === undefined ? from + step : stretch.to + 1;
  while (best === undefined && step > 1) {
    step = Math.floor(step / 2);
    best = attempt(from + step);
    if (best === undefined) failed = from + step;
  }
  while (best !== undefined && failed - best.index > 1) {
    const grown = from + 2 * (best.index - from);
    const to = failed > stretch.to ? Math.min(grown, stretch.to) : Math.floor((best.index + failed) / 2);
    const next = attempt(to);
    if (next === undefined) failed = to;
    else best = next;
  }
  return best;
}
