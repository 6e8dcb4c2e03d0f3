import { add, endTangents, leftNormal, type Path, pathEnd, pathLength, pathPiece, type Point, rotate, scale } from '../../geometry/index.ts';
import type { TypeProblems } from './problem.ts';

export type Alignment = 'left' | 'centre' | 'right';

/** What the feet of the letters stand on. */
export type BaselineShape =
  | { readonly kind: 'straight' }
  /** Above 0 the centre of the circle lies below the letters, below 0 above them. */
  | { readonly kind: 'arc'; readonly radius: number }
  /** `offset` moves the text on along the path. */
  | { readonly kind: 'path'; readonly path: Path; readonly offset: number };

/** A place of a baseline, and how far it is turned there, counter-clockwise. */
export interface Footing {
  readonly at: Point;
  readonly degrees: number;
}

export interface Baseline {
  /** Where a line of this width begins, mm along the baseline. */
  readonly begin: (width: number) => number;
  /** The place a length along the baseline of a line, the first being 0. */
  readonly footing: (along: number, line: number) => Footing;
  /** Why lines of these widths cannot stand on it. */
  readonly refuse: (widths: readonly number[]) => TypeProblems | undefined;
  /** How far a line of this width stands out beyond its ends, mm. */
  readonly beyond: (width: number) => number;
}

/** `leading` is the distance from one baseline to the next, `capHeight` the height of capitals, mm. */
export interface Setting {
  readonly alignment: Alignment;
  readonly leading: number;
  readonly capHeight: number;
}

export function makeBaseline(shape: BaselineShape, setting: Setting): Baseline {
  switch (shape.kind) {
    case 'straight': return straight(setting);
    case 'arc': return arc(shape.radius, setting);
    case 'path': return along(shape.path, shape.offset, setting);
  }
}

const SHARE = { left: 0, centre: 0.5, right: 1 } as const;

const straight = ({ alignment, leading }: Setting): Baseline => ({
  begin: (width) => -SHARE[alignment] * width,
  footing: (x, line) => ({ at: { x, y: 0 - line * leading }, degrees: 0 }),
  refuse: () => undefined,
  beyond: () => 0,
});

/** Circles about one centre, each with its own arc length; the place 0 of every line lies on the vertical through the centre. */
function arc(radius: number, setting: Setting): Baseline {
  const radiusOf = (line: number) => radius - line * setting.leading;
  return {
    ...straight(setting),
    footing: (x, line) => {
      const own = radiusOf(line);
      const degrees = (-x / own) * (180 / Math.PI);
      const foot = rotate({ x: 0, y: own }, degrees);
      return { at: { x: foot.x, y: foot.y - radius }, degrees };
    },
    refuse: (widths) => {
      const least = leastRadius(radius, widths, setting);
      return Math.abs(radius) >= least ? undefined : [{
        place: 'radius', expected: `an arc that the lines fit on, of a radius of at least ${least.toFixed(1)} mm`, found: `${radius} mm`, advice: 'Raise the radius, or set the letters smaller.',
      }];
    },
  };
}

/** Every line fits once around its circle; a centre above the letters lies above their tops, one below them below the last line. */
function leastRadius(radius: number, widths: readonly number[], { leading, capHeight }: Setting): number {
  const inward = Math.sign(radius);
  const least = widths.map((width, line) => Math.max(width / (2 * Math.PI), inward < 0 ? capHeight : 1) + inward * line * leading);
  return Math.max(1, ...least);
}

/** Along a path, straight on beyond its ends; a closed one goes round. Further lines stand off it by the leading. */
function along(path: Path, offset: number, { alignment, leading }: Setting): Baseline {
  const total = pathLength(path);
  const begin = (width: number) => offset + SHARE[alignment] * (total - width);
  return {
    begin,
    footing: (place, line) => {
      const { at, tangent } = placeOn(path, total, path.closed ? ((place % total) + total) % total : place);
      return { at: add(at, scale(leftNormal(tangent), 0 - line * leading)), degrees: (Math.atan2(tangent.y, tangent.x) * 180) / Math.PI };
    },
    refuse: (widths) => {
      if (total === 0) return [{ place: 'baseline', expected: 'a stroke of some length', found: 'a point', advice: 'Draw a longer stroke.' }];
      const widest = Math.max(...widths);
      if (!path.closed || widest <= total) return undefined;
      return [{ place: 'baseline', expected: `a closed stroke of at least ${widest.toFixed(1)} mm`, found: `${total.toFixed(1)} mm`, advice: 'Set the letters smaller, or draw a longer stroke.' }];
    },
    beyond: (width) => (path.closed ? 0 : Math.max(0, -begin(width)) + Math.max(0, begin(width) + width - total)),
  };
}

function placeOn(path: Path, total: number, place: number): { readonly at: Point; readonly tangent: Point } {
  const { first, last } = endTangents(path);
  if (place <= 0) return { at: add(path.start, scale(first, place)), tangent: first };
  if (place >= total) return { at: add(pathEnd(path), scale(last, place - total)), tangent: last };
  const piece = pathPiece(path, 0, place);
  return { at: pathEnd(piece), tangent: endTangents(piece).last };
}
