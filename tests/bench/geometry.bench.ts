/**
 * Ratios of the region functions, run by hand: `npm run bench`.
 * Wanted: twentyfold load at most 25 times the time; rings one from another at least 8 times as fast as whole and absolute;
 * each step at most 4 times as slow as native Clipper2 by the same method.
 */
import { bench, describe } from 'vitest';
import { insetRings, type Loop, offsetPath, offsetPaths, type Path, polylinePath, type Region, regionFromLoops, unionRegions } from '../../src/geometry/index.ts';
import { type RawOffset, rawSide, rawStroke } from '../../src/geometry/raw-offset.ts';
import { nativeClipper } from '../support/native-clipper.ts';
import { seeded } from '../support/random.ts';

const options = { cap: 'round', join: 'round', tolerance: 0.01 } as const;
const raw: RawOffset = { distance: 5, join: 'round', miterLimit: 4, tolerance: 0.0045 };
const few = { time: 0, iterations: 4, warmupTime: 0, warmupIterations: 1 };

/** Rows of 40 smooth strokes of 300 points, two metres long; at a pitch of 50 mm neighbours overlap. */
function strokes(count: number): Path[] {
  const random = seeded(7);
  return Array.from({ length: count }, (_, i) => {
    const [cx, cy] = [(i % 40) * 50, Math.floor(i / 40) * 200];
    const [a, b, f, g] = [20 + random() * 20, 40 + random() * 30, 1 + Math.floor(random() * 3), 1 + Math.floor(random() * 3)];
    const [p, q] = [random() * 6, random() * 6];
    return polylinePath(Array.from({ length: 300 }, (_unused, k) => {
      const t = (k / 299) * Math.PI * 1.7;
      return { x: cx + a * Math.sin(f * t + p), y: cy + b * Math.sin(g * t + q) };
    }), false);
  });
}

const load = strokes(40);
const twenty = strokes(800);
const tubes = load.map((path) => offsetPath(path, 5, options));
const groove = unionRegions(tubes);
const chains = load.map(({ start, segments }): Loop => [start, ...segments.map(({ end }) => end)]);
const native = await nativeClipper();

const wholeAt = ({ loops }: Region, depth: number): Loop[] =>
  loops.map((loop) => [...rawSide([...loop].reverse(), { ...raw, distance: depth })].reverse());

function wholeAndAbsolute(region: Region, union: (loops: readonly Loop[]) => Region): Region[] {
  const rings: Region[] = [];
  for (let depth = 1; ; depth += 1) {
    const ring = union(wholeAt(region, depth));
    if (ring.loops.length === 0) return rings;
    rings.push(ring);
  }
}

describe('grooves of strokes, one load and twenty', () => {
  bench('40 strokes', () => { offsetPaths(load, 5, options); }, few);
  bench('800 strokes', () => { offsetPaths(twenty, 5, options); }, few);
});

describe('inset rings of a groove, 1 mm apart', () => {
  bench('one from another', () => { insetRings(groove, 1, 1, options); }, few);
  bench('whole and absolute', () => { wholeAndAbsolute(groove, (loops) => regionFromLoops(loops, 'positive')); }, few);
});

describe('each stroke on its own', () => {
  bench('ours', () => { for (const chain of chains) regionFromLoops([rawStroke(chain, 'round', 'round', raw)], 'positive'); }, few);
  bench('native', () => { for (const chain of chains) native.union([rawStroke(chain, 'round', 'round', raw)], 'positive'); }, few);
});

describe('the union of strokes', () => {
  const all = tubes.flatMap(({ loops }) => loops);
  bench('ours', () => { unionRegions(tubes); }, few);
  bench('native', () => { native.union(all, 'positive'); }, few);
});

describe('the first inset of a groove', () => {
  bench('ours', () => { regionFromLoops(wholeAt(groove, 1), 'positive'); }, few);
  bench('native', () => { native.union(wholeAt(groove, 1), 'positive'); }, few);
});
