import { type Affine, applyToPoint, multiply, type Region, regionArea, regionBounds, rotation, translation } from '../../geometry/index.ts';
import { type Mask, maskOf } from './mask.ts';
import { Taken } from './taken.ts';

export interface NestRequest {
  readonly sheet: { readonly width: number; readonly height: number };
  /** Boards, each with an area. */
  readonly boards: readonly Region[];
  /** Least distance between two boards, mm, and between a board and the sheet's edge. */
  readonly spacing: number;
  readonly edge: number;
  /** Whether a board may lie a quarter turned. */
  readonly turn: boolean;
}

/** How boards lie on a sheet. */
export interface Nest {
  /** By board: how it is moved there, or undefined where it found no room. */
  readonly moves: readonly (Affine | undefined)[];
  /** Height of the sheet up to the topmost board. */
  readonly height: number;
  /** Height that boards of the same area would take if they filled the width of the sheet. */
  readonly bound: number;
}

/** Cells of the grid along the sheet's longer side: boards lie on it, so that a little is wasted and nothing takes long. */
const CELLS = 600;

/** Boards laid on a sheet one after the other, the one with the largest box first, each where its top comes lowest, then farthest to the left. The same boards always lie alike. */
export function nestBoards({ sheet, boards, spacing, edge, turn }: NestRequest, checkpoint: (done: number) => void): Nest {
  const cell = Math.max(sheet.width, sheet.height) / CELLS;
  const taken = new Taken();
  const order = boards.map((_, i) => i).sort((a, b) => boxArea(boards[b]!) - boxArea(boards[a]!) || a - b);
  const moves: (Affine | undefined)[] = boards.map(() => undefined);
  let height = 0;
  order.forEach((board, done) => {
    checkpoint(done / order.length);
    const place = bestPlace(waysOf(boards[board]!, spacing, cell, turn), taken, sheet, edge, cell);
    if (place === undefined) return;
    const { way: { mask, to }, row, column } = place;
    taken.put(mask, row, column);
    moves[board] = multiply(translation(edge + column * cell, edge + row * cell), to);
    height = Math.max(height, edge + row * cell + mask.height);
  });
  const area = boards.reduce((sum, board, i) => (moves[i] ? sum + regionArea(board) : sum), 0);
  return { moves, height, bound: area / sheet.width };
}

function boxArea(board: Region): number {
  const { minX, minY, maxX, maxY } = regionBounds(board)!;
  return (maxX - minX) * (maxY - minY);
}

/** A way a board may lie: how it comes to have its box's corner in the origin, and what it covers then. */
interface Way {
  readonly to: Affine;
  readonly mask: Mask;
}

function waysOf(board: Region, spacing: number, cell: number, turn: boolean): Way[] {
  return (turn ? [0, 90] : [0]).map((angle) => {
    const turned = movedRegion(board, rotation(angle));
    const { minX, minY } = regionBounds(turned)!;
    return { to: multiply(translation(-minX, -minY), rotation(angle)), mask: maskOf(turned, spacing, cell) };
  });
}

interface Place {
  readonly way: Way;
  readonly row: number;
  readonly column: number;
}

function bestPlace(ways: readonly Way[], taken: Taken, sheet: NestRequest['sheet'], edge: number, cell: number): Place | undefined {
  let best: (Place & { readonly top: number }) | undefined;
  for (const way of ways) {
    const [last, highest] = [sheet.width - 2 * edge - way.mask.width, sheet.height - 2 * edge - way.mask.height].map((room) => Math.floor(room / cell + 1e-9));
    for (let row = 0; row <= highest!; row++) {
      const top = row * cell + way.mask.height;
      if (best !== undefined && top >= best.top) break;
      const column = taken.freeAt(way.mask, row, last!);
      if (column === undefined) continue;
      best = { way, row, column, top };
      break;
    }
  }
  return best;
}

/** A region moved by a turn and a shift. */
export const movedRegion = ({ loops }: Region, by: Affine): Region => ({ loops: loops.map((loop) => loop.map((point) => applyToPoint(by, point))) });
