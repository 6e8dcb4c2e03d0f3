/** Counts of values between two limits in equal classes; what lies outside falls into the first or last. */
export function histogramOf(values: Float32Array, [least, most]: readonly [number, number], classes: number): Float64Array {
  const counts = new Float64Array(classes);
  const scale = classes / (most - least);
  for (const value of values) counts[Math.min(classes - 1, Math.max(0, Math.floor((value - least) * scale)))]! += 1;
  return counts;
}

export interface Split {
  /** The first class of the upper part. */
  readonly at: number;
  /** Variance between the parts as a share of all variance: 1 for two values, 0.64 for values spread evenly, 0 where all are equal. */
  readonly separation: number;
  /** Mean classes of the lower and the upper part. */
  readonly means: readonly [number, number];
}

/**
 * Where a histogram divides best into two: the greatest variance between the parts (N. Otsu, IEEE Trans. Systems, Man and
 * Cybernetics 9, 1979, 62-66). Where several places are equally good, as between two separate heaps, the middle one.
 */
export function otsu(counts: ArrayLike<number>): Split {
  const classes = Array.from(counts);
  const total = classes.reduce((a, b) => a + b, 0);
  const sum = classes.reduce((all, count, i) => all + count * i, 0);
  const variance = classes.reduce((all, count, i) => all + count * (i - sum / total) ** 2, 0) / total;
  let [below, belowSum, best, first, last] = [0, 0, 0, 0, 0];
  for (let at = 1; at < classes.length; at++) {
    below += classes[at - 1]!;
    belowSum += classes[at - 1]! * (at - 1);
    if (below === 0 || below === total) continue;
    const between = (below / total) * (1 - below / total) * (belowSum / below - (sum - belowSum) / (total - below)) ** 2;
    if (between > best * (1 + 1e-12)) [best, first, last] = [between, at, at];
    else if (between >= best * (1 - 1e-12)) last = at;
  }
  const at = Math.floor((first + last) / 2);
  return { at, separation: variance > 0 ? best / variance : 0, means: partMeans(classes, at) };
}

function partMeans(classes: readonly number[], at: number): [number, number] {
  const mean = (from: number, to: number) => {
    const part = classes.slice(from, to);
    return part.reduce((all, count, i) => all + count * (from + i), 0) / Math.max(1, part.reduce((a, b) => a + b, 0));
  };
  return [mean(0, at), mean(at, classes.length)];
}
