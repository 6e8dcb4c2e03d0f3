import { type Point, distance } from '../../geometry/index.ts';

/** Something with two ends that takes part of what a run may carry. */
export interface Link {
  readonly ends: readonly [Point, Point];
  readonly load: number;
}

/** A link in a run, by its place in the list, entered by its first end or, turned, by its second. */
export interface Turn {
  readonly link: number;
  readonly turned: boolean;
}
export type Chain = readonly Turn[];

/** Up to so many links the best grouping of all is found; beyond, a good one. */
export const EXACT_LINKS = 9;

/** Straight distance from where one link is left to where the next is entered, mm. */
export function stepLength(links: readonly Link[], from: Turn, to: Turn): number {
  return distance(links[from.link]!.ends[from.turned ? 0 : 1], links[to.link]!.ends[to.turned ? 1 : 0]);
}

export const chainLength = (links: readonly Link[], chain: Chain): number =>
  chain.reduce((sum, turn, i) => (i > 0 ? sum + stepLength(links, chain[i - 1]!, turn) : sum), 0);

export const chainLoad = (links: readonly Link[], chain: Chain): number => chain.reduce((sum, { link }) => sum + links[link]!.load, 0);
