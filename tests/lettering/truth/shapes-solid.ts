import { type Loop, type Point, regionFromLoops } from '../../../src/geometry/index.ts';
import { at } from './curves.ts';
import { W } from './shapes-plain.ts';
import { asOutline, type Truth } from './truth.ts';

/** Filled shapes that no pen stroke makes, and dots of many shapes, as loops about their middle. */

const around = (count: number, place: (angle: number) => Point): Loop => Array.from({ length: count }, (_, i) => place((2 * Math.PI * i) / count));
const polar = (count: number, radius: (angle: number) => number): Loop => around(count, (angle) => at(radius(angle) * Math.cos(angle), radius(angle) * Math.sin(angle)));
const loopOf = (...places: readonly (readonly [number, number])[]): Loop => places.map(([x, y]) => at(x, y));

const filled = (name: string, loop: Loop): Truth => ({ name, width: W, outlines: [asOutline(regionFromLoops([loop], 'nonzero'))], strokes: [], counts: [0] });

export const masses = (): Truth[] => [
  filled('heart', around(300, (t) => at(48 * Math.sin(t) ** 3, 39 * Math.cos(t) - 15 * Math.cos(2 * t) - 6 * Math.cos(3 * t) - 3 * Math.cos(4 * t)))),
  filled('triangle', loopOf([0, 0], [60, 0], [30, 52])),
  filled('slab', loopOf([0, 0], [90, 0], [90, 60], [0, 60])),
  filled('cloud', around(400, (t) => at(60 * (1 + 0.12 * Math.abs(Math.sin(3.5 * t))) * Math.cos(t), 32 * (1 + 0.12 * Math.abs(Math.sin(3.5 * t))) * Math.sin(t)))),
  filled('shield', loopOf([0, 35], [15, 12], [30, 0], [45, 12], [60, 35], [60, 70], [0, 70])),
  filled('arrow', loopOf([0, 15], [40, 15], [40, 0], [70, 25], [40, 50], [40, 35], [0, 35])),
  filled('flower', polar(400, (t) => 30 + 14 * Math.cos(5 * t))),
  filled('cup', loopOf([5, 0], [45, 0], [50, 50], [0, 50])),
];

/** What stands over an i, about as wide as its stem; the direction of its bar in degrees, or nothing where it has none. */
export const dots = (): { readonly name: string; readonly loop: Loop; readonly along?: number }[] => [
  { name: 'round', loop: polar(120, () => 6) },
  { name: 'square', loop: loopOf([-5, -5], [5, -5], [5, 5], [-5, 5]) },
  { name: 'oval', loop: around(120, (t) => at(9 * Math.cos(t), 5 * Math.sin(t))), along: 0 },
  { name: 'upright oval', loop: around(120, (t) => at(5 * Math.cos(t), 7 * Math.sin(t))), along: 90 },
  { name: 'diamond', loop: loopOf([0, -9], [6, 0], [0, 9], [-6, 0]), along: 90 },
  { name: 'drop', loop: around(200, (t) => at(7 * Math.sin(t) * Math.abs(Math.sin(t / 2)) ** 1.5, -11 * Math.cos(t))), along: 90 },
];
