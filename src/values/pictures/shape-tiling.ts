import type { Seam, Tiling } from '../../machining/index.ts';
import { type Path, polylinePath } from '../../geometry/index.ts';
import { amount } from '../check.ts';
import type { ShapedLayer } from './shapes.ts';

/** The seams, each from end to end of the sheet. */
export function shapeTiling(tiling: Tiling): readonly ShapedLayer[] {
  const paths = seamPaths(tiling);
  return [{ kind: 'seams', name: 'seams', items: tiling.seams.map((seam, i) => ({ shape: { paths: [paths[i]!] }, title: () => seamTitle(seam, i) })) }];
}

const seamTitle = ({ axis, at, crossings }: Seam, i: number): string => `seam ${i + 1}, ${axis} ${amount(Math.round(at * 10) / 10, 'mm')}, crosses ${crossings.length}`;

/** Each seam as a line across all tiles. */
export function seamPaths({ tiles, seams }: Tiling): Path[] {
  const [right, top] = [Math.max(0, ...tiles.map(({ core }) => core.maxX)), Math.max(0, ...tiles.map(({ core }) => core.maxY))];
  return seams.map(({ axis, at }) => polylinePath(axis === 'x' ? [{ x: at, y: 0 }, { x: at, y: top }] : [{ x: 0, y: at }, { x: right, y: at }], false));
}
