import type { NumberParam } from '../../runtime/index.ts';

/** How a slider's positions stand for values. Positions run from `low` to `high`. */
export interface Scale {
  readonly low: number;
  readonly high: number;
  readonly positionOf: (value: number) => number;
  /** The value at a position: a multiple of the step, or a limit. */
  readonly valueAt: (position: number) => number;
}

type Limits = Pick<NumberParam, 'min' | 'max' | 'step'>;

/** Up to so many steps a slider is even; with more, a step would be less than a finger or a mouse can hit. */
const EVEN_STEPS = 400;
/** Uneven scales are nearly even for so many steps about 0 and go by ratio beyond. */
const NEAR_STEPS = 10;
/** Share of a slider's length that counts as one hit: values within it are as good as each other, so the roundest is taken. */
const HIT = 1 / 250;

/**
 * A scale for the limits of a parameter. Few steps lie evenly. Where limits are wide the scale is the inverse hyperbolic sine:
 * even about 0, by ratio far from it, and the same to both sides, so that 2 mm and 8000 mm can be had from one slider.
 */
export function scaleOf(limits: Limits): Scale {
  const { min, max, step } = limits;
  if ((max - min) / step <= EVEN_STEPS)
    return { low: min, high: max, positionOf: (value) => clamp(value, limits), valueAt: (position) => onGrid(position, step, limits) };
  const near = NEAR_STEPS * step;
  const [low, high] = [Math.asinh(min / near), Math.asinh(max / near)];
  return {
    low, high,
    positionOf: (value) => Math.asinh(clamp(value, limits) / near),
    valueAt: (position) => {
      const value = near * Math.sinh(position);
      return onGrid(value, roundStep(Math.hypot(value, near) * (high - low) * HIT, step), limits);
    },
  };
}

/** The value so many steps further, within the limits; a value typed between two steps stays between them. */
export function stepped(value: number, steps: number, limits: Limits): number {
  return clamp(tidy(value + steps * limits.step), limits);
}

/** The largest of step, 2 step, 5 step, 10 step … that is at most `size`; the step when none is. */
function roundStep(size: number, step: number): number {
  if (size < 2 * step) return step;
  const power = 10 ** Math.floor(Math.log10(size / step));
  const share = size / step / power;
  return step * power * (share >= 5 ? 5 : share >= 2 ? 2 : 1);
}

function onGrid(value: number, grid: number, limits: Limits): number {
  return clamp(tidy(Math.round(value / grid) * grid), limits);
}

/** Within the limits; never minus 0. */
const clamp = (value: number, { min, max }: Limits): number => Math.min(max, Math.max(min, value)) + 0;

/** Takes off the noise that multiples of a decimal step have in their last digits. */
const tidy = (value: number): number => Number(value.toPrecision(12));
