import type { Stroke } from '../../artwork/artwork.ts';
import { add, pathBounds, type Point, scale, subtract, unionBoxes } from '../../geometry/index.ts';
import type { Frame } from './junction-map.ts';

/** The lower left corner of the box of the strokes' paths, and its longer side; size 0 where there is nothing. */
export function frameOf(strokes: readonly Stroke[]): Frame {
  const box = unionBoxes(strokes.map(({ path }) => pathBounds(path)));
  if (!box) return { origin: { x: 0, y: 0 }, size: 0 };
  return { origin: { x: box.minX, y: box.minY }, size: Math.max(box.maxX - box.minX, box.maxY - box.minY) };
}

/** A place given as fractions of a frame, in mm. */
export const fromFrame = ({ origin, size }: Frame, place: Point): Point => add(origin, scale(place, size));

/** A place in mm as fractions of a frame of some size. */
export const toFrame = ({ origin, size }: Frame, place: Point): Point => scale(subtract(place, origin), 1 / size);
