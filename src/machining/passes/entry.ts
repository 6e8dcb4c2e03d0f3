import { type Cutter } from '../job/cutter.ts';
import { type CuttingFeeds } from './cutting-data.ts';
import { rampLength } from '../job/feeds.ts';
import { AIR_GAP, type Recorder } from './recorder.ts';
import { type Track, reverseTrack, trackPart } from './track.ts';

/** How the cutter enters the material. */
export interface EntryStyle {
  readonly cutter: Cutter;
  readonly feeds: CuttingFeeds;
}

/** A ramp that would need more turns, or more ways back and forth, than this is a hole in all but name: it is drilled. */
const MOST_TURNS = 60;

/**
 * From where the recorder is (at distance `at` of a closed track), ramps down to `z` along the track, as many turns as
 * it takes, and then follows it once round at that height, so that no wedge of the ramp is left. Returns the distance reached.
 */
export function rampRoundLoop(recorder: Recorder, track: Track, at: number, z: number, style: EntryStyle): number {
  const from = recorder.where()?.z ?? z;
  const ramp = rampLength(from - z, style.cutter.rampAngle);
  let begin = at;
  if (ramp > track.length * MOST_TURNS) {
    drillDown(recorder, z, style);
  } else if (ramp > 0) {
    recorder.along(trackPart(track, at, at + ramp), z, style.feeds.ramp);
    begin = at + ramp;
  }
  recorder.along(trackPart(track, begin, begin + track.length), z, style.feeds.cut);
  return begin + track.length;
}

/**
 * Spirals down a closed track from where the recorder is to `z` without a step, dropping at most the depth of cut per
 * turn and never steeper than the ramp angle, then follows it once round at the bottom.
 */
export function spiralDown(recorder: Recorder, track: Track, at: number, z: number, style: EntryStyle): void {
  const { cutter, feeds } = style;
  const drop = (recorder.where()?.z ?? z) - z;
  const perTurn = Math.min(cutter.depthOfCut, track.length * Math.tan((cutter.rampAngle * Math.PI) / 180));
  const length = (Math.max(0, drop) / perTurn) * track.length;
  if (length > track.length * MOST_TURNS) {
    rampRoundLoop(recorder, track, at, z, style);
    return;
  }
  // Down the whole way at the ramp's feed: every turn of it is part of the ramp.
  recorder.along(trackPart(track, at, at + length), z, feeds.ramp);
  recorder.along(trackPart(track, at + length, at + length + track.length), z, feeds.cut);
}

/**
 * At the start of an open track, ramps down to `z` by going forth and back along it, ending where it began; the pass
 * along the whole track that must follow then takes the wedge away. Short tracks are gone over several times.
 */
export function rampBackAndForth(recorder: Recorder, track: Track, z: number, style: EntryStyle): void {
  const from = recorder.where()?.z ?? z;
  const ramp = rampLength(from - z, style.cutter.rampAngle);
  if (ramp <= 0) return;
  const ways = Math.max(1, Math.ceil(ramp / 2 / track.length - 1e-9));
  if (!(track.length > 0) || ways * 2 > MOST_TURNS) {
    drillDown(recorder, z, style);
    return;
  }
  const forth = trackPart(track, 0, Math.min(track.length, ramp / 2 / ways));
  const back = reverseTrack(forth);
  const step = (from - z) / (2 * ways);
  for (let i = 0; i < ways; i++) {
    recorder.along(forth, from - step * (2 * i + 1), style.feeds.ramp);
    recorder.along(back, i === ways - 1 ? z : from - step * (2 * i + 2), style.feeds.ramp);
  }
}

/**
 * Drills straight down from where the recorder is to `z`, lifting by a rapid out of the hole between pecks of at most
 * the depth of cut, and coming back by a rapid to just above the last depth. Needs a cutter that cuts at its centre.
 */
export function drillDown(recorder: Recorder, z: number, style: EntryStyle, peck = style.cutter.depthOfCut): void {
  const here = recorder.where();
  if (!here || here.z <= z) return;
  let floor = Math.min(here.z, 0);
  while (floor > z + 1e-9) {
    const next = floor - peck < z + 1e-6 ? z : floor - peck;
    recorder.lineTo({ ...here, z: next }, style.feeds.plunge);
    floor = next;
    if (floor > z + 1e-9) {
      recorder.rapidTo(recorder.retract);
      recorder.rapidTo(floor + AIR_GAP);
    }
  }
}
