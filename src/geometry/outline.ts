import { isLoopInside } from './containment.ts';
import { loopArea, loopsBounds, type Region } from './region.ts';

/** A region with its holes filled: the outer loops that lie in no other one. */
export function outerContour(region: Region): Region {
  const outers = region.loops.map((loop) => ({ loop, area: loopArea(loop) })).filter(({ area }) => area > 0)
    .map(({ loop, area }) => ({ loop, area, bounds: loopsBounds([loop])! }));
  const isCovered = (inner: (typeof outers)[number]): boolean => outers.some(({ loop, area, bounds }) => area > inner.area
    && bounds.minX <= inner.bounds.minX && bounds.maxX >= inner.bounds.maxX
    && bounds.minY <= inner.bounds.minY && bounds.maxY >= inner.bounds.maxY && isLoopInside(inner.loop, loop));
  return { loops: outers.filter((outer) => !isCovered(outer)).map(({ loop }) => loop) };
}
