/** Longest name worth comparing: comparing takes time by the square of it, and no name is meant to be that long. */
const LONGEST = 200;

/**
 * The candidate a mistyped name most likely means, or undefined when none is near: at most one edit in three characters.
 * Of equally near ones the first. Edits are counted as by Damerau and Levenshtein (insert, delete, replace, swap
 * neighbours; no substring edited twice); case is ignored.
 */
export function nearest(name: string, candidates: Iterable<string>): string | undefined {
  if (name.length > LONGEST) return undefined;
  const wanted = name.toLowerCase();
  let best: string | undefined;
  let least = Math.max(1, Math.floor(name.length / 3)) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - name.length) >= least) continue;
    const edits = editDistance(wanted, candidate.toLowerCase());
    if (edits < least) [best, least] = [candidate, edits];
  }
  return best;
}

/** Advice that names the likely meaning, if there is one, before the general advice. */
export function suggest(name: string, candidates: Iterable<string>, otherwise: string): string {
  const likely = nearest(name, candidates);
  return likely === undefined ? otherwise : `Did you mean "${likely}"?`;
}

/** Optimal string alignment distance. Three rows suffice: a swap looks two rows back. */
function editDistance(a: string, b: string): number {
  let older: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? older[j - 2]! + 1 : Infinity;
      row.push(Math.min(replaced, swapped, previous[j]! + 1, row[j - 1]! + 1));
    }
    [older, previous] = [previous, row];
  }
  return previous[b.length]!;
}
