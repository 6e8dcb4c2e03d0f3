import { type Piece, pieceAt, pieceBox } from './path.ts';
import { type Shape } from './shapes.ts';
import type { Box, Point } from './view.ts';

/** A place on a path and how far it is from the place asked for, mm. */
export interface Near {
  readonly at: Point;
  readonly distance: number;
}

export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

export const isWithin = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point, around = 0): boolean =>
  x >= minX - around && x <= maxX + around && y >= minY - around && y <= maxY + around;

/** The place on a shape's lines nearest to `to`, where one lies within `within` mm. */
export function nearestOn({ chains, box }: Shape, to: Point, within: number): Near | undefined {
  if (!box || !isWithin(box, to, within)) return undefined;
  let best: Near | undefined;
  for (const { pieces } of chains)
    for (const piece of pieces) {
      if (!isWithin(pieceBox(piece), to, best?.distance ?? within)) continue;
      const near = nearestOnPiece(piece, to);
      if (near.distance <= (best?.distance ?? within)) best = near;
    }
  return best;
}

function nearestOnPiece(piece: Piece, to: Point): Near {
  return piece.controls ? nearestOnCubic(piece, to) : nearestOnLine(piece, to);
}

function nearestOnLine(piece: Piece, to: Point): Near {
  const { from, to: end } = piece;
  const along = { x: end.x - from.x, y: end.y - from.y };
  const square = along.x ** 2 + along.y ** 2;
  const t = square === 0 ? 0 : ((to.x - from.x) * along.x + (to.y - from.y) * along.y) / square;
  const at = pieceAt(piece, Math.min(1, Math.max(0, t)));
  return { at, distance: distance(at, to) };
}

/** Places tried along a cubic before the best is refined; letters' cubics have far fewer turns than that. */
const TRIED = 24;

function nearestOnCubic(piece: Piece, to: Point): Near {
  const far = (t: number) => distance(pieceAt(piece, t), to);
  let best = 0;
  for (let index = 1; index <= TRIED; index++) if (far(index / TRIED) < far(best)) best = index / TRIED;
  let [low, high] = [Math.max(0, best - 1 / TRIED), Math.min(1, best + 1 / TRIED)];
  for (let round = 0; round < 40; round++) {
    const third = (high - low) / 3;
    if (far(low + third) < far(high - third)) high -= third;
    else low += third;
  }
  const at = pieceAt(piece, (low + high) / 2);
  return { at, distance: distance(at, to) };
}

/** Whether a place lies inside a shape's closed paths (even-odd: in a hole of it is outside). */
export function contains({ chains, box }: Shape, at: Point): boolean {
  if (!box || !isWithin(box, at)) return false;
  const crossings = chains.filter(({ closed }) => closed).reduce((sum, { pieces }) => sum + pieces.reduce((count, piece) => count + crossingsOf(piece, at), 0), 0);
  return crossings % 2 === 1;
}

/** How often a piece crosses the ray to the right of a place; cubics by chords fine enough for pointing at them. */
function crossingsOf(piece: Piece, at: Point): number {
  const box = pieceBox(piece);
  if (at.y < box.minY || at.y > box.maxY || at.x > box.maxX) return 0;
  const parts = piece.controls ? 32 : 1;
  let count = 0;
  for (let index = 0; index < parts; index++) {
    const a = pieceAt(piece, index / parts);
    const b = index === parts - 1 ? piece.to : pieceAt(piece, (index + 1) / parts);
    if ((a.y > at.y) !== (b.y > at.y) && at.x < a.x + ((at.y - a.y) / (b.y - a.y)) * (b.x - a.x)) count += 1;
  }
  return count;
}
