import {
  type Path, type Point, type Region, distance, isEmptyRegion, offsetRegion, outerContour, pathEnd, pointInRegion, polylinePath, samplePath,
  subtractRegion,
} from '../../geometry/index.ts';

/** Holes' centres that were found, and those places that had to be given up or are not clear. */
export interface Pattern {
  readonly centres: readonly Point[];
  readonly unclear: readonly Point[];
}

interface ClearOptions {
  /** Least distance from a hole's centre to the board's edge, mm. */
  readonly edgeDistance: number;
  /** Least distance from a hole's centre to the groove, mm. */
  readonly grooveDistance: number;
  readonly tolerance: number;
}

/** Where a hole's centre may lie: inside the board, away from its edge and from the groove. */
export function clearArea(board: Region, groove: Region, { edgeDistance, grooveDistance, tolerance }: ClearOptions): Region {
  const options = { join: 'round', miterLimit: 2, tolerance } as const;
  return subtractRegion(offsetRegion(board, -edgeDistance, options), offsetRegion(groove, grooveDistance, options));
}

/**
 * One place at each end of every open stroke and at the start of every closed one. Ends nearer to each other than `apart`
 * share the first one's place: one hole serves both.
 */
export function strokeEnds(centreLines: readonly Path[], apart: number): Point[] {
  const ends = centreLines.flatMap((path) => (path.closed ? [path.start] : [path.start, pathEnd(path)]));
  return spaced(ends, apart);
}

/** The four places of the clear area farthest towards its corners; fewer when they fall together. */
export function cornerPlaces(clear: Region, apart: number): Pattern {
  if (isEmptyRegion(clear)) return { centres: [], unclear: [] };
  const vertices = clear.loops.flat();
  const corners = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const;
  const farthest = corners.map(([right, up]) => vertices.reduce((a, b) => (towards(b, right, up) > towards(a, right, up) ? b : a)));
  return { centres: spaced(farthest, apart), unclear: [] };
}

/**
 * Places along the board's outer outline, `edgeDistance` inside it, evenly spaced at most `pitch` apart. A place that is not clear
 * moves along the outline to the nearest clear one within half a pitch, or is given up.
 */
export function placesAlongOutline(board: Region, clear: Region, edgeDistance: number, pitch: number): Pattern {
  const lines = offsetRegion(outerContour(board), -(edgeDistance + HAIR), { join: 'round', miterLimit: 2, tolerance: 0.01 });
  const found = lines.loops.flatMap((loop) => placesAlong(polylinePath(loop, true), clear, pitch));
  return {
    centres: found.flatMap(({ centre }) => (centre ? [centre] : [])),
    unclear: found.flatMap(({ centre, wanted }) => (centre ? [] : [wanted])),
  };
}

/** Places put by hand: all are kept, and those that are not clear are named. */
export function placesByHand(points: readonly Point[], clear: Region): Pattern {
  return { centres: points, unclear: points.filter((point) => !isClear(clear, point)) };
}

/** The line of places runs this much inside the clear area's own boundary, so that chords of either do not decide. */
const HAIR = 0.02;

/** Samples looked at per pitch when a place has to move along the outline. */
const TRIES_PER_PITCH = 64;

function placesAlong(line: Path, clear: Region, pitch: number): { wanted: Point; centre: Point | undefined }[] {
  const samples = samplePath(line, pitch / TRIES_PER_PITCH).map(({ point }) => point);
  const count = Math.max(1, Math.ceil(samples.length / TRIES_PER_PITCH));
  return Array.from({ length: count }, (_, i) => {
    const at = Math.round((i * samples.length) / count);
    return { wanted: samples[at]!, centre: nearestClear(samples, at, clear) };
  });
}

function nearestClear(samples: readonly Point[], at: number, clear: Region): Point | undefined {
  for (let step = 0; step <= TRIES_PER_PITCH / 2; step++)
    for (const side of [1, -1]) {
      const point = samples[(at + side * step + samples.length) % samples.length]!;
      if (isClear(clear, point)) return point;
    }
  return undefined;
}

function isClear(clear: Region, point: Point): boolean {
  return pointInRegion(clear, point) !== 'outside';
}

function towards({ x, y }: Point, right: number, up: number): number {
  return x * right + y * up;
}

/** Drops every place nearer than `apart` to one before it. */
function spaced(points: readonly Point[], apart: number): Point[] {
  return points.filter((point, i) => !points.slice(0, i).some((earlier) => distance(earlier, point) < apart));
}
