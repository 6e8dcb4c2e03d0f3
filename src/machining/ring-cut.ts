import { type Point } from '../geometry/index.ts';
import { type EntryStyle, rampRoundLoop } from './entry.ts';
import { type Recorder } from './recorder.ts';
import { type Track, pointAt } from './track.ts';
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

/**
 * Clears an area layer by layer, its inner rings first. The cutter stays down on the way to the next ring when it may
 * cross to it, and comes down anew, over the floor of the layer before, when it may not. It always enters by a ramp.
 */
export function cutRings(recorder: Recorder, { rings, layers, style, mayCross }: RingCut): void {
  const levels = [...new Set(rings.map(({ level }) => level))].sort((a, b) => b - a);
  let floor = 0;
  for (const z of layers) {
    for (const level of levels) {
      const waiting = rings.filter((ring) => ring.level === level);
      while (waiting.length > 0) {
        const { index, at, point } = nearestRing(waiting, recorder.where());
        const { track } = waiting.splice(index, 1)[0]!;
        const here = recorder.where();
        if (here && here.z < 0 && mayCross(here, point)) recorder.lineTo({ ...point, z: here.z }, style.feeds.cut);
        else recorder.comeDown(point, floor);
        rampRoundLoop(recorder, track, at, z, style);
      }
    }
    floor = z;
  }
}

/** Which ring to cut next, and where to join it: the nearest place of any of them. */
function nearestRing(rings: readonly Ring[], from: Point | undefined): { index: number; at: number; point: Point } {
  const first = { index: 0, at: 0, point: pointAt(rings[0]!.track, 0) };
  if (!from) return first;
  let best = first;
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
