import { components, distance, type Path, type Point, type Region, regionBounds, samplePath } from '../../geometry/index.ts';
import { type DepthInside } from './free-space.ts';
import { type Caution, millimetres, placeName } from '../job/problem.ts';
import { distanceTo, unreachedPlaces } from './unreached.ts';

const ADVICE = 'Widen the groove there or choose a thinner cutter; the place is left as it is.';

function narrowPlace(at: Point, found: string, diameter: number): Caution {
  return { at, place: placeName(at), expected: `room for a cutter of ${millimetres(diameter)} mm`, found, advice: ADVICE };
}

/** The narrowest place of every stretch of the centre lines where the cutter's axis would come closer than `inset` to a wall. */
export function narrowAlongLines(inside: DepthInside, centreLines: readonly Path[], inset: number, diameter: number): Caution[] {
  const cautions: Caution[] = [];
  for (const path of centreLines) {
    let worst: { point: Point; depth: number } | undefined;
    const tell = () => {
      if (worst) cautions.push(narrowPlace(worst.point, `${millimetres(Math.max(0, 2 * worst.depth))} mm`, diameter));
      worst = undefined;
    };
    for (const { point } of samplePath(path, diameter / 4)) {
      const depth = inside.depthAt(point);
      if (depth >= inset) tell();
      else if (!worst || depth < worst.depth) worst = { point, depth };
    }
    tell();
  }
  return cautions;
}

/** A corner is left out of the cautions unless it lies farther than this from the cutter's edge, in diameters: sharper than about 60 degrees. */
const BEYOND = 0.5;

/**
 * Places of one component that its cutter, axis kept within `room`, does not reach: the whole of it, the necks where
 * `room` falls apart, and ends that too narrow a way leads to. Corners that any cutter rounds are left out.
 */
export function narrowInArea(component: Region, room: Region, diameter: number): Caution[] {
  const parts = components(room);
  if (parts.length === 0) return [narrowPlace(component.loops[0]?.[0] ?? middle(component), 'no room at all', diameter)];
  if (parts.length > 1) return parts.slice(1).map((part, i) => narrowPlace(neckBetween(part, parts.slice(0, i + 1)), 'a neck too narrow to pass', diameter));
  return unreachedPlaces(component.loops, distanceTo(room), diameter * (0.5 + BEYOND), diameter / 8)
    .map(({ at, distance: away }) => narrowPlace(at, `a place ${millimetres(away - diameter / 2, 1)} mm out of its reach`, diameter));
}

function middle(region: Region): Point {
  const box = regionBounds(region);
  return box ? { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 } : { x: 0, y: 0 };
}

/** Vertices looked at per loop when the neck between two parts is sought: enough to name a place. */
const NECK_SAMPLES = 200;

/** Halfway between the nearest vertices of a part and of the others. */
function neckBetween(part: Region, others: readonly Region[]): Point {
  const mine = sampledVertices([part]);
  let best: { point: Point; away: number } | undefined;
  for (const theirs of sampledVertices(others)) {
    for (const p of mine) {
      const away = distance(p, theirs);
      if (!best || away < best.away) best = { away, point: { x: (p.x + theirs.x) / 2, y: (p.y + theirs.y) / 2 } };
    }
  }
  return best?.point ?? middle(part);
}

function sampledVertices(regions: readonly Region[]): Point[] {
  return regions.flatMap(({ loops }) => loops).flatMap((loop) => {
    const stride = Math.max(1, Math.ceil(loop.length / NECK_SAMPLES));
    return loop.filter((_, i) => i % stride === 0);
  });
}
