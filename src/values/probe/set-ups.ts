import type { Point } from '../../geometry/index.ts';
import { type HoldDown, type Pin, type Tiling, seamEnds } from '../../machining/index.ts';
import type { Reading } from '../picture.ts';
import { apart, nearestOf } from './nearest.ts';
import { reading } from './reading.ts';

/** Which set-up a place of the sheet belongs to, and how far the nearest seam is. Nothing where all is cut in one. */
export function tilingProbe(tiling: Tiling): (at: Point) => Reading[] {
  return (at) => {
    const place = tiling.tiles.findIndex(({ core: { minX, minY, maxX, maxY } }) => at.x >= minX && at.x <= maxX && at.y >= minY && at.y <= maxY);
    if (place === -1 || tiling.tiles.length < 2) return [];
    const feet = tiling.seams.map((seam, i) => ({ says: `to seam ${i + 1}`, foot: footOnSeam(tiling, seam, at) }));
    const nearest = [...feet].sort((a, b) => apart(a.foot, at) - apart(b.foot, at)).slice(0, 1);
    return [reading('cut in set-up', place + 1, 'count', at), ...nearest.map(({ says, foot }) => reading(says, apart(foot, at), 'mm', foot))];
  };
}

function footOnSeam(tiling: Tiling, seam: Tiling['seams'][number], at: Point): Point {
  const [[x0, y0], [x1, y1]] = seamEnds(tiling, seam);
  return { x: Math.min(x1, Math.max(x0, at.x)), y: Math.min(y1, Math.max(y0, at.y)) };
}

export function readPin(pins: readonly Pin[], at: Point, within: number): Reading[] {
  const i = nearestOf(pins.map((pin) => ({ ...pin, centre: pin.at })), at, ({ diameter }) => diameter / 2 + within);
  const pin = pins[i];
  return pin === undefined ? [] : [reading(`diameter of pin ${i + 1}`, pin.diameter, 'mm', pin.at)];
}

export function readHoldDown(holdDowns: readonly HoldDown[], at: Point, within: number): Reading[] {
  const i = nearestOf(holdDowns.map((one) => ({ ...one, centre: one.at })), at, ({ keepOut }) => keepOut / 2 + within);
  const one = holdDowns[i];
  return one === undefined ? [] : [reading(`keep-out diameter of ${one.kind} ${i + 1}`, one.keepOut, 'mm', one.at), reading(`height of ${one.kind} ${i + 1}`, one.height, 'mm', one.at)];
}
