import { keepsTo } from '../keeps-to.ts';
import { type Chain, type Link, type Turn, chainLength, chainLoad, stepLength } from './chain.ts';

/** Rounds of improvement at most, and links times places looked at in all of them together. */
const MOST_ROUNDS = 60;
const MOST_TRIALS = 2e6;

const reversed = (chain: Chain): Chain => chain.map(({ link, turned }): Turn => ({ link, turned: !turned })).reverse();

/** Chains that keep to the limit: the nearest ends are joined first, short chains are shared out, then what shortens the steps is done until nothing does. */
export function nearChains(links: readonly Link[], limit: number): Chain[] {
  const joined = dissolved(links, joinNearest(links, limit), limit);
  const rounds = Math.min(MOST_ROUNDS, Math.floor(MOST_TRIALS / (links.length * links.length)));
  return improved(links, joined, limit, rounds);
}

function joinNearest(links: readonly Link[], limit: number): Chain[] {
  let chains: Chain[] = links.map((_, link) => [{ link, turned: false }]);
  for (const { a, b } of sortedSteps(links)) {
    const [first, second] = [chains.find((chain) => endsWith(chain, a)), chains.find((chain) => endsWith(chain, b))];
    if (!first || !second || first === second || !keepsTo(chainLoad(links, first) + chainLoad(links, second), limit)) continue;
    const head = same(first.at(-1), a) ? first : reversed(first);
    const tail = same(second.at(-1), b) ? reversed(second) : second;
    chains = [...chains.filter((chain) => chain !== first && chain !== second), [...head, ...tail]];
  }
  return chains;
}

const same = (turn: Turn | undefined, { link, turned }: Turn): boolean => turn?.link === link && turn.turned === turned;

/** Whether the chain, run either way, is left by this turn. */
const endsWith = (chain: Chain, turn: Turn): boolean => same(chain.at(-1), turn) || same(chain[0], { ...turn, turned: !turn.turned });

/** Every step between ends of two links, the shortest first: both told by the turns that leave the links there. */
function sortedSteps(links: readonly Link[]): { readonly a: Turn; readonly b: Turn }[] {
  const turns = links.flatMap((_, link): Turn[] => [{ link, turned: false }, { link, turned: true }]);
  const steps = turns.flatMap((a) => turns.filter((b) => b.link > a.link).map((b) => ({ a, b, length: stepLength(links, a, { link: b.link, turned: !b.turned }) })));
  return steps.sort((one, other) => one.length - other.length);
}

/** Fewer chains, where the links of one find room in the others. */
function dissolved(links: readonly Link[], chains: readonly Chain[], limit: number): Chain[] {
  const byLoad = [...chains].sort((a, b) => chainLoad(links, a) - chainLoad(links, b));
  for (const chain of byLoad) {
    const rest = sharedOut(links, chain, chains.filter((other) => other !== chain), limit);
    if (rest) return dissolved(links, rest, limit);
  }
  return [...chains];
}

function sharedOut(links: readonly Link[], chain: Chain, others: readonly Chain[], limit: number): Chain[] | undefined {
  let rest = [...others];
  for (const { link } of [...chain].sort((a, b) => links[b.link]!.load - links[a.link]!.load)) {
    const best = insertions(links, rest, [{ link, turned: false }], limit)[0];
    if (!best) return undefined;
    rest = rest.map((other, i) => (i === best.chain ? best.made : other));
  }
  return rest;
}

interface Insertion {
  readonly chain: number;
  readonly made: Chain;
  readonly longer: number;
}

/** All ways of putting a stretch into chains that have room for it, the cheapest first. */
function insertions(links: readonly Link[], chains: readonly Chain[], stretch: Chain, limit: number): Insertion[] {
  const load = chainLoad(links, stretch);
  const found = chains.flatMap((chain, i) => {
    if (!keepsTo(chainLoad(links, chain) + load, limit)) return [];
    const before = chainLength(links, chain);
    return [stretch, reversed(stretch)].flatMap((way) => Array.from({ length: chain.length + 1 }, (_, place) => {
      const made = [...chain.slice(0, place), ...way, ...chain.slice(place)];
      return { chain: i, made, longer: chainLength(links, made) - before };
    }));
  });
  return found.sort((a, b) => a.longer - b.longer);
}

/** Steps shorter by less than this, mm, are no improvement. */
const WORTH = 1e-6;

function improved(links: readonly Link[], start: readonly Chain[], limit: number, rounds: number): Chain[] {
  let chains = [...start];
  for (let round = 0; round < rounds; round++) {
    const next = turnedStretch(links, chains) ?? movedStretch(links, chains, limit);
    if (!next) break;
    chains = next;
  }
  return chains;
}

/** A stretch of one chain run the other way, where that shortens it. */
function turnedStretch(links: readonly Link[], chains: readonly Chain[]): Chain[] | undefined {
  for (const [i, chain] of chains.entries()) {
    const before = chainLength(links, chain);
    for (let from = 0; from < chain.length; from++) {
      for (let to = from + 1; to <= chain.length; to++) {
        const made = [...chain.slice(0, from), ...reversed(chain.slice(from, to)), ...chain.slice(to)];
        if (chainLength(links, made) < before - WORTH) return chains.map((other, k) => (k === i ? made : other));
      }
    }
  }
  return undefined;
}

/** Most links moved together. */
const LONGEST = 3;

/** Up to three links that follow one another put elsewhere, where that shortens all steps together. No chain is emptied: there are as few as there can be. */
function movedStretch(links: readonly Link[], chains: readonly Chain[], limit: number): Chain[] | undefined {
  for (const [i, chain] of chains.entries()) {
    for (let from = 0; from < chain.length; from++) {
      for (let count = 1; count <= Math.min(LONGEST, chain.length - from, chain.length - 1); count++) {
        const left = [...chain.slice(0, from), ...chain.slice(from + count)];
        const without = chains.map((other, k) => (k === i ? left : other));
        const saved = chainLength(links, chain) - chainLength(links, left);
        const best = insertions(links, without, chain.slice(from, from + count), limit)[0];
        if (best && best.longer < saved - WORTH) return without.map((other, k) => (k === best.chain ? best.made : other));
      }
    }
  }
  return undefined;
}
