import { loopArea, loopsBounds, makeRegionIndex, type Point, type Region } from '../../geometry/index.ts';
import type { Tab } from '../job/tab.ts';
import type { Tiling } from '../job/tiling.ts';
import { sharesOf } from '../passes/tiles.ts';

/** A piece that is parted from the sheet. */
export interface Piece {
  readonly kind: 'board' | 'cut-out';
  readonly at: Point;
  /** mm2. */
  readonly area: number;
  /** Tabs that keep it; without any it comes loose in `setUp` (place in the tiling), the last that cuts round it. */
  readonly tabs: number;
  readonly setUp: number;
}

/** Every board and every cut-out inside one, with what keeps it in the sheet. `cutter` is the outline cutter's diameter, mm. */
export function partedPieces(board: Region, tabs: readonly Tab[], tiling: Tiling | undefined, cutter: number): Piece[] {
  const edges = board.loops.map((loop) => makeRegionIndex({ loops: [loop] }));
  const owners = tabs.map(({ centre }) => {
    const distances = edges.map((edge) => edge.distanceToBoundary(centre));
    const least = Math.min(...distances);
    return least <= cutter ? distances.indexOf(least) : -1;
  });
  return board.loops.map((loop, i): Piece => {
    const area = loopArea(loop);
    const shares = tiling ? sharesOf(tiling.tiles, loopsBounds([loop])!, cutter) : [];
    return {
      kind: area > 0 ? 'board' : 'cut-out', at: loop[0]!, area: Math.abs(area),
      tabs: owners.filter((owner) => owner === i).length, setUp: Math.max(0, ...shares.map(({ setUp }) => setUp)),
    };
  });
}
