import type { Outline } from '../../../src/artwork/artwork.ts';
import {
  type Affine, applyToPath, determinant, distance, flattenPath, type Loop, loopPerimeter, type Point, regionFromLoops,
} from '../../../src/geometry/index.ts';
import { seeded } from '../../support/random.ts';
import { asOutline, type Truth } from './truth.ts';

const loopsOf = (outlines: readonly Outline[]): Loop[] => outlines.flatMap(({ paths }) => paths.map((path) => flattenPath(path, 1e-3)));

/** A truth moved, turned, mirrored or scaled alike in all directions. */
export function moved(truth: Truth, by: Affine): Truth {
  return {
    ...truth, width: truth.width * Math.sqrt(Math.abs(determinant(by))),
    outlines: movedOutlines(truth.outlines, by),
    strokes: truth.strokes.map((stroke) => ({ ...stroke, path: applyToPath(by, stroke.path) })),
  };
}

export const movedOutlines = (outlines: readonly Outline[], by: Affine): Outline[] =>
  outlines.map((outline) => ({ ...outline, paths: outline.paths.map((path) => applyToPath(by, path)) }));

/** Outlines with a point halfway along every edge: the same shapes from twice the points. */
export const doubled = (outlines: readonly Outline[]): Outline[] => [asOutline({
  loops: loopsOf(outlines).map((loop) => loop.flatMap((from, i) => {
    const to = loop[(i + 1) % loop.length]!;
    return [from, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }];
  })),
})];

/** Corners sharper than this stay when points are left out, degrees. */
const CORNER = 15;

/** Outlines without every other point of their curves; corners stay. */
export const halved = (outlines: readonly Outline[]): Outline[] => [asOutline({
  loops: loopsOf(outlines).map((loop) => loop.filter((_, i) => i % 2 === 0 || turnAt(loop, i) > CORNER)),
})];

function turnAt(loop: Loop, i: number): number {
  const [a, b, c] = [loop[(i + loop.length - 1) % loop.length]!, loop[i]!, loop[(i + 1) % loop.length]!];
  const [u, v] = [{ x: b.x - a.x, y: b.y - a.y }, { x: c.x - b.x, y: c.y - b.y }];
  return Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y)) * (180 / Math.PI);
}

/**
 * Outlines whose boundary was shifted along its normals by smooth noise: waves of random phase, all of one size, from half a
 * width to four widths long. Its root mean square is `share` of the width over the square root of three, that of
 * numbers spread evenly up to `share` either way.
 */
export function noisy(truth: Truth, share: number, seed = 1): Truth {
  const random = seeded(seed);
  const loops = loopsOf(truth.outlines).map((loop) => noisyLoop(loop, truth.width, share, random));
  return { ...truth, name: `${truth.name}, noise ${100 * share} %`, outlines: [asOutline(regionFromLoops(loops, 'positive'))] };
}

function noisyLoop(loop: Loop, width: number, share: number, random: () => number): Loop {
  const total = loopPerimeter(loop);
  const [first, last] = [Math.max(1, Math.ceil(total / (4 * width))), Math.max(1, Math.floor(total / (0.5 * width)))];
  const waves = Array.from({ length: last - first + 1 }, (_, i) => ({ k: first + i, phase: 2 * Math.PI * random() }));
  const size = (share * width * Math.SQRT2) / Math.sqrt(3 * waves.length);
  const points = dense(loop, width / 20);
  let along = 0;
  return points.map((point, i) => {
    const [before, after] = [points.at(i - 1)!, points[(i + 1) % points.length]!];
    if (i > 0) along += distance(point, before);
    const shift = size * waves.reduce((sum, { k, phase }) => sum + Math.cos((2 * Math.PI * k * along) / total + phase), 0);
    const span = distance(before, after) || 1;
    return { x: point.x + (shift * (after.y - before.y)) / span, y: point.y - (shift * (after.x - before.x)) / span };
  });
}

const dense = (loop: Loop, step: number): Point[] => loop.flatMap((from, i) => {
  const to = loop[(i + 1) % loop.length]!;
  const pieces = Math.max(1, Math.ceil(distance(from, to) / step));
  return Array.from({ length: pieces }, (_, k) => ({ x: from.x + ((to.x - from.x) * k) / pieces, y: from.y + ((to.y - from.y) * k) / pieces }));
});
