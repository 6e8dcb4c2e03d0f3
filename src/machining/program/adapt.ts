import { type Point3 } from '../../geometry/point.ts';
import { type Controller } from '../job/machine.ts';
import { PROGRAM_START, arcRadius, arcSweep, chordCount, pointOnArc, type ArcMove } from '../job/moves.ts';
import { type Move } from '../job/pass.ts';
import { lastDecimal, radiusLimit, roundFeed, roundLength } from './resolution.ts';

/** Most degrees in one arc: full circles in one line are read differently by different controllers. */
const LONGEST_TURN = 180;
/** Rounding noise in a turn of exactly half a circle must not split it. */
const TURN_NOISE = 1e-6;
/** How many units of the last decimal rounding may lengthen or shorten an arc; more means that its direction was lost. */
const ARC_SLACK = 8;
/** Mismatch of the radii is compared after printing and reading: keep clear of the limit by more than the noise of that. */
const RADIUS_NOISE = 1e-6;
/** Flatter arcs, radius in mm, are written as lines: a chord of 50 mm strays 0.003 mm, and the centre takes more digits than controllers keep. */
const LARGEST_RADIUS = 1e5;

interface Target {
  readonly controller: Controller;
  readonly tolerance: number;
}

/**
 * The moves as this controller can say them, to be printed without any further loss: ends rounded to its decimals (in
 * its units), arcs cut into at most half circles with their centres rounded anew from their rounded starts, and moves
 * of no length dropped. An arc becomes lines, with a chord deviation up to `tolerance` plus half a unit of the last
 * decimal, where the controller has no arcs (or none that change height), where it is nearly straight, or where its two
 * radii would differ by more than the standard allows after rounding. Throws a RangeError on coordinates or feeds that are not finite.
 */
export function adaptMoves(moves: readonly Move[], controller: Controller, tolerance: number, start: Point3 = PROGRAM_START): Move[] {
  if (!(tolerance > 0)) throw new RangeError(`tolerance must be above 0 mm, not ${tolerance}`);
  const target = { controller, tolerance };
  const adapted: Move[] = [];
  let planned = start;
  let reached = roundPlace(start, controller);
  for (const move of moves) {
    const said = move.kind === 'arc' ? sayArc(reached, planned, move, target) : sayStraight(reached, move, controller);
    for (const one of said) adapted.push(one);
    planned = move.to;
    reached = said[said.length - 1]?.to ?? reached;
  }
  return adapted;
}

const roundPlace = ({ x, y, z }: Point3, controller: Controller): Point3 =>
  ({ x: roundLength(x, controller), y: roundLength(y, controller), z: roundLength(z, controller) });

function sayStraight(from: Point3, move: Exclude<Move, ArcMove>, controller: Controller): Move[] {
  const to = roundPlace(move.to, controller);
  if (to.x === from.x && to.y === from.y && to.z === from.z) return [];
  return [move.kind === 'rapid' ? { kind: 'rapid', to } : { kind: 'line', to, feed: roundFeed(move.feed, controller) }];
}

function sayArc(reached: Point3, planned: Point3, arc: ArcMove, target: Target): Move[] {
  const { controller } = target;
  if (controller.arcs === 'lines' || (arc.to.z !== planned.z && !controller.helicalArcs) || arcRadius(planned, arc) > LARGEST_RADIUS) {
    return sayLines(reached, planned, arc, target);
  }
  const sweep = arcSweep(planned, arc);
  const count = Math.max(1, Math.ceil(sweep / LONGEST_TURN - TURN_NOISE));
  const said: Move[] = [];
  let from = planned;
  let at = reached;
  for (let k = 1; k <= count; k++) {
    const piece = { ...arc, to: pointOnArc(planned, arc, k / count) };
    const moves = sayPiece(at, from, { arc: piece, sweep: sweep / count }, target);
    said.push(...moves);
    from = piece.to;
    at = moves[moves.length - 1]?.to ?? at;
  }
  return said;
}

/** One arc of at most half a circle: as an arc if that survives rounding, else as lines. */
function sayPiece(reached: Point3, planned: Point3, { arc, sweep }: { arc: ArcMove; sweep: number }, target: Target): Move[] {
  const { controller } = target;
  const to = roundPlace(arc.to, controller);
  const rounded: ArcMove = {
    ...arc,
    to,
    feed: roundFeed(arc.feed, controller),
    centre: {
      x: reached.x + roundLength(arc.centre.x - reached.x, controller),
      y: reached.y + roundLength(arc.centre.y - reached.y, controller),
    },
  };
  return isFaithful(reached, rounded, sweep, controller) ? [rounded] : sayLines(reached, planned, arc, target);
}

function isFaithful(from: Point3, arc: ArcMove, sweep: number, controller: Controller): boolean {
  const radius = arcRadius(from, arc);
  // A centre on one of the ends is no centre; so near to them it says no more than a line does.
  if (Math.min(radius, arcRadius(arc.to, arc)) < ARC_SLACK * lastDecimal(controller)) return false;
  if (Math.abs(radius - arcRadius(arc.to, arc)) > radiusLimit(controller) - RADIUS_NOISE) return false;
  // On a short arc rounding can turn the chord round, or leave none: the rest of the circle would be cut.
  const change = (Math.abs(arcSweep(from, arc) - sweep) * Math.PI) / 180;
  return change * radius <= ARC_SLACK * lastDecimal(controller);
}

function sayLines(reached: Point3, planned: Point3, arc: ArcMove, { controller, tolerance }: Target): Move[] {
  const count = chordCount(arcRadius(planned, arc), arcSweep(planned, arc), Math.max(tolerance, lastDecimal(controller) / 2));
  const said: Move[] = [];
  let at = reached;
  for (let k = 1; k <= count; k++) {
    const line = sayStraight(at, { kind: 'line', to: pointOnArc(planned, arc, k / count), feed: arc.feed }, controller);
    said.push(...line);
    at = line[0]?.to ?? at;
  }
  return said;
}
