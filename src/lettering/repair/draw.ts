import type { Stroke, WidthAt } from '../../artwork/artwork.ts';
import { add, distance, type Path, pathFromCubics, pathLength, type Point, scale, subtract, type Vector } from '../../geometry/index.ts';
import { type Act } from './act.ts';
import type { Layout } from './junctions.ts';
import { nearestSpot } from './lines.ts';
import { tipsNear } from './tips.ts';

/** Ends of a new stroke nearer to an end, or to a stroke, than this share of the width are drawn to it. */
const SNAP = 0.5;

/** Adds a smooth stroke through places; one that comes back to where it began is closed. */
export const draw: Act = (layout, places) => {
  const snap = SNAP * layout.pen;
  const apart = withoutRepeats(layout, places);
  const closed = apart.length > 3 && distance(apart[0]!, apart.at(-1)!) <= snap;
  const points = closed ? apart.slice(0, -1) : withoutRepeats(layout, apart.map((place, i) => (i === 0 || i === apart.length - 1 ? snapped(layout, place, snap) : place)));
  if (points.length < 2) return { done: false, wanted: 'second place', at: places[0]! };
  return { done: true, strokes: [...layout.strokes, drawn(layout, smoothThrough(points, closed))], at: [] };
};

const withoutRepeats = ({ frame }: Layout, places: readonly Point[]): Point[] =>
  places.filter((place, i) => i === 0 || distance(place, places[i - 1]!) > 1e-9 * frame.size);

function snapped(layout: Layout, place: Point, within: number): Point {
  return tipsNear(layout, place, within)[0]?.at ?? nearestSpot(layout, place, within)?.at ?? place;
}

/** The new stroke, as wide as the others are where they state a width. */
function drawn({ strokes, pen }: Layout, path: Path): Stroke {
  const widths: WidthAt[] = [{ along: 0, width: pen }, { along: pathLength(path), width: pen }];
  return {
    path, source: 'drawn by hand',
    ...(strokes.some(({ width }) => width !== undefined) && { width: pen }), ...(strokes.some((stroke) => stroke.widths !== undefined) && { widths }),
  };
}

/**
 * Cubics through points, tangent-continuous, their speeds after the square roots of the chords so that no loops come between uneven
 * points (P. J. Barry and R. N. Goldman 1988; C. Yuksel, S. Schaefer and J. Keyser 2011). Open ones do not bend at their ends.
 */
export function smoothThrough(points: readonly Point[], closed: boolean): Path {
  const count = points.length;
  const at = (i: number) => points[(i + count) % count]!;
  const spans = points.map((point, i) => Math.sqrt(distance(point, at(i + 1))));
  const inner = (i: number) => slopeAt(at(i - 1), at(i), at(i + 1), spans[(i - 1 + count) % count]!, spans[i]!);
  const slopes = points.map((_, i): Vector => {
    if (closed || (i > 0 && i < count - 1)) return inner(i);
    const [own, next] = i === 0 ? [0, 1] : [count - 1, count - 2];
    const chord = scale(subtract(at(next), at(own)), (i === 0 ? 1 : -1) / spans[Math.min(own, next)]!);
    return count === 2 ? chord : scale(subtract(scale(chord, 3), inner(next)), 0.5);
  });
  const cubics = Array.from({ length: closed ? count : count - 1 }, (_, i) => {
    const handle = spans[i]! / 3;
    return [add(at(i), scale(slopes[i]!, handle)), subtract(at(i + 1), scale(slopes[(i + 1) % count]!, handle)), at(i + 1)] as const;
  });
  return pathFromCubics(points[0]!, cubics, closed);
}

/** The slope of the parabola through three points at the middle one, by the parameter spans between them. */
function slopeAt(before: Point, here: Point, after: Point, h0: number, h1: number): Vector {
  const [m0, m1] = [scale(subtract(here, before), 1 / h0), scale(subtract(after, here), 1 / h1)];
  return scale(add(scale(m0, h1), scale(m1, h0)), 1 / (h0 + h1));
}
