import { type Chain, type Link, EXACT_LINKS } from './chain.ts';
import { exactChains } from './chain-exact.ts';
import { nearChains } from './chain-near.ts';

/**
 * Groups links into as few chains as the limit on a chain's load allows, so that the steps between them are short: the shortest of all up to
 * nine links, otherwise the nearest ends joined first and improved. A link whose load alone is above the limit is a chain of its own.
 */
export function groupLinks(links: readonly Link[], limit: number): Chain[] {
  return links.length <= EXACT_LINKS ? exactChains(links, limit) : nearChains(links, limit);
}
