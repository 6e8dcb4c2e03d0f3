import { depthPasses } from '../job/feeds.ts';

/**
 * Heights (negative, mm) of equal layers from `top` down to `bottom`, none thicker than `depthOfCut`: the number of
 * layers is the depth over the depth of cut, rounded up. Empty when there is nothing to cut.
 */
export function equalLayers(top: number, bottom: number, depthOfCut: number): number[] {
  const depth = top - bottom;
  const count = depthPasses(depth, depthOfCut);
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? bottom : top - (depth * (i + 1)) / count));
}
