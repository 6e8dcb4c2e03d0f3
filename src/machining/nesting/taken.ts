import type { Mask, Run } from './mask.ts';

/** The cells that are taken, as sorted runs by row. */
export class Taken {
  readonly #rows = new Map<number, Run[]>();

  /** The first column, from one on, at which a mask meets nothing, with its corner in a row; undefined when none is left up to the last. */
  freeAt(mask: Mask, row: number, last: number): number | undefined {
    for (let column = 0; column <= last; ) {
      const next = this.#pushed(mask, row, column);
      if (next === column) return column;
      column = next;
    }
    return undefined;
  }

  /** How far to the right a mask must go from a column to get out of the way of the first run it meets. */
  #pushed(mask: Mask, row: number, column: number): number {
    for (const [i, runs] of mask.rows.entries()) {
      const taken = this.#rows.get(row + mask.row + i);
      if (taken === undefined) continue;
      for (const [from, to] of runs) {
        const hit = firstMeeting(taken, column + from, column + to);
        if (hit !== undefined) return hit[1] - from;
      }
    }
    return column;
  }

  put(mask: Mask, row: number, column: number): void {
    mask.rows.forEach((runs, i) => {
      const at = row + mask.row + i;
      const all = [...(this.#rows.get(at) ?? []), ...runs.map(([from, to]): Run => [from + column, to + column])];
      this.#rows.set(at, all.sort((a, b) => a[0] - b[0]));
    });
  }
}

/** Of sorted runs that do not meet each other, the first that meets the one from `from` to `to`. */
function firstMeeting(taken: readonly Run[], from: number, to: number): Run | undefined {
  let [low, high] = [0, taken.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (taken[middle]![1] <= from) low = middle + 1;
    else high = middle;
  }
  const first = taken[low];
  return first !== undefined && first[0] < to ? first : undefined;
}
