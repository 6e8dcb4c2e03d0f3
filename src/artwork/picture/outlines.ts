import { distance, fitArcs, type Path, type Point } from '../../geometry/index.ts';
import type { Outline } from '../artwork.ts';
import type { Rings } from './contour.ts';
import type { Scale } from './scale.ts';

/** An outline keeps within so many pixels of the edge found, and so many more for each share of noise left. */
const FIT_PIXELS = 0.15;
const FIT_NOISE = 3;

/** Nearer points of a ring tell nothing of its direction, in pixels. */
const LEAST_STEP = 0.3;

/** What outlines may stray from the edge found, in pixels; `noise` is what is left, as a share of the step between the two tones. */
export const roomFor = (noise: number): number => FIT_PIXELS + FIT_NOISE * noise;

interface Fitting {
  /** Tolerance, mm. */
  readonly room: number;
  readonly checkpoint: (done: number) => void;
}

/** Lines and arcs along rings, in mm: outer ones counter-clockwise, holes clockwise. */
export function fittedOutlines(shapes: readonly Rings[], scale: Scale, { room, checkpoint }: Fitting): Outline[] {
  return shapes.map((rings, i): Outline => {
    checkpoint(0.8 + (0.2 * i) / shapes.length);
    return { paths: rings.map((ring) => fitted(ring, scale, room)), fillRule: 'nonzero', source: `shape ${i + 1}` };
  });
}

/** Rings run clockwise about lettering as it is seen, since their y points down; so turned up they run the other way round. */
function fitted(ring: readonly Point[], scale: Scale, room: number): Path {
  const spaced: Point[] = [];
  for (const point of ring) if (spaced.length === 0 || distance(point, spaced.at(-1)!) >= LEAST_STEP) spaced.push(point);
  return fitArcs(spaced.map(({ x, y }) => scale.place({ column: x, row: y })), { closed: true, tolerance: room });
}
