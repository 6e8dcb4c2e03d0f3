import { arcAngles, arcPoint } from './arc.ts';
import { cubicLength, cubicPiece } from './cubic.ts';
import { segmentCubic, segmentLength } from './measure.ts';
import { type Path, type Segment, type StartedSegment, pathSegmentsWithStarts, reversePath } from './path.ts';
import { lerp } from './point.ts';

/** Halvings when the parameter of a length along a cubic is sought: 2^-50 of the segment. */
const HALVINGS = 50;

/** The open path made shorter by `amount` mm at both ends; undefined when nothing would be left. */
export function trimPath(path: Path, amount: number): Path | undefined {
  if (amount === 0) return path;
  const shorter = trimEnd(path, amount);
  const reversed = shorter && trimEnd(reversePath(shorter), amount);
  return reversed && reversePath(reversed);
}

function trimEnd(path: Path, excess: number): Path | undefined {
  const kept = pathSegmentsWithStarts(path);
  let left = excess;
  for (let last = kept.pop(); last; last = kept.pop()) {
    const length = segmentLength(last);
    if (left < length) return { ...path, segments: [...kept.map(({ segment }) => segment), segmentUpTo(last, length - left)] };
    left -= length;
  }
  return undefined;
}

/** The first `length` mm of a segment. */
export function segmentUpTo({ start, segment }: StartedSegment, length: number): Segment {
  const share = length / segmentLength({ start, segment });
  if (segment.kind === 'line') return { kind: 'line', end: lerp(start, segment.end, share) };
  if (segment.kind === 'arc') return { ...segment, end: arcPoint(arcAngles(start, segment), share) };
  const cubic = segmentCubic(start, segment);
  const [, control1, control2, end] = cubicPiece(cubic, 0, parameterAt(length, (t) => cubicLength(cubic, 0, t)));
  return { kind: 'cubic', control1, control2, end };
}

function parameterAt(length: number, lengthTo: (t: number) => number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (lengthTo(middle) < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
