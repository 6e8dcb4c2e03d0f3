import { type Path, polylinePath } from '../../geometry/index.ts';
import { type Seam, type Tiling, seamEnds } from '../../machining/index.ts';
import { amount } from '../check.ts';
import type { ShapedLayer } from './shapes.ts';

/** The seams, each from end to end of the sheet. */
export function shapeTiling(tiling: Tiling): readonly ShapedLayer[] {
  const paths = seamPaths(tiling);
  return [{ kind: 'seams', name: 'seams', items: tiling.seams.map((seam, i) => ({ shape: { paths: [paths[i]!] }, title: () => seamTitle(seam, i) })) }];
}

const seamTitle = ({ axis, at, crossings }: Seam, i: number): string => `seam ${i + 1}, ${axis} ${amount(Math.round(at * 10) / 10, 'mm')}, crosses ${crossings.length}`;

/** Each seam as a line across all tiles. */
export function seamPaths(tiling: Tiling): Path[] {
  return tiling.seams.map((seam) => polylinePath(seamEnds(tiling, seam).map(([x, y]) => ({ x, y })), false));
}
