import type { JunctionMap } from '../../../values/picture.ts';
import type { Point } from '../view.ts';

type Frame = JunctionMap['frame'];

/** A millionth of the frame: two micrometres on two metres, and no longer than it need be in a saved file. */
const FINEST = 1e6;

const rounded = (value: number): number => Math.round(value * FINEST) / FINEST || 0;

/** A place in mm as fractions of a frame. */
export function toFraction({ origin, size }: Frame, { x, y }: Point): Point {
  return size > 0 ? { x: rounded((x - origin.x) / size), y: rounded((y - origin.y) / size) } : { x: 0, y: 0 };
}

/** Fractions of a frame as a place in mm. */
export const fromFraction = ({ origin, size }: Frame, { x, y }: Point): Point => ({ x: origin.x + x * size, y: origin.y + y * size });
