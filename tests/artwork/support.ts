import { expect } from 'vitest';
import { type Drawing, type ArtworkProblem, type ReadOptions, readDrawing } from '../../src/artwork/index.ts';
import { type Path, type Point, flattenPath } from '../../src/geometry/index.ts';

/** A drawing of 100 by 100 mm in which one unit is one mm. */
export const page = (body: string, attributes = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${body}</svg>`;

export function read(text: string, options?: ReadOptions): Drawing {
  const result = readDrawing(text, options);
  if (!result.ok) throw new Error(`expected a drawing, not ${JSON.stringify(result.problems)}`);
  return result.drawing;
}

export const readPage = (body: string, options?: ReadOptions): Drawing => read(page(body), options);

export function refusal(text: string, options?: ReadOptions): ArtworkProblem {
  const result = readDrawing(text, options);
  if (result.ok) throw new Error('expected a problem, not a drawing');
  expect(result.problems).toHaveLength(1);
  return result.problems[0];
}

/** Start and ends of the segments, turned back to y down on the 100 mm page, rounded to hide floating-point dust. */
export const corners = (path: Path): (readonly [number, number])[] =>
  [path.start, ...path.segments.map(({ end }) => end)].map(({ x, y }) => [tidy(x), tidy(100 - y)] as const);

export const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

/** The only stroke's path of path data drawn in black. */
export function strokeOf(d: string): Path {
  const { strokes } = readPage(`<path d="${d}" fill="none" stroke="black"/>`);
  expect(strokes).toHaveLength(1);
  return strokes[0]!.path;
}

export const found = ({ cautions }: Drawing): string[] => cautions.map((caution) => caution.found);

/** Greatest distance between two paths both ways: of sparse points on one from dense chords of the other. In mm, to 3e-4. */
export function distanceBetween(a: Path, b: Path): number {
  return Math.max(oneWay(flattenPath(a, 0.05), flattenPath(b, 3e-4)), oneWay(flattenPath(b, 0.05), flattenPath(a, 3e-4)));
}

const oneWay = (from: readonly Point[], to: readonly Point[]): number => Math.max(...from.map((point) => distanceToPolyline(point, to)));

function distanceToPolyline(point: Point, polyline: readonly Point[]): number {
  let best = Infinity;
  polyline.forEach((a, i) => {
    const b = polyline[(i + 1) % polyline.length]!;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const along = dx * dx + dy * dy;
    const t = along === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / along));
    best = Math.min(best, Math.hypot(point.x - a.x - t * dx, point.y - a.y - t * dy));
  });
  return best;
}
