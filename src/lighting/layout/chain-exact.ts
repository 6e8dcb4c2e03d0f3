import { keepsTo } from '../keeps-to.ts';
import { type Chain, type Link, type Turn, stepLength } from './chain.ts';

/** The best way through a set of links that ends with one of them: the steps' length, and the turn before. */
interface Way {
  readonly length: number;
  readonly before: number;
}

/**
 * The fewest chains that keep to the limit, and of all such the ones whose steps are shortest in sum: the shortest way through every set of
 * links (after Held and Karp, J. SIAM 10 (1962) 196-210), then the best partition into sets. A link above the limit is a chain of its own.
 */
export function exactChains(links: readonly Link[], limit: number): Chain[] {
  const ways = waysThrough(links);
  const all = (1 << links.length) - 1;
  const best: ({ readonly chains: number; readonly length: number; readonly last: number } | undefined)[] = [{ chains: 0, length: 0, last: 0 }];
  for (let set = 1; set <= all; set++) {
    const lowest = set & -set;
    for (let part = set; part > 0; part = (part - 1) & set) {
      if (!(part & lowest) || !fits(links, part, limit)) continue;
      const rest = best[set ^ part]!;
      const length = rest.length + shortest(ways[part]!).length;
      const known = best[set];
      if (!known || rest.chains + 1 < known.chains || (rest.chains + 1 === known.chains && length < known.length)) best[set] = { chains: rest.chains + 1, length, last: part };
    }
  }
  const chains: Chain[] = [];
  for (let set = all; set > 0; set ^= best[set]!.last) chains.push(chainOf(ways, best[set]!.last));
  return chains;
}

function fits(links: readonly Link[], set: number, limit: number): boolean {
  const members = links.filter((_, k) => set & (1 << k));
  return members.length === 1 || keepsTo(members.reduce((sum, { load }) => sum + load, 0), limit);
}

const turnOf = (code: number): Turn => ({ link: code >> 1, turned: (code & 1) === 1 });

/** For each set of links and each turn (twice its link, plus one when turned) that the way through it may end with. */
function waysThrough(links: readonly Link[]): (readonly (Way | undefined)[])[] {
  const codes = links.flatMap((_, k) => [2 * k, 2 * k + 1]);
  const ways: (Way | undefined)[][] = [[]];
  for (let set = 1; set < 1 << links.length; set++) ways.push(codes.map((code) => wayTo(links, ways, set, code)));
  return ways;
}

function wayTo(links: readonly Link[], ways: readonly (readonly (Way | undefined)[])[], set: number, code: number): Way | undefined {
  const bit = 1 << (code >> 1);
  if (!(set & bit)) return undefined;
  if (set === bit) return { length: 0, before: -1 };
  let best: Way | undefined;
  ways[set ^ bit]!.forEach((way, before) => {
    const length = way ? way.length + stepLength(links, turnOf(before), turnOf(code)) : Infinity;
    if (length < (best?.length ?? Infinity)) best = { length, before };
  });
  return best;
}

function shortest(ways: readonly (Way | undefined)[]): { readonly length: number; readonly code: number } {
  return ways.reduce((best, way, code) => (way && way.length < best.length ? { length: way.length, code } : best), { length: Infinity, code: -1 });
}

function chainOf(ways: readonly (readonly (Way | undefined)[])[], set: number): Chain {
  const turns: Turn[] = [];
  let [left, code] = [set, shortest(ways[set]!).code];
  while (code >= 0) {
    turns.unshift(turnOf(code));
    const { before } = ways[left]![code]!;
    left ^= 1 << (code >> 1);
    code = before;
  }
  return turns;
}
