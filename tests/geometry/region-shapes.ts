import { type Loop, type Path, type Point, polylinePath, type Region, regionFromLoops } from '../../src/geometry/index.ts';

export const points = (...pairs: readonly (readonly [number, number])[]): Point[] => pairs.map(([x, y]) => ({ x, y }));

export const rectangle = (x: number, y: number, width: number, height: number): Loop =>
  points([x, y], [x + width, y], [x + width, y + height], [x, y + height]);

export const solid = (...loops: readonly Loop[]): Region => regionFromLoops(loops, 'nonzero');

export const polyline = (...pairs: readonly (readonly [number, number])[]): Path => polylinePath(points(...pairs), false);

/** A full turn of a curve given by its parameter in radians. */
export const around = (count: number, at: (t: number) => readonly [number, number]): Point[] =>
  points(...Array.from({ length: count }, (_, i) => at((i / count) * 2 * Math.PI)));

export const turned = (loop: Loop, degrees: number, scale = 1): Point[] => {
  const c = Math.cos((degrees * Math.PI) / 180) * scale;
  const s = Math.sin((degrees * Math.PI) / 180) * scale;
  return loop.map(({ x, y }) => ({ x: x * c - y * s, y: x * s + y * c }));
};

/** Points wandering or scattered over a square of a size: crossings, spikes and reversals come of themselves. */
export function scribble(random: () => number, count: number, size: number): Point[] {
  const wander = random() < 0.5;
  let at: Point = { x: random() * size, y: random() * size };
  return Array.from({ length: count }, () => {
    const jump = (from: number): number => (wander ? from + (random() - 0.5) * size * 0.4 : random() * size);
    at = { x: jump(at.x), y: jump(at.y) };
    return at;
  });
}

/** A scribble with the faults that drawings have: repeated points, spikes, points on straight runs, edges that run over one another. */
export function faultyScribble(random: () => number, count: number, size: number): Point[] {
  return scribble(random, count, size).map(({ x, y }) => ({ x: Math.round(x), y: Math.round(y) })).flatMap((point, i, all) => {
    const before = all[Math.max(0, i - 1)]!;
    const middle = { x: (point.x + before.x) / 2, y: (point.y + before.y) / 2 };
    return [[point], [point, point], [point, before, point], [middle, point]][Math.floor(random() * 4)]!;
  });
}
