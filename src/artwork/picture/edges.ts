import type { Grid } from './grid.ts';
import type { Shape } from './shapes.ts';

/** Cover between these is neither ground nor lettering. */
const BETWEEN = [0.25, 0.75] as const;

/** Mean width of the band between ground and lettering, in pixels: two or so in a sharp picture, many where only the light changes. */
export function edgeWidth({ values }: Grid, shapes: readonly Shape[]): number {
  let between = 0;
  for (const value of values) if (value > BETWEEN[0] && value < BETWEEN[1]) between += 1;
  const sides = shapes.reduce((sum, shape) => sum + (shape.isInk ? shape.sides : 0), 0);
  return sides === 0 ? 0 : between / ((Math.PI / 4) * sides);
}
