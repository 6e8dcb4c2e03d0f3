import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/index.ts';
import { type Chain, type Link, chainLength, chainLoad } from '../../src/lighting/layout/chain.ts';
import { exactChains } from '../../src/lighting/layout/chain-exact.ts';
import { nearChains } from '../../src/lighting/layout/chain-near.ts';
import { groupLinks } from '../../src/lighting/layout/group-runs.ts';
import { seeded } from '../support/random.ts';

function someLinks(count: number, seed: number): Link[] {
  const random = seeded(seed);
  const place = () => ({ x: 1000 * random(), y: 400 * random() });
  return Array.from({ length: count }, () => ({ ends: [place(), place()] as const, load: 0.05 + 0.4 * random() }));
}
const total = (links: readonly Link[], chains: readonly Chain[]) => chains.reduce((sum, chain) => sum + chainLength(links, chain), 0);

/** Every way of ordering, turning and parting the links, by plain recursion. */
function bestByTrying(links: readonly Link[], limit: number): { chains: number; length: number } {
  let best = { chains: Infinity, length: Infinity };
  const go = (left: readonly number[], done: readonly Chain[]) => {
    if (left.length === 0) {
      const length = total(links, done);
      if (done.length < best.chains || (done.length === best.chains && length < best.length)) best = { chains: done.length, length };
      return;
    }
    for (const link of left) {
      for (const turned of [false, true]) {
        const rest = left.filter((k) => k !== link), turn = { link, turned };
        const last = done.at(-1);
        if (last && chainLoad(links, [...last, turn]) <= limit) go(rest, [...done.slice(0, -1), [...last, turn]]);
        go(rest, [...done, [turn]]);
      }
    }
  };
  go(links.map((_, k) => k), []);
  return best;
}

/** No grouping into so many chains has shorter steps: the shortest edges that join the links without a ring (Kruskal, Proc. AMS 7 (1956) 48-50), as many as there are steps. */
function lowerBound(links: readonly Link[], chains: number): number {
  const edges = links.flatMap((a, i) => links.slice(i + 1).map((b, k) => ({ i, k: i + 1 + k, length: Math.min(...a.ends.flatMap((p) => b.ends.map((q) => distance(p, q)))) })));
  const of = links.map((_, i) => i);
  const root = (i: number): number => (of[i] === i ? i : root(of[i]!));
  const kept = edges.sort((a, b) => a.length - b.length).filter(({ i, k }) => root(i) !== root(k) && ((of[root(i)] = root(k)), true));
  return kept.slice(0, links.length - chains).reduce((sum, { length }) => sum + length, 0);
}

const isWhole = (links: readonly Link[], chains: readonly Chain[]) => expect(chains.flat().map(({ link }) => link).sort((a, b) => a - b)).toEqual(links.map((_, k) => k));

describe('up to nine pieces the grouping is the best there is', () => {
  it.each([[3, 1], [4, 2], [4, 3], [5, 4]])('%d pieces, seed %d', (count, seed) => {
    const links = someLinks(count, seed);
    for (const limit of [0.6, 1, 10]) {
      const chains = exactChains(links, limit);
      isWhole(links, chains);
      const best = bestByTrying(links, limit);
      expect([chains.length, total(links, chains)]).toEqual([best.chains, expect.closeTo(best.length, 9)]);
    }
  });
});

describe('beyond, it keeps to the limit and comes near the bound', () => {
  it.each([[12, 5], [25, 6], [25, 7], [40, 8]])('%d pieces, seed %d', (count, seed) => {
    const links = someLinks(count, seed);
    for (const limit of [0.5, 1.2, 3]) {
      const chains = groupLinks(links, limit);
      isWhole(links, chains);
      for (const chain of chains) expect(chainLoad(links, chain)).toBeLessThanOrEqual(limit * (1 + 1e-9));
      expect(chains.length).toBeLessThanOrEqual(Math.ceil(chainLoad(links, chains.flat()) / limit) + Math.ceil(chains.length / 6));
      expect(total(links, chains)).toBeGreaterThanOrEqual(lowerBound(links, chains.length) - 1e-9);
    }
    const one = groupLinks(links, 1e6);
    expect(one).toHaveLength(1);
    expect(total(links, one) / lowerBound(links, 1)).toBeLessThan(2);
  });

  it('is as a rule within a few per cent of the best where both can be had', () => {
    const over = Array.from({ length: 20 }, (_, seed) => {
      const links = someLinks(8, 100 + seed);
      return [nearChains(links, 1e6), exactChains(links, 1e6)].map((chains) => total(links, chains)) as [number, number];
    }).map(([near, exact]) => near / exact);
    expect(Math.min(...over)).toBeGreaterThanOrEqual(1 - 1e-9);
    expect(over.reduce((sum, one) => sum + one, 0) / over.length).toBeLessThan(1.1);
  });
});

it('a piece above the limit is a run of its own', () => {
  const links = [...someLinks(2, 9), { ends: [{ x: 0, y: 0 }, { x: 9, y: 0 }] as const, load: 5 }];
  for (const chains of [exactChains(links, 1), nearChains(links, 1)]) expect(chains.filter((chain) => chain.length === 1 && chain[0]!.link === 2)).toHaveLength(1);
});
