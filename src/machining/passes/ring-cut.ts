import { distance, type Point } from '../../geometry/index.ts';
import { type EntryStyle, rampRoundLoop } from './entry.ts';
import { rampLength } from '../job/feeds.ts';
import { type Recorder } from './recorder.ts';
import { pointAt, type Track, trackPart } from './track.ts';
import { nearestOnTrack } from './track-query.ts';

/** One closed track of an area's clearing; a higher level lies deeper inside the area and is cut earlier. */
export interface Ring {
  readonly track: Track;
  readonly level: number;
}

export interface RingCut {
  readonly rings: readonly Ring[];
  /** Heights of the layers, from the top down. */
  readonly layers: readonly number[];
  readonly style: EntryStyle;
  /** Whether the cutter may go straight from one place to the other at the height of the layer. */
  readonly mayCross: (from: Point, to: Point) => boolean;
}

/** A cutter goes on round a finished ring by up to this far, mm, to where it can cross to the next: about what lifting and a new ramp cost. */
const FARTHEST_ON = 80;
/** Distance between the places tried on the way, in diameters. */
const TRIED_EVERY = 0.25;

/**
 * Clears an area layer by layer, its inner rings first. Where it can, the cutter stays down on the way to the next ring,
 * going on round the ring it has cut until it may cross over; else it comes down anew, over the floor of the layer
 * before. It always enters by a ramp.
 */
export function cutRings(recorder: Recorder, cut: RingCut): void {
  const { rings, layers, style } = cut;
  const levels = [...new Set(rings.map(({ level }) => level))].sort((a, b) => b - a);
  let floor = 0;
  let last: Standing | undefined;
  for (const z of layers) {
    for (const level of levels) {
      const waiting = rings.filter((ring) => ring.level === level);
      while (waiting.length > 0) {
        const crossing = last && findCrossing(cut, waiting, last);
        const next = crossing ?? comeDownTo(recorder, waiting, z - floor, cut, last);
        const [{ track }] = waiting.splice(next.index, 1) as [Ring];
        if (crossing && last) {
          recorder.along(trackPart(last.track, last.at, crossing.leaves), recorder.where()!.z, style.feeds.cut);
          recorder.lineTo({ ...crossing.point, z: recorder.where()!.z }, style.feeds.cut);
        } else {
          recorder.comeDown(next.point, floor);
        }
        last = { track, at: rampRoundLoop(recorder, track, next.at, z, style) };
      }
    }
    floor = z;
  }
}

/** A ring just cut, and how far along it the cutter stands. */
interface Standing {
  readonly track: Track;
  readonly at: number;
}

/** Which of the waiting rings to cut next, and the place where it is joined. */
interface Joint {
  readonly index: number;
  readonly at: number;
  readonly point: Point;
}

/** The first place on the way round the last ring from which the cutter may cross to one that waits: to the nearest of them. */
function findCrossing({ mayCross, style }: RingCut, waiting: readonly Ring[], { track, at }: Standing): (Joint & { readonly leaves: number }) | undefined {
  const step = TRIED_EVERY * style.cutter.diameter;
  const far = Math.min(FARTHEST_ON, track.length);
  for (let on = 0; on <= far; on += step) {
    const place = pointAt(track, at + on);
    const joint = nearestJoint(waiting, place);
    if (mayCross(place, joint.point)) return { ...joint, leaves: at + on };
  }
  return undefined;
}

/** Where to come down: on the ring nearest to the last one, a ramp's length before the place closest to another ring that waits. */
function comeDownTo(recorder: Recorder, waiting: readonly Ring[], drop: number, { style }: RingCut, last: Standing | undefined): Joint {
  const here = last && recorder.where();
  const { index, at, point } = here ? nearestJoint(waiting, here) : { index: 0, at: 0, point: pointAt(waiting[0]!.track, 0) };
  const others = waiting.filter((_, i) => i !== index);
  if (others.length === 0) return { index, at, point };
  const { track } = waiting[index]!;
  const towards = closestTo(track, others) - rampLength(-drop, style.cutter.rampAngle);
  return { index, at: towards, point: pointAt(track, towards) };
}

/** Places looked at along a ring for where it comes closest to others. */
const CANDIDATES = 64;

/** Distance along a ring of its place closest to any of the others. */
function closestTo(track: Track, others: readonly Ring[]): number {
  let best = { at: 0, away: Infinity };
  for (let i = 0; i < CANDIDATES; i++) {
    const at = (track.length * i) / CANDIDATES;
    const place = pointAt(track, at);
    const { point } = nearestJoint(others, place);
    const away = distance(point, place);
    if (away < best.away) best = { at, away };
  }
  return best.at;
}

/** The nearest place of any of the rings. */
function nearestJoint(rings: readonly Ring[], from: Point): Joint {
  let best: Joint = { index: 0, at: 0, point: pointAt(rings[0]!.track, 0) };
  let least = Infinity;
  rings.forEach(({ track }, index) => {
    const nearest = nearestOnTrack(track, from);
    if (nearest && nearest.distance < least) {
      least = nearest.distance;
      best = { index, at: nearest.at, point: nearest.point };
    }
  });
  return best;
}
