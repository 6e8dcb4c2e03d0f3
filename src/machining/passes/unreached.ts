import { distance, lerp, type Loop, makeRegionIndex, type Point, type Region } from '../../geometry/index.ts';

/** A stretch of a boundary out of reach: its farthest place, and how far that is from where the cutter's axis may be, mm. */
export interface UnreachedPlace {
  readonly at: Point;
  readonly distance: number;
}

/**
 * Walks along loops in steps of at most `spacing` mm and tells, for every stretch that lies farther than `within` mm from
 * where the cutter's axis may be, its farthest place. `reach` measures that distance.
 */
export function unreachedPlaces(loops: readonly Loop[], reach: (point: Point) => number, within: number, spacing: number): UnreachedPlace[] {
  return loops.flatMap((loop) => {
    const places: UnreachedPlace[] = [];
    let worst: UnreachedPlace | undefined;
    for (const at of [...placesRound(loop, spacing), undefined]) {
      const away = at ? reach(at) : 0;
      if (at && away > within) {
        if (!worst || away > worst.distance) worst = { at, distance: away };
      } else if (worst) {
        places.push(worst);
        worst = undefined;
      }
    }
    return places;
  });
}

/** Measures how far places are from a region, mm: 0 inside, Infinity when it is empty. */
export function distanceTo(room: Region): (point: Point) => number {
  const index = makeRegionIndex(room);
  return (point) => (index.contains(point) ? 0 : index.distanceToBoundary(point));
}

function* placesRound(loop: Loop, spacing: number): Generator<Point> {
  for (let i = 0; i < loop.length; i++) {
    const [a, b] = [loop[i]!, loop[(i + 1) % loop.length]!];
    const count = Math.max(1, Math.ceil(distance(a, b) / spacing));
    for (let k = 0; k < count; k++) yield lerp(a, b, k / count);
  }
}
