/** A stretch along an axis that a set-up's cutters' edges go over, mm. */
export type Extent = readonly [number, number];

/** Where the sheet lies in each set-up along one axis. */
export interface Shifts {
  readonly shifts: readonly number[];
  /** Where what the machine reaches begins, in program coordinates. */
  readonly start: number;
}

/** Shifts are multiples of the coarsest of these that will do, mm. */
const STEPS: readonly number[] = [10, 5, 1, 0.5, 0.1, 0.05, 0.01];

/**
 * How far the sheet is shifted for each extent, so that all of them lie in one stretch of `frame` mm of program
 * coordinates, the first one not shifted: by one pitch where one will do. An extent longer than `frame` counts from its
 * beginning. `zero` is where that stretch begins if it may, so that the machine reaches the programs' zero.
 */
export function shiftsFor(extents: readonly Extent[], frame: number, zero: number): Shifts {
  const ranges = extents.map(([low, high]) => [Math.min(high - frame, low), low] as const);
  const pitch = evenPitch(ranges);
  if (pitch !== undefined) {
    const shifts = ranges.map((_, i) => hundredths(i * pitch));
    const low = Math.max(...ranges.map(([from], i) => from - shifts[i]!));
    return { shifts, start: clamped(zero, low, Math.min(...ranges.map(([, to], i) => to - shifts[i]!))) };
  }
  const start = clamped(zero, ...ranges[0]!);
  const rest = ranges.slice(1).map(([from, to]) => [from - start, to - start] as const);
  return { shifts: [0, ...inSteps(rest)], start };
}

/**
 * A pitch P for which one start suits all ranges, moved by i P: such a start is there if every two of them then have one
 * in common (Helly's theorem on a line).
 */
function evenPitch(ranges: readonly Extent[]): number | undefined {
  if (ranges.length === 1) return 0;
  let [least, most] = [-Infinity, Infinity];
  for (const [j, [lowB, highB]] of ranges.entries()) {
    for (const [i, [lowA, highA]] of ranges.slice(0, j).entries()) {
      least = Math.max(least, (lowB - highA) / (j - i));
      most = Math.min(most, (highB - lowA) / (j - i));
    }
  }
  return least <= most ? STEPS.map((step) => multipleIn([least, most], step)).find((pitch) => pitch !== undefined) : undefined;
}

function inSteps(ranges: readonly Extent[]): number[] {
  for (const step of STEPS) {
    const shifts = ranges.map((range) => multipleIn(range, step));
    if (shifts.every((shift) => shift !== undefined)) return shifts;
  }
  return ranges.map(([low, high]) => hundredths((low + high) / 2));
}

/** The multiple of a step in a range that lies nearest to its middle. */
function multipleIn([low, high]: Extent, step: number): number | undefined {
  const nearest = hundredths(Math.round((low + high) / 2 / step) * step);
  return nearest >= low && nearest <= high ? nearest : undefined;
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;

const clamped = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
