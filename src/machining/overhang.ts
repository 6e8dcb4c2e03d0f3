import { type Point, type Point3 } from '../geometry/point.ts';
import { type Move } from './pass.ts';
import { type Stock } from './stock.ts';
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
    moves.forEach((move, index) => {
      const swath = swathOf(moves[index - 1]?.to ?? start, move, cutterDiameter / 2);
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
