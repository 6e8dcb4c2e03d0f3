import type { Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';

/** A hole through the sheet: round, or a slot with round ends. */
export interface Hole {
  readonly centre: Point;
  readonly diameter: number;
  readonly purpose: 'cable' | 'mounting' | 'dowel';
  /** The set-up (place in the tiling) that must make it; without, the one it lies in. */
  readonly setUp?: number;
  /** Makes it a slot: the distance between the middles of its ends, mm, even to both sides of the centre, and its direction, degrees counter-clockwise from +x. */
  readonly slot?: { readonly length: number; readonly angle: number };
}

/** The middles of a hole's two ends; twice the centre for a round hole. */
export function holeEnds({ centre, slot }: Pick<Hole, 'centre' | 'slot'>): readonly [Point, Point] {
  const half = (slot?.length ?? 0) / 2, angle = ((slot?.angle ?? 0) * Math.PI) / 180;
  const [x, y] = [half * Math.cos(angle), half * Math.sin(angle)];
  return [{ x: centre.x - x, y: centre.y - y }, { x: centre.x + x, y: centre.y + y }];
}

/** A hole's wall, closed and counter-clockwise: a circle, or two half circles joined by lines. */
export function holePath(hole: Pick<Hole, 'centre' | 'diameter' | 'slot'>): Path {
  const radius = hole.diameter / 2;
  if (!hole.slot) {
    const start = { x: hole.centre.x + radius, y: hole.centre.y };
    return { start, segments: [{ kind: 'arc', end: start, centre: hole.centre, clockwise: false }], closed: true };
  }
  const [a, b] = holeEnds(hole);
  const angle = (hole.slot.angle * Math.PI) / 180;
  const aside = ({ x, y }: Point, sign: 1 | -1): Point => ({ x: x + sign * radius * Math.sin(angle), y: y - sign * radius * Math.cos(angle) });
  return {
    start: aside(a, 1), closed: true,
    segments: [
      { kind: 'line', end: aside(b, 1) }, { kind: 'arc', end: aside(b, -1), centre: b, clockwise: false },
      { kind: 'line', end: aside(a, -1) }, { kind: 'arc', end: aside(a, 1), centre: a, clockwise: false },
    ],
  };
}
