import { type Box, boxesOverlap, type Point, unionBoxes } from '../geometry/index.ts';

/** A line's pieces in a tree of boxes, for questions that only a few of them can answer. Piece k runs from place k - 1 to place k. */
export interface Pieces {
  readonly line: readonly Point[];
  /** Number of the first piece: 0 where the line is closed, and 1 where it is open. */
  readonly first: number;
  readonly root: Range | undefined;
}

/** Consecutive places and the pieces that end there: from `from` up to `to`, that one left out. */
interface Range {
  readonly box: Box;
  readonly from: number;
  readonly to: number;
  readonly halves: readonly [Range, Range] | undefined;
}

/** So many pieces are looked at one by one. */
const FEW = 8;

export function piecesOf(line: readonly Point[], closed: boolean): Pieces {
  const first = closed ? 0 : 1;
  const boxOf = (k: number): Box => {
    const [a, b] = [k < first ? line[k]! : line.at(k - 1)!, line[k]!];
    return { minX: Math.min(a.x, b.x), minY: Math.min(a.y, b.y), maxX: Math.max(a.x, b.x), maxY: Math.max(a.y, b.y) };
  };
  const range = (from: number, to: number): Range => {
    if (to - from <= FEW) return { box: unionBoxes(Array.from({ length: to - from }, (_, k) => boxOf(from + k)))!, from, to, halves: undefined };
    const middle = (from + to) >> 1;
    const halves = [range(from, middle), range(middle, to)] as const;
    return { box: unionBoxes(halves.map(({ box }) => box))!, from, to, halves };
  };
  return { line, first, root: line.length === 0 ? undefined : range(0, line.length) };
}

/** Visits the pieces that may touch a box, in their order. */
export function eachPieceNear({ first, root }: Pieces, box: Box, visit: (piece: number) => void): void {
  const look = ({ box: own, from, to, halves }: Range) => {
    if (!boxesOverlap(own, box)) return;
    if (halves) halves.forEach(look);
    else for (let k = Math.max(first, from); k < to; k++) visit(k);
  };
  if (root) look(root);
}

/** Rounding may take a distance for smaller than the one to a box around it by this share. */
const HAIR = 1e-9;

/**
 * The number of the place or piece nearest to a point, the earliest of equals, no farther than `within`; undefined when all are farther.
 * `distanceTo` tells the distance to one: to piece k or to the place where it ends.
 */
export function nearestOf({ root }: Pieces, point: Point, within: number, distanceTo: (k: number) => number): number | undefined {
  let [best, least]: [number | undefined, number] = [undefined, within];
  const look = ({ box, from, to, halves }: Range) => {
    if (distanceToBox(box, point) > least * (1 + HAIR)) return;
    if (halves) nearerFirst(halves, point).forEach(look);
    else for (let k = from; k < to; k++) {
      const distance = distanceTo(k);
      if (distance < least || (distance === least && (best === undefined || k < best))) [best, least] = [k, distance];
    }
  };
  if (root) look(root);
  return best;
}

const nearerFirst = ([a, b]: readonly [Range, Range], point: Point): readonly [Range, Range] => (distanceToBox(b.box, point) < distanceToBox(a.box, point) ? [b, a] : [a, b]);

function distanceToBox({ minX, minY, maxX, maxY }: Box, { x, y }: Point): number {
  return Math.hypot(Math.max(0, minX - x, x - maxX), Math.max(0, minY - y, y - maxY));
}
