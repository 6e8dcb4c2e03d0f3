import { type Path, pathSegmentsWithStarts, reversePath } from './path.ts';
import { segmentLength } from './measure.ts';
import { segmentUpTo } from './trim.ts';

/** The part of a path between two lengths from its start, mm, as an open path; lengths beyond its ends are taken as its ends. */
export function pathPiece(path: Path, from: number, to: number): Path {
  const first = Math.max(0, from);
  const upTo = firstPart(path, to);
  if (first === 0) return upTo;
  return reversePath(firstPart(reversePath(upTo), pieceLength(upTo) - first));
}

const pieceLength = (path: Path) => pathSegmentsWithStarts(path).reduce((sum, started) => sum + segmentLength(started), 0);

/** What is left within this share of a segment's length of its end is nothing. */
const NOTHING = 1e-12;

function firstPart(path: Path, length: number): Path {
  const segments = [];
  let left = Math.max(0, length);
  for (const started of pathSegmentsWithStarts(path)) {
    const size = segmentLength(started);
    if (left >= size * (1 - NOTHING)) segments.push(started.segment);
    else if (left > size * NOTHING) segments.push(segmentUpTo(started, left));
    if (left < size) break;
    left -= size;
  }
  return { start: path.start, segments, closed: false };
}
