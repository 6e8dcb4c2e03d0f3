import type { Grid } from './grid.ts';

/** Cover of the ground, give or take its noise: only there is every departure noise. */
const GROUND = 0.35;

/** Pixels asked, at most. */
const PLACES = 50_000;

/** Median of a normal distribution's absolute values, in standard deviations. */
const MEDIAN = 0.6745;

/**
 * Standard deviation of the noise on the ground: from pixel to pixel, or in the coarser grain of paper, whichever is greater. Medians
 * are asked, so that the few pixels that are specks or edges do not count.
 */
export function noiseOf({ columns, rows, values }: Grid): number {
  const stride = Math.max(1, Math.floor((columns * rows) / PLACES));
  const [bends, departures]: [number[], number[]] = [[], []];
  for (let i = 1; i + 1 < values.length; i += stride) {
    const [before, here, after] = [values[i - 1]!, values[i]!, values[i + 1]!];
    if (Math.abs(here) < GROUND) departures.push(Math.abs(here));
    if (Math.abs(before) < GROUND && Math.abs(after) < GROUND) bends.push(Math.abs(before - 2 * here + after));
  }
  // A second difference of white noise has six times its variance.
  return Math.max(middleOf(bends) / Math.sqrt(6), middleOf(departures)) / MEDIAN;
}

const middleOf = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
