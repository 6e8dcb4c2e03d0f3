import { offsetRegion, type RegionOffsetOptions } from './offset.ts';
import { components, type Loop, type Region } from './region.ts';
import { simplifyLoop } from './simplify.ts';

// Rounding and joins leave points that later rings do not need; dropping them may take half of the tolerance.
const SIMPLIFY_SHARE = 0.5;

function simplified(region: Region, tolerance: number): Region {
  const loops = region.loops.map((loop): Loop => simplifyLoop(loop, tolerance));
  return { loops: loops.filter((loop) => loop.length > 2) };
}

/**
 * Inward offsets of a region at `first`, `first + step`, `first + 2 step`, ... mm until nothing is left, for passes that clear it. Each is made from the
 * one before, component by component, which costs little because fewer and shorter boundaries remain each time.
 * Every ring adds at most one `tolerance` to the deviation of the ring before it. Throws RangeError when `first` is
 * negative or `step` is below the tolerance.
 */
export function insetRings(region: Region, first: number, step: number, options: RegionOffsetOptions): Region[] {
  if (!(first >= 0)) throw new RangeError(`first inset ${first} mm: expected 0 or more`);
  if (!(step >= options.tolerance)) throw new RangeError(`step ${step} mm: expected at least the tolerance, ${options.tolerance}`);
  const rings: Loop[][] = [];
  for (const part of components(region)) {
    insetsOfPart(part, first, step, options).forEach(({ loops }, i) => {
      rings[i] = [...(rings[i] ?? []), ...loops];
    });
  }
  return rings.map((loops) => ({ loops }));
}

function insetsOfPart(part: Region, first: number, step: number, options: RegionOffsetOptions): Region[] {
  const share = options.tolerance * SIMPLIFY_SHARE;
  const inset = (from: Region, by: number): Region => offsetRegion(simplified(from, share), -by, { ...options, tolerance: options.tolerance - share });
  const rings: Region[] = [];
  for (let ring = first === 0 ? part : inset(part, first); ring.loops.length > 0; ring = inset(ring, step)) rings.push(ring);
  return rings;
}
