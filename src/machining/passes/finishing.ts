import { cross, distance, dot, leftNormal, type Point, scale, subtract } from '../../geometry/index.ts';
import { type EntryStyle, rampRoundLoop } from './entry.ts';
import { type ClearedSpace, type DepthInside, nearestCleared, segmentStaysInside, trackStaysInside } from './free-space.ts';
import { type Recorder } from './recorder.ts';
import { arcPieces, arcTurn, directionAt, linePiece, pointAt, type Track, trackFromPieces, trackPart } from './track.ts';
import { turningNear } from './track-query.ts';

export interface FinishingCut {
  /** Closed, in the direction of travel, exactly where the wall is to be. */
  readonly track: Track;
  readonly cleared: ClearedSpace;
  readonly inside: DepthInside;
  /** Least depth inside the region that the cutter's axis must keep, mm: its radius less what tolerances allow. */
  readonly inset: number;
  /** Height of the floor; the cut is made there in one go. */
  readonly z: number;
  /** Heights for the case that nothing beside the wall has been cleared yet. */
  readonly layers: readonly number[];
  readonly style: EntryStyle;
}

/** Places looked at along a wall for the start of its finishing cut. */
const CANDIDATES = 48;
/** A cleared place farther off than this many cutter diameters does not help to reach the wall. */
const FARTHEST = 1;
/** Longest crossing at full depth through cleared space, in cutter diameters. */
const LONGEST_CROSSING = 3;
/** A lead joins the wall this many times its sideways step ahead, so that it arrives at a shallow angle. */
const LEAD = 1.5;

interface Lead {
  readonly from: Point;
  readonly track: Track;
  /** Distance along the wall where the lead joins it. */
  readonly joins: number;
}

/**
 * Cuts along a wall once round at full depth, from cleared space by a tangent or slanting lead, past the start by an
 * overlap, and off the wall again. Without cleared space in reach the wall is cut layer by layer, entered by ramps.
 */
export function finishWall(recorder: Recorder, cut: FinishingCut): void {
  const { track, style, z } = cut;
  const lead = findLead(cut, recorder.where());
  if (!lead) {
    recorder.comeDown(pointAt(track, 0), 0);
    let at = 0;
    for (const layer of cut.layers) at = rampRoundLoop(recorder, track, at, layer, style);
    return;
  }
  reach(recorder, cut, lead.from);
  recorder.lineTo({ ...lead.from, z }, style.feeds.plunge);
  recorder.along(lead.track, z, style.feeds.finish);
  const overlap = Math.min(style.cutter.diameter / 2, track.length / 4);
  const end = lead.joins + track.length + overlap;
  recorder.along(trackPart(track, lead.joins, end), z, style.feeds.finish);
  leave(recorder, cut, end);
}

/** Brings the cutter to a cleared place: straight across at full depth when it is down there already, else from above. */
function reach(recorder: Recorder, { inside, inset, style, z }: FinishingCut, place: Point): void {
  const here = recorder.where();
  const near = here && Math.abs(here.z - z) < 1e-9 && distance(here, place) <= LONGEST_CROSSING * style.cutter.diameter;
  if (near && segmentStaysInside(inside, here, place, inset)) recorder.lineTo({ ...place, z }, style.feeds.cut);
  else recorder.comeDown(place, z);
}

/** The best place to begin: close to cleared space, where the wall is straight, and not far from the cutter. */
function findLead(cut: FinishingCut, here: Point | undefined): Lead | undefined {
  const { track, cleared, style } = cut;
  const { diameter } = style.cutter;
  const places = Array.from({ length: CANDIDATES }, (_, i) => {
    const at = (track.length * i) / CANDIDATES;
    const wall = pointAt(track, at);
    const near = nearestCleared(cleared, wall);
    const away = near?.distance ?? Infinity;
    const cost = away + turningNear(track, at, diameter / 4) * diameter + (here ? distance(here, wall) / 100 : 0);
    return { at, near, away, cost };
  });
  const usable = places.filter(({ away }) => away <= FARTHEST * diameter).sort((a, b) => a.cost - b.cost || a.at - b.at);
  for (const { at, near, away } of usable) {
    const lead = leadFrom(cut, near!.point, at, away);
    if (lead) return lead;
  }
  return undefined;
}

function leadFrom(cut: FinishingCut, from: Point, at: number, away: number): Lead | undefined {
  const { track, inside, inset } = cut;
  const ahead = at + Math.min(LEAD * away, track.length / 4);
  const tangent = tangentLead(track, from, ahead);
  if (tangent && trackStaysInside(inside, tangent, inset)) return { from, track: tangent, joins: ahead };
  for (const joins of [ahead, at]) {
    const wall = pointAt(track, joins);
    if (segmentStaysInside(inside, from, wall, inset)) return { from, track: trackFromPieces([linePiece(from, wall)], false), joins };
  }
  return undefined;
}

/**
 * The arc from a point that joins a track in its direction of travel; undefined when it would turn by more than a
 * right angle. Its radius is the squared distance over twice the sideways part of it (tangent and chord).
 */
function tangentLead(track: Track, from: Point, joins: number): Track | undefined {
  const wall = pointAt(track, joins);
  const direction = directionAt(track, joins);
  const back = subtract(from, wall);
  if (dot(back, direction) > -1e-9) return undefined;
  const sideways = cross(direction, back);
  if (Math.abs(sideways) < 1e-6) return trackFromPieces([linePiece(from, wall)], false);
  const radius = dot(back, back) / (2 * sideways);
  const normal = scale(leftNormal(direction), radius);
  const centre = { x: wall.x + normal.x, y: wall.y + normal.y };
  const turn = arcTurn(from, wall, centre, radius < 0);
  if (Math.abs(turn) > Math.PI / 2) return undefined;
  return trackFromPieces(arcPieces(from, wall, centre, turn), false);
}

/** Goes off the wall to cleared space, slanting forward where that stays inside, so that lifting leaves no mark. */
function leave(recorder: Recorder, { track, cleared, inside, inset, style, z }: FinishingCut, end: number): void {
  const here = pointAt(track, end);
  const away = nearestCleared(cleared, here)?.distance ?? 0;
  for (const ahead of [LEAD * away, 0]) {
    const target = nearestCleared(cleared, pointAt(track, end + ahead));
    if (target && segmentStaysInside(inside, here, target.point, inset)) {
      recorder.lineTo({ ...target.point, z }, style.feeds.finish);
      return;
    }
  }
}
