/**
 * Real zeros in [from, to] of a polynomial with coefficients from the lowest power up, in rising order. Between two
 * neighbouring zeros of the derivative it runs one way, so halving finds each zero and misses none that changes sign;
 * a zero that only touches counts when the value there is 0 but for rounding. The zero polynomial has none.
 */
export function rootsBetween(coefficients: readonly number[], from: number, to: number): number[] {
  const p = trimmed(coefficients);
  if (p.length < 2) return [];
  const stops = [from, ...rootsBetween(p.slice(1).map((c, i) => c * (i + 1)), from, to), to];
  const rounding = 1e-14 * p.reduce((total, c) => total + Math.abs(c), 0) * Math.max(1, Math.abs(from), Math.abs(to)) ** (p.length - 1);
  const roots: number[] = [];
  for (let i = 1; i < stops.length; i++) {
    const root = rootOfMonotone(p, stops[i - 1]!, stops[i]!, rounding);
    if (root !== undefined && root !== roots.at(-1)) roots.push(root);
  }
  return roots;
}

/** Without leading coefficients that are nothing beside the largest: they would only add false zeros. */
function trimmed(coefficients: readonly number[]): number[] {
  const largest = coefficients.reduce((most, c) => Math.max(most, Math.abs(c)), 0);
  const p = [...coefficients];
  while (p.length > 0 && Math.abs(p.at(-1)!) <= 1e-15 * largest) p.pop();
  return p;
}

function rootOfMonotone(p: readonly number[], from: number, to: number, rounding: number): number | undefined {
  let [low, high] = [from, to];
  const atLow = valueAt(p, low);
  const atHigh = valueAt(p, high);
  if (Math.abs(atLow) <= rounding) return low;
  if (Math.abs(atHigh) <= rounding) return high;
  if (atLow > 0 === atHigh > 0) return undefined;
  for (let i = 0; i < 100 && high - low > 0; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (valueAt(p, middle) > 0 === atLow > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const valueAt = (p: readonly number[], x: number) => p.reduceRight((total, c) => total * x + c, 0);
