import { flattenPath, intersectRegions, type Region, regionArea, regionFromLoops } from '../../geometry/index.ts';
import { type PlacedCluster, standing } from './layout.ts';

/** Outlines that share less than this much of a square of a capital's height do not overlap. */
const LEAST_SHARED = 1e-5;
/** How finely outlines are flattened for it, in heights of a capital. */
const TOLERANCE = 2e-3;

/** Whether each cluster overlaps the next one of its line. */
function overlaps(placed: readonly PlacedCluster[], capHeight: number): boolean[] {
  const regions = placed.map((one) => regionOf(one, TOLERANCE * capHeight));
  return placed.slice(1).map(({ line }, i) => line === placed[i]!.line && regionArea(intersectRegions(regions[i]!, regions[i + 1]!)) > LEAST_SHARED * capHeight ** 2);
}

const regionOf = (one: PlacedCluster, tolerance: number): Region => regionFromLoops(standing(one).flat().map((path) => flattenPath(path, tolerance)), 'nonzero');

/** How many letters overlap their neighbours as the typeface has them, and how many of those no longer do as they were placed. */
export function joinsLost(plain: readonly PlacedCluster[], placed: readonly PlacedCluster[], capHeight: number): { readonly joins: number; readonly lost: number } {
  const before = overlaps(plain, capHeight);
  if (!before.includes(true)) return { joins: 0, lost: 0 };
  const after = overlaps(placed, capHeight);
  return { joins: before.filter(Boolean).length, lost: before.filter((joined, i) => joined && !after[i]!).length };
}
