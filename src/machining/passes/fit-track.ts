import { fitArcs } from '../../geometry/fit.ts';
import { flattenPath, type Loop, type Path, type Point } from '../../geometry/index.ts';
import { type Track, trackFromPieces, trackOf } from './track.ts';

/** Deviation of fitted lines and arcs from the polyline they replace when nobody says otherwise, mm. */
export const USUAL_FIT_TOLERANCE = 0.004;

/** Share of the tolerance spent on flattening a curve before arcs are fitted to it. */
const FLATTEN_SHARE = 0.25;

/** The track once round a loop in its own direction, within `tolerance` of it. */
export function loopTrack(loop: Loop, tolerance: number): Track {
  return fitted(loop, true, tolerance);
}

/** The track along a path of any segments, within `tolerance` of it; without pieces when the path is a point. */
export function pathTrack(path: Path, tolerance: number): Track {
  if (path.segments.every(({ kind }) => kind !== 'cubic')) return trackOf(path);
  return fitted(flattenPath(path, tolerance * FLATTEN_SHARE), path.closed, tolerance * (1 - FLATTEN_SHARE));
}

function fitted(points: readonly Point[], closed: boolean, tolerance: number): Track {
  if (points.length < 2) return trackFromPieces([], closed);
  return trackOf(fitArcs(points, { closed, tolerance }));
}
