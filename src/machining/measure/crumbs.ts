import { type Loop, type Point, type Region, loopArea } from '../../geometry/index.ts';

/** A piece of groove, or an island of material inside it, that is very small. */
export interface Crumb {
  readonly area: number;
  readonly at: Point;
}

/** Loops of a region that enclose less than `area` mm2, smallest first. */
export function crumbs(region: Region, area: number): Crumb[] {
  return region.loops
    .map((loop) => ({ area: Math.abs(loopArea(loop)), at: middleOf(loop) }))
    .filter((crumb) => crumb.area < area)
    .sort((a, b) => a.area - b.area);
}

function middleOf(loop: Loop): Point {
  const sum = loop.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 });
  return { x: sum.x / loop.length, y: sum.y / loop.length };
}
