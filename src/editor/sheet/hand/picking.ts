import type { Edit } from '../../../runtime/index.ts';
import { toFraction } from './frame.ts';
import { type Target, nextKind } from './targets.ts';
import { type Way, isOpen } from './ways.ts';

/** The places taken with one more; an arm taken where its junction is asked for stands for both. */
export function withTarget(way: Way, picked: readonly Target[], target: Target): readonly Target[] {
  if (nextKind(way, picked) !== 'junction' || target.kind !== 'arm') return [...picked, target];
  const junction = way.map.junctions[target.junction];
  return junction ? [...picked, { kind: 'junction', junction: target.junction, at: junction.at }, target] : picked;
}

/** No further place is taken: the edit is whole. */
export const isFull = (way: Way, picked: readonly Target[]): boolean => picked.length >= way.most;

/** As many places as a person likes, and enough are there. */
export const canEnd = (way: Way, picked: readonly Target[]): boolean => isOpen(way) && picked.length >= way.least;

/** The edit that the places taken make. */
export const editOf = ({ act, map }: Way, picked: readonly Target[]): Edit => ({ act, places: picked.map(({ at }) => toFraction(map.frame, at)) });
