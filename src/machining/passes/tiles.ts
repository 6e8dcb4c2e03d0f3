import { type Box, boxesOverlap, boxHolds, growBox, intersectBoxes, type Point, type Region } from '../../geometry/index.ts';
import type { Tile, Tiling } from '../job/tiling.ts';
import { isWithinBox } from './track-within.ts';

/** Part of the work, the set-up that cuts it, and the window it is cut off at; no window when it is cut whole. */
export interface Share {
  readonly setUp: number;
  readonly window?: Box;
}

/**
 * The set-ups that cut something with this box: the first that holds it whole, else every one whose window it reaches,
 * each its own share. `margin` is the room the cutter needs beyond the box, mm.
 */
export function sharesOf(tiles: readonly Tile[], box: Box, margin = 0): Share[] {
  const needed = growBox(box, margin);
  const whole = tiles.findIndex(({ window }) => holds(window, needed));
  if (whole !== -1) return [{ setUp: whole }];
  const reached = tiles.flatMap((tile, setUp) => (boxesOverlap(tile.window, box) ? [{ tile, setUp }] : []));
  return withoutIdle(reached, needed).map(({ tile, setUp }) => ({ setUp, window: tile.window }));
}

interface Reached {
  readonly tile: Tile;
  readonly setUp: number;
}

/** Leaves out the set-ups that would only cut what another one's lap cuts anyway. */
function withoutIdle(reached: readonly Reached[], box: Box): readonly Reached[] {
  const idle = reached.find(({ tile }) => {
    const own = intersectBoxes(tile.core, box);
    return own === undefined || reached.some((other) => other.tile !== tile && holds(other.tile.window, own));
  });
  return idle && reached.length > 1 ? withoutIdle(reached.filter((one) => one !== idle), box) : reached;
}

const holds = (outer: Box, inner: Box): boolean =>
  isWithinBox(outer, { x: inner.minX, y: inner.minY }) && isWithinBox(outer, { x: inner.maxX, y: inner.maxY });

/** The one set-up whose core a place lies in; on a seam, the one above or to the right of it. Undefined outside them all. */
export function tileAt({ tiles }: Tiling, place: Point): number | undefined {
  const found = tiles.map((tile, i) => ({ tile, i })).filter(({ tile }) => boxHolds(tile.core, place));
  return found.sort((a, b) => b.tile.column - a.tile.column || b.tile.row - a.tile.row)[0]?.i;
}

export const boxRegion = ({ minX, minY, maxX, maxY }: Box): Region =>
  ({ loops: [[{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }]] });
