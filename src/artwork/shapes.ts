import { type EllipticalArc, type Point } from '../geometry/index.ts';
import { type BuildOptions, PathBuilder, type Subpath } from './path-builder.ts';
import { readNumbers } from './scanner.ts';

/** Lengths of a basic shape in user units, by the name of the attribute; absent ones were not stated. */
export type Lengths = (name: string) => number | undefined;

/** Subpaths of a shape; `empty` when a size of zero or less keeps it from being drawn, `malformed` when its points are. */
export interface Shape {
  readonly subpaths: readonly Subpath[];
  readonly empty?: true;
  readonly malformed?: true;
}

const EMPTY: Shape = { subpaths: [], empty: true };

/** Quarter turns clockwise on the screen, as SVG 2 (section 10) lays the path of each shape. */
const quarter = (radiusX: number, radiusY: number, end: Point): EllipticalArc =>
  ({ radiusX, radiusY, rotation: 0, large: false, sweep: true, end });

/** SVG 2, section 10.4: starts on the top edge after the corner; a radius not stated equals the other. */
export function rectShape(at: Lengths, options: BuildOptions): Shape {
  const [x, y, width, height] = [at('x') ?? 0, at('y') ?? 0, at('width') ?? 0, at('height') ?? 0];
  if (!(width > 0 && height > 0)) return EMPTY;
  const stated = (name: string) => { const radius = at(name); return radius !== undefined && radius >= 0 ? radius : undefined; };
  const rx = Math.min(stated('rx') ?? stated('ry') ?? 0, width / 2);
  const ry = Math.min(stated('ry') ?? stated('rx') ?? 0, height / 2);
  const builder = new PathBuilder(options);
  const [right, bottom] = [x + width, y + height];
  const round = (toX: number, toY: number) => { if (rx > 0 && ry > 0) builder.arcTo(quarter(rx, ry, { x: toX, y: toY })); };
  const [cx, cy] = rx > 0 && ry > 0 ? [rx, ry] : [0, 0];
  builder.moveTo({ x: x + cx, y });
  builder.lineTo({ x: right - cx, y });
  round(right, y + cy);
  builder.lineTo({ x: right, y: bottom - cy });
  round(right - cx, bottom);
  builder.lineTo({ x: x + cx, y: bottom });
  round(x, bottom - cy);
  builder.lineTo({ x, y: y + cy });
  round(x + cx, y);
  builder.close();
  return { subpaths: builder.subpaths };
}

export function ellipseShape(at: Lengths, options: BuildOptions, radii: readonly [string, string]): Shape {
  const [cx, cy] = [at('cx') ?? 0, at('cy') ?? 0];
  // SVG 2: a radius of an ellipse that is not stated equals the other one.
  const [rx, ry] = [at(radii[0]) ?? at(radii[1]) ?? 0, at(radii[1]) ?? at(radii[0]) ?? 0];
  if (!(rx > 0 && ry > 0)) return EMPTY;
  const builder = new PathBuilder(options);
  builder.moveTo({ x: cx + rx, y: cy });
  for (const [x, y] of [[cx, cy + ry], [cx - rx, cy], [cx, cy - ry], [cx + rx, cy]] as const) builder.arcTo(quarter(rx, ry, { x, y }));
  builder.close();
  return { subpaths: builder.subpaths };
}

export function lineShape(at: Lengths, options: BuildOptions): Shape {
  const builder = new PathBuilder(options);
  builder.moveTo({ x: at('x1') ?? 0, y: at('y1') ?? 0 });
  builder.lineTo({ x: at('x2') ?? 0, y: at('y2') ?? 0 });
  builder.finish();
  return { subpaths: builder.subpaths };
}

/** Draws up to the first thing that is no number; an odd last number is left out. */
export function polyShape(points: string, closed: boolean, options: BuildOptions): Shape {
  const { numbers, complete } = readNumbers(points);
  const builder = new PathBuilder(options);
  for (let i = 0; i + 1 < numbers.length; i += 2) {
    const at = { x: numbers[i] ?? 0, y: numbers[i + 1] ?? 0 };
    if (i === 0) builder.moveTo(at);
    else builder.lineTo(at);
  }
  if (closed && numbers.length > 1) builder.close();
  builder.finish();
  const malformed = !complete || numbers.length % 2 === 1;
  return malformed ? { subpaths: builder.subpaths, malformed: true } : { subpaths: builder.subpaths };
}
