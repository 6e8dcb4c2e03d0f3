import { beforeAll, expect, it } from 'vitest';
import {
  components, offsetPath, offsetRegion, polylinePath, type Region, regionArea, regionFromLoops,
} from '../../src/geometry/index.ts';
import { jstsOffset, jstsStroke } from '../support/jsts-buffer.ts';
import { nativeClipper, type NativeClipper } from '../support/native-clipper.ts';
import { seeded } from '../support/random.ts';
import { faultyScribble, scribble } from './region-shapes.ts';

/** mm; a fifth of what work is done at, so that the libraries' different ways to cut arcs do not count. */
const TOLERANCE = 0.002;

let native: NativeClipper;
beforeAll(async () => { native = await nativeClipper(); });

/** Area that belongs to one of the two only, as a part of the reference's. */
const mismatch = (ours: Region, reference: Region): number => native.mismatch(ours, reference) / regionArea(native.union(reference.loops, 'nonzero'));

it('300 random strokes differ from those of JTS and of Clipper2 by less than 0.1 % of their area', () => {
  const random = seeded(20);
  for (let k = 0; k < 300; k += 1) {
    const size = 20 + random() * 80;
    const count = 2 + Math.floor(random() * 18);
    const closed = count > 3 && random() < 0.3;
    const chain = (k % 4 === 0 ? faultyScribble : scribble)(random, count, size);
    const distance = 1 + random() * size * 0.1;
    const ours = offsetPath(polylinePath(chain, closed), distance, { cap: 'round', join: 'round', tolerance: TOLERANCE });
    expect(mismatch(ours, native.stroke(chain, closed, distance, TOLERANCE / 2)), `stroke ${k} against Clipper2`).toBeLessThan(1e-3);
    expect(mismatch(ours, jstsStroke(chain, closed, distance, TOLERANCE / 2)), `stroke ${k} against JTS`).toBeLessThan(1e-3);
  }
});

it('100 random regions moved outward and inward differ from those of JTS and of Clipper2 by less than 0.1 %', () => {
  const random = seeded(21);
  const options = { join: 'round', tolerance: TOLERANCE } as const;
  for (let k = 0; k < 100; k += 1) {
    const blob = offsetPath(polylinePath(scribble(random, 8, 90), k % 2 === 0), 6, { cap: 'round', ...options });
    const region = k % 3 === 0 ? regionFromLoops([scribble(random, 9, 120)], 'evenodd') : blob;
    const [part] = [...components(region)].sort((a, b) => regionArea(b) - regionArea(a));
    // Inward not so far that what is left is thin as a hair, where a part in a thousand is less than a unit.
    const distance = k % 2 === 0 ? 0.5 + random() * 8 : -0.5 - random() * 2;
    const ours = offsetRegion(part!, distance, options);
    if (regionArea(ours) < 0.1 * regionArea(part!)) continue;
    expect(mismatch(ours, native.offset(part!, distance, TOLERANCE / 2)), `region ${k} against Clipper2`).toBeLessThan(1e-3);
    expect(mismatch(ours, jstsOffset(part!.loops, distance, TOLERANCE / 2)), `region ${k} against JTS`).toBeLessThan(1e-3);
  }
});

it('bevelled corners lie within rounded ones and these within sharp ones', () => {
  const random = seeded(22);
  for (let k = 0; k < 40; k += 1) {
    const region = regionFromLoops([scribble(random, 7, 80)], 'nonzero');
    const [bevel, round, sharp] = ([['bevel', 1], ['round', 1], ['miter', 1e6]] as const)
      .map(([join, miterLimit]) => offsetRegion(region, 3, { join, miterLimit, tolerance: TOLERANCE }));
    expect(regionArea(native.combine('subtract', bevel!, round!))).toBeLessThan(1e-3 * regionArea(bevel!));
    expect(regionArea(native.combine('subtract', round!, sharp!))).toBeLessThan(1e-3 * regionArea(bevel!));
  }
});
