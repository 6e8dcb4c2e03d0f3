import type { Stroke } from '../../artwork/artwork.ts';
import type { Point } from '../../geometry/index.ts';
import type { Layout } from './junctions.ts';

/** What an act made of the strokes, or what it looked for in vain, and where. */
export type Acted =
  | { readonly done: true; readonly strokes: readonly Stroke[]; /** Where it did something: doubts there are settled. */ readonly at: readonly Point[] }
  | { readonly done: false; readonly wanted: string; readonly at: Point };

/** Does one thing at places, mm, to strokes laid out. */
export type Act = (layout: Layout, places: readonly Point[]) => Acted;

/** How far from a place what it means may lie: two widths, and at least a hundredth of the frame. */
export const reachOf = ({ pen, frame }: Pick<Layout, 'pen' | 'frame'>): number => Math.max(2 * pen, 0.01 * frame.size);

/** The strokes with one of them replaced by others. */
export const replaced = (strokes: readonly Stroke[], place: number, by: readonly Stroke[]): Stroke[] => [...strokes.slice(0, place), ...by, ...strokes.slice(place + 1)];
