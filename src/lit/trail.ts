import { type Path, type Point, flattenPath } from '../geometry/index.ts';
import { type Frame, inPixels } from './frame.ts';
import { type Raster, emptyRaster } from './raster.ts';

/** A line that shines. */
export interface ShiningLine {
  readonly path: Path;
  /** Length of a module, mm, where there are any: at its two ends solder pads take the place of lamps. */
  readonly module?: number;
}

/** Length of the pads where two modules meet, as a share of a module, and how bright it is beside the rest (common practice, no source). */
const PADS = 0.06;
const AT_PADS = 0.5;

/** Chords stay this near to curves, mm. */
const TOLERANCE = 0.02;

/** Pixels between the places light is put at. */
const STEP = 0.5;

/** Light on thin lines: each mm of line carries 1, spread over the four pixels nearest to it; the unit is 1 / mm. */
export function trailOf(lines: readonly ShiningLine[], frame: Frame): Raster {
  const raster = emptyRaster(frame);
  for (const line of lines) addLine(raster, line, frame);
  return raster;
}

function addLine(raster: Raster, { path, module }: ShiningLine, frame: Frame): void {
  const points = flattenPath(path, TOLERANCE);
  let along = 0;
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1]!, points[i]!];
    const length = Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2);
    const steps = Math.max(1, Math.ceil((length * frame.scale) / STEP));
    const light = (length / steps) * frame.scale * frame.scale;
    for (let k = 0; k < steps; k++) {
      const t = (k + 0.5) / steps;
      const at = inPixels(frame, { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
      splat(raster, at, light * brightnessAt(along + length * t, module));
    }
    along += length;
  }
}

function brightnessAt(along: number, module: number | undefined): number {
  if (module === undefined) return 1;
  const into = along % module;
  return Math.min(into, module - into) < (PADS * module) / 2 ? AT_PADS : 1;
}

function splat({ columns, rows, values }: Raster, { x, y }: Point, light: number): void {
  const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  const [right, lower] = [x - 0.5 - left, y - 0.5 - top];
  for (const [dx, dy, share] of [[0, 0, (1 - right) * (1 - lower)], [1, 0, right * (1 - lower)], [0, 1, (1 - right) * lower], [1, 1, right * lower]] as const) {
    if (left + dx >= 0 && left + dx < columns && top + dy >= 0 && top + dy < rows) values[(top + dy) * columns + left + dx]! += light * share;
  }
}
