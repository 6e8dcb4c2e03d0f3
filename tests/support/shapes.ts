import type { Path, Point, Region } from '../../src/geometry/index.ts';
import type { Channel, Stock } from '../../src/machining/index.ts';

export const line = (...points: readonly (readonly [number, number])[]): Path => {
  const [start, ...rest] = points.map(([x, y]): Point => ({ x, y }));
  return { start: start!, segments: rest.map((end) => ({ kind: 'line', end })), closed: false };
};

export const circle = (x: number, y: number, radius: number): Path => ({
  start: { x: x + radius, y },
  segments: [-1, 1].map((side) => ({ kind: 'arc', end: { x: x + side * radius, y }, centre: { x, y }, clockwise: false })),
  closed: true,
});

export { EXAMPLE_CUTTER as cutter, EXAMPLE_MACHINE as machine, rectangle } from '../../src/values/examples.ts';

export const stock: Stock = { width: 600, height: 300, thickness: 12, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };

/** A channel whose region is given, for checks that only look. */
export const channelOf = (region: Region, ...centreLines: readonly Path[]): Channel => ({ centreLines, region, width: 10, depth: 6, tolerance: 0.005 });
