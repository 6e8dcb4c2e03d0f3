import { type Path, pathEnd } from './path.ts';
import { add, length, type Point, scale, type Vector } from './point.ts';
import { endTangents } from './sample.ts';

/**
 * The open path made longer at both ends by straight lines of `amount` mm in its own direction there. A single point
 * has no direction and stays, and so do a closed path and one lengthened by 0.
 * @throws RangeError when the amount is negative.
 */
export function lengthenPath(path: Path, amount: number): Path {
  if (!(amount >= 0)) throw new RangeError(`a path is lengthened by 0 or more, not ${amount}`);
  const { first, last } = endTangents(path);
  if (path.closed || amount === 0 || length(first) === 0) return path;
  const ahead = (p: Point, v: Vector) => add(p, scale(v, amount));
  return {
    start: ahead(path.start, scale(first, -1)),
    segments: [{ kind: 'line', end: path.start }, ...path.segments, { kind: 'line', end: ahead(pathEnd(path), last) }],
    closed: false,
  };
}
