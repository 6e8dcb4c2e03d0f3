import { type Path, polylinePath } from '../../geometry/index.ts';
import { type Seam, type Tile, type Tiling, seamEnds } from '../../machining/index.ts';
import { amount } from '../check.ts';
import { type ShapedItem, type ShapedLayer, boxLoop } from './shapes.ts';

/** What each set-up cuts, with its name, and the seams, each from end to end of the sheet. A sheet cut in one needs neither. */
export function shapeTiling(tiling: Tiling): readonly ShapedLayer[] {
  const paths = seamPaths(tiling);
  return [
    { kind: 'tiles', name: 'set-ups', items: tiling.tiles.length > 1 ? tiling.tiles.map(tileItem) : [] },
    { kind: 'seams', name: 'seams', items: tiling.seams.map((seam, i) => ({ shape: { paths: [paths[i]!] }, label: `seam ${i + 1}`, title: () => seamTitle(seam, i) })) },
  ];
}

function tileItem({ name, window }: Tile, i: number): ShapedItem {
  const { minX, minY, maxX, maxY } = window;
  const cuts = () => `${name} cuts x ${tenths(minX)} to ${tenths(maxX)}, y ${tenths(minY)} to ${amount(tenths(maxY), 'mm')}`;
  return { shape: { loops: [boxLoop(window)] }, label: name, setUps: [i], title: cuts };
}

const seamTitle = ({ axis, at, crossings }: Seam, i: number): string => `seam ${i + 1}, ${axis} ${amount(tenths(at), 'mm')}, crosses ${crossings.length}`;

const tenths = (value: number): number => Math.round(value * 10) / 10 + 0;

/** Each seam as a line across all tiles. */
export function seamPaths(tiling: Tiling): Path[] {
  return tiling.seams.map((seam) => polylinePath(seamEnds(tiling, seam).map(([x, y]) => ({ x, y })), false));
}
