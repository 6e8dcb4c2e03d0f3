import { type Path, type Point } from '../../geometry/index.ts';
import { drillDown, type EntryStyle, rampBackAndForth, spiralDown } from './entry.ts';
import { pathTrack } from './fit-track.ts';
import { type Recorder } from './recorder.ts';
import { reverseTrack, type Track } from './track.ts';

/** A centre line as the cutter follows it; its track has no pieces when the stroke is a point. */
export interface StrokeTrack {
  readonly start: Point;
  readonly track: Track;
}

/** Centre lines shorter than this count as points, mm: no wider than what a controller resolves. */
const POINT_LENGTH = 0.001;

export function strokeTracks(centreLines: readonly Path[], tolerance: number): StrokeTrack[] {
  return centreLines.map((path) => {
    const track = pathTrack(path, tolerance);
    return { start: path.start, track: track.length > POINT_LENGTH ? track : pathTrack({ ...path, segments: [] }, tolerance) };
  });
}

/**
 * Cuts along a centre line to the last of the layers. An open stroke goes layer by layer, each in the direction opposite
 * to the one before and entered by a ramp forth and back; a closed one is spiralled down; a point is drilled.
 */
export function cutStroke(recorder: Recorder, { start, track }: StrokeTrack, layers: readonly number[], style: EntryStyle): void {
  const bottom = layers.at(-1)!;
  recorder.comeDown(start, 0);
  if (track.pieces.length === 0) {
    drillDown(recorder, bottom, style);
  } else if (track.closed) {
    spiralDown(recorder, track, 0, bottom, style);
  } else {
    const ways = [track, reverseTrack(track)];
    layers.forEach((z, i) => {
      const way = ways[i % 2]!;
      rampBackAndForth(recorder, way, z, style);
      recorder.along(way, z, style.feeds.cut);
    });
  }
}
