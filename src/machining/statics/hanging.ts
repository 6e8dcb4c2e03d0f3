import { type Point, type Region, regionBounds } from '../../geometry/index.ts';

/**
 * Share of a stiff board's weight on each of its fixings, which all give alike: the sum is 1, negative where a fixing is pushed up. For two it
 * is the lever rule; for more each takes 1/n and, of the moment about their middle, as much as it is far from it (as for groups of bolts under
 * an eccentric load: Shigley, Mechanical Engineering Design, from memory). Fixings that are all above each other share evenly.
 */
export function loadShares(fixings: readonly Point[], centre: Point): number[] {
  const count = fixings.length;
  const middle = fixings.reduce((sum, { x }) => sum + x, 0) / count;
  const spread = fixings.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
  return fixings.map(({ x }) => 1 / count + (spread > 0 ? ((x - middle) * (centre.x - middle)) / spread : 0));
}

/** How far beyond the outermost fixing the centre of mass lies, mm: more than 0, and the board turns. */
export function outsideFixings(fixings: readonly Point[], centre: Point): number {
  const xs = fixings.map(({ x }) => x);
  return Math.max(0, Math.min(...xs) - centre.x, centre.x - Math.max(...xs));
}

/**
 * Two hangers at one height, as far to the left of the centre of mass as to the right, so that each carries half and the board hangs level: the
 * highest such places that are clear, above the centre. Their distance is the one nearest to `spacing` (mm) that has any, found to 1 mm.
 */
export function levelPair(clear: Region, centre: Point, spacing: number): readonly [Point, Point] | undefined {
  const bounds = regionBounds(clear);
  if (!bounds) return undefined;
  const most = 2 * Math.min(centre.x - bounds.minX, bounds.maxX - centre.x);
  for (let away = 0; away <= Math.max(spacing, most - spacing); away += STEP)
    for (const side of [1, -1]) {
      const half = (spacing + side * away) / 2;
      const y = half > 0 && 2 * half <= most ? highest(clear, centre, half) : undefined;
      if (y !== undefined) return [{ x: centre.x - half, y }, { x: centre.x + half, y }];
    }
  return undefined;
}

/** Steps in which distances are tried, mm. */
const STEP = 1;

function highest(clear: Region, centre: Point, half: number): number | undefined {
  const right = spansAt(clear, centre.x + half);
  const both = spansAt(clear, centre.x - half).flatMap(([low, high]) => right.flatMap(([low2, high2]) => {
    const top = Math.min(high, high2);
    return top >= Math.max(low, low2) && top > centre.y ? [top] : [];
  }));
  return both.length > 0 ? Math.max(...both) : undefined;
}

/** Where the upright line at x runs inside a region, as pairs of heights. */
function spansAt({ loops }: Region, x: number): (readonly [number, number])[] {
  const crossings = loops.flatMap((loop) => loop.flatMap((a, i) => {
    const b = loop[(i + 1) % loop.length]!;
    return a.x <= x !== b.x <= x ? [a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y)] : [];
  })).sort((a, b) => a - b);
  return Array.from({ length: crossings.length >> 1 }, (_, i) => [crossings[2 * i]!, crossings[2 * i + 1]!] as const);
}
