import { leftNormal, type Point, scale } from '../../geometry/index.ts';
import { type EntryStyle, rampBackAndForth } from './entry.ts';
import { type DepthInside, segmentStaysInside, trackStaysInside } from './free-space.ts';
import { type CutDirection } from './groove-request.ts';
import { type Recorder } from './recorder.ts';
import { arcPieces, directionAt, pointAt, type Track, trackFromPieces, trackPart } from './track.ts';
import { turningNear } from './track-query.ts';

/** An arc from the waste that joins an outline in its direction of travel. */
export interface OutlineLead {
  readonly arc: Track;
  /** Distance along the outline where the arc joins it. */
  readonly joins: number;
}

/** Where the cutter's axis may go: far enough from the board, and on the sheet. */
export interface LeadRoom {
  /** Depths in the waste, negative inside the board. */
  readonly waste: DepthInside;
  /** Least distance from the board, mm. */
  readonly inset: number;
  readonly onSheet: (point: Point) => boolean;
}

/** Places looked at along an outline. */
const CANDIDATES = 64;

/** A quarter circle of this radius that leads onto the outline at a straight place; undefined where there is no room for it. */
export function findOutlineLead(track: Track, radius: number, direction: CutDirection, room: LeadRoom): OutlineLead | undefined {
  if (!(radius > 0)) return undefined;
  const places = Array.from({ length: CANDIDATES }, (_, i) => (track.length * (i + 0.5)) / CANDIDATES)
    .map((at) => ({ at, turning: turningNear(track, at, radius) }))
    .sort((a, b) => a.turning - b.turning || a.at - b.at);
  for (const { at } of places) {
    const arc = leadArc(track, at, radius, direction);
    if (room.onSheet(arc.pieces[0]!.from) && trackStaysInside(room.waste, arc, room.inset)) return { arc, joins: at };
  }
  return undefined;
}

/** The waste lies on the left when climbing, so the arc turns left there; on the right, and turning right, otherwise. */
function leadArc(track: Track, at: number, radius: number, direction: CutDirection): Track {
  const side = direction === 'climb' ? 1 : -1;
  const wall = pointAt(track, at);
  const along = directionAt(track, at);
  const toCentre = scale(leftNormal(along), side * radius);
  const centre = { x: wall.x + toCentre.x, y: wall.y + toCentre.y };
  const from = { x: centre.x - along.x * radius, y: centre.y - along.y * radius };
  return trackFromPieces(arcPieces(from, wall, centre, (side * Math.PI) / 2), false);
}

/** Cuts a closed outline layer by layer, each layer entered by a ramp in the waste and a tangent arc, and left into the waste. */
export function cutLoopWithLead(recorder: Recorder, track: Track, { arc, joins }: OutlineLead, layers: readonly number[], style: EntryStyle, room: LeadRoom): void {
  const from = arc.pieces[0]!.from;
  let floor = 0;
  for (const z of layers) {
    const here = recorder.where();
    if (here && here.z < 0 && segmentStaysInside(room.waste, here, from, room.inset)) recorder.lineTo({ ...from, z: here.z }, style.feeds.cut);
    else recorder.comeDown(from, floor);
    rampBackAndForth(recorder, arc, z, style);
    recorder.along(arc, z, style.feeds.cut);
    recorder.along(trackPart(track, joins, joins + track.length), z, style.feeds.cut);
    floor = z;
  }
  const end = pointAt(track, joins);
  if (segmentStaysInside(room.waste, end, from, room.inset)) recorder.lineTo({ ...from, z: floor }, style.feeds.cut);
}
