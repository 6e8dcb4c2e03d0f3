import { type Box } from '../../geometry/box.ts';
import { type Point, type Point3 } from '../../geometry/point.ts';
import { type Move } from '../job/pass.ts';
import { type Stock } from '../job/stock.ts';
import { swathOf } from './swath.ts';

/** How far something reaches beyond the sheet's edges, mm, and the place on the edge of the sheet's box nearest to it. */
export interface Overhang {
  readonly mm: number;
  readonly at?: Point;
}

interface Run {
  readonly start: Point3;
  readonly moves: readonly Move[];
  readonly cutterDiameter: number;
  readonly shift: readonly [number, number];
}

/** How far cuts below the top face reach beyond the sheet, measured square to its edges; exact, arcs included. */
export function reachBeyond(stock: Stock, programs: readonly Run[]): Overhang {
  let worst: Overhang = { mm: 0 };
  for (const { start, moves, cutterDiameter, shift } of programs) {
    const sheet = { minX: -shift[0], minY: -shift[1], maxX: stock.width - shift[0], maxY: stock.height - shift[1] };
    moves.forEach((move, index) => {
      const from = moves[index - 1]?.to ?? start;
      if (staysWithin(sheet, from, move, cutterDiameter / 2)) return;
      const swath = swathOf(from, move, cutterDiameter / 2);
      if (!swath) return;
      const { minX, minY, maxX, maxY } = swath.box;
      const [left, bottom, right, top] = [minX + shift[0], minY + shift[1], maxX + shift[0], maxY + shift[1]];
      const mm = Math.max(-left, -bottom, right - stock.width, top - stock.height);
      if (mm <= worst.mm) return;
      worst = { mm, at: { x: -left === mm ? left : right - stock.width === mm ? right : (left + right) / 2,
        y: -bottom === mm ? bottom : top - stock.height === mm ? top : (bottom + top) / 2 } };
    });
  }
  return worst;
}

/** Whether a move cannot leave a box, judged by its ends or its whole circle: settles nearly all moves without their swath. */
function staysWithin(box: Box, from: Point, move: Move, radius: number): boolean {
  const inside = ({ x, y }: Point, margin: number): boolean =>
    x - margin >= box.minX && x + margin <= box.maxX && y - margin >= box.minY && y + margin <= box.maxY;
  if (move.kind !== 'arc') return inside(from, radius) && inside(move.to, radius);
  const bend = Math.hypot(from.x - move.centre.x, from.y - move.centre.y);
  return inside(move.centre, bend + radius) && inside(move.to, radius);
}
