import { contours } from 'd3-contour';
import type { Point } from '../../geometry/index.ts';
import type { Grid } from './grid.ts';

/** Rings around one shape in pixels, y down from the upper left corner: its outer ring first, then those of its holes. */
export type Rings = readonly [readonly Point[], ...(readonly Point[])[]];

/** The lines along which a grid passes through a threshold, straight between the middles of neighbouring pixels. */
export function ringsAt({ columns, rows, values }: Grid, threshold: number): Rings[] {
  // The library declares an array of numbers and reads it by index only: copying millions of values would gain nothing.
  const { coordinates } = contours().size([columns, rows]).smooth(true).contour(values as unknown as number[], threshold);
  return coordinates.map((rings) => rings.map((ring) => ring.slice(1).map(([x, y]): Point => ({ x: x!, y: y! }))) as unknown as Rings);
}
