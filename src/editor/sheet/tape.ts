import type { Point } from './view.ts';

/** The measuring tape: nothing set, its beginning set, or both ends. */
export interface Tape {
  readonly from?: Point;
  readonly to?: Point;
}

/** The tape after a place was set: the third one begins anew. */
export function setEnd({ from, to }: Tape, at: Point): Tape {
  return from === undefined || to !== undefined ? { from: at } : { from, to: at };
}

export interface Measure {
  /** mm */
  readonly distance: number;
  readonly dx: number;
  readonly dy: number;
  /** Degrees counter-clockwise from the right, above -180 to 180; 0 where both places are the same. */
  readonly angle: number;
}

export function measure(from: Point, to: Point): Measure {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return { distance: Math.hypot(dx, dy), dx, dy, angle: (Math.atan2(dy, dx) * 180) / Math.PI };
}

/** A measurement in two lines, lengths with so many decimals. */
export function measureWords({ distance, dx, dy, angle }: Measure, decimals: number): readonly [string, string] {
  const mm = (value: number) => `${plain(value, decimals)} mm`;
  return [`${mm(distance)} at ${plain(angle, 1)}°`, `across ${mm(dx)}, up ${mm(dy)}`];
}

/** A number with so many decimals, without a minus before zero. */
export function plain(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}
