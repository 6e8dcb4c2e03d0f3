import type { Point } from '../../geometry/index.ts';

/** Index of the nearest thing whose reach covers the place; -1 when none does. */
export function nearestOf<T extends { readonly centre: Point }>(things: readonly T[], at: Point, reach: (thing: T) => number): number {
  let [best, least] = [-1, Infinity];
  things.forEach((thing, i) => {
    const away = apart(thing.centre, at);
    if (away <= reach(thing) && away < least) [best, least] = [i, away];
  });
  return best;
}

export function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
