import type { Seam, Tile, Tiling } from '../job/tiling.ts';
import type { Axis } from './request.ts';

/** The two ends of a seam: it runs from edge to edge of all tiles. */
export function seamEnds({ tiles }: Tiling, { axis, at }: Pick<Seam, 'axis' | 'at'>): readonly [readonly [number, number], readonly [number, number]] {
  const cores = tiles.map(({ core }) => core);
  const [low, high] = axis === 'x'
    ? [Math.min(...cores.map(({ minY }) => minY)), Math.max(...cores.map(({ maxY }) => maxY))]
    : [Math.min(...cores.map(({ minX }) => minX)), Math.max(...cores.map(({ maxX }) => maxX))];
  return axis === 'x' ? [[at, low], [at, high]] : [[low, at], [high, at]];
}

/** Where the seams of one axis may be taken hold of: their middles. */
export function seamMiddles(tiling: Tiling, axis: Axis): (readonly [number, number])[] {
  return tiling.seams.filter((seam) => seam.axis === axis).map((seam) => {
    const [a, b] = seamEnds(tiling, seam);
    return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
  });
}

/** Pairs of set-ups on the two sides of a seam, the one that runs first first: the other is placed against it. */
export function neighboursAcross(tiles: readonly Tile[], { axis, at }: Seam): [number, number][] {
  const [low, high, along] = axis === 'x' ? ['minX', 'maxX', 'row'] as const : ['minY', 'maxY', 'column'] as const;
  return tiles.flatMap((a, i) => tiles.flatMap((b, j): [number, number][] => (a.core[high] === at && b.core[low] === at && a[along] === b[along] ? [i < j ? [i, j] : [j, i]] : [])));
}
