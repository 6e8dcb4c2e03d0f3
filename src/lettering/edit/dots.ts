import type { Outline, Stroke } from '../../artwork/artwork.ts';
import {
  boxOfPoints, components, distance, flattenPath, type Path, pathLength, type Point, polylinePath, type Region, regionArea, regionFromLoops, regionPerimeter, samplePath, type Vector,
} from '../../geometry/index.ts';
import { momentsOf } from '../solid.ts';
import { stretchesOf, type Stretches } from './landings.ts';

/** A small part of the lettering that stands alone: a stroke (by its number) or a shape. */
export interface Dot {
  readonly centre: Point;
  /** Its own longest direction, a unit vector; absent where it is as long as wide. */
  readonly along: Vector | undefined;
  /** How far it reaches in that direction, end to end, mm. */
  readonly length: number;
  /** The lettering's width there, mm, where it is known. */
  readonly width: number | undefined;
}

export interface StrokeDot extends Dot {
  readonly stroke: number;
}

/** A dot this much longer than wide has a direction of its own. */
const LONGER = 1.2;

/** Strokes shorter than `shortest` (closed ones: smaller across) that no other stroke comes within `reach` mm of. */
export function strokeDots(strokes: readonly Stroke[], shortest: number, reach: number): StrokeDot[] {
  const small = strokes.flatMap((stroke, i) => {
    const extent = extentOf(stroke.path, shortest);
    return extent < shortest ? [i] : [];
  });
  if (small.length === 0) return [];
  const stretches = stretchesOf(strokes, Math.max(reach / 10, 1e-4));
  return small.filter((i) => standsAlone(strokes[i]!, i, stretches, reach)).map((i) => ({ stroke: i, ...dotOf(strokes[i]!) }));
}

/** Length of an open stroke, size across of a closed one; anything from `enough` on is not looked at closely. */
function extentOf(path: Path, enough: number): number {
  const length = pathLength(path);
  return path.closed && length < 4 * enough ? diameterOf(samplePath(path, Math.max(length / LOOKS, 1e-6)).map(({ point }) => point)) : length;
}

/** Places looked at round a closed stroke. */
const LOOKS = 96;

/** Greatest distance between two of a few points. */
function diameterOf(points: readonly Point[]): number {
  return points.reduce((most, p, i) => points.slice(i + 1).reduce((far, q) => Math.max(far, distance(p, q)), most), 0);
}

function standsAlone({ path }: Stroke, own: number, { list, index }: Stretches, reach: number): boolean {
  const isOther = (k: number) => list[k]!.stroke !== own;
  return samplePath(path, Math.max(reach, 1e-3)).every(({ point }) => index.nearest(point, reach, isOther) === undefined);
}

function dotOf({ path, width, widths }: Stroke): Dot {
  const points = samplePath(path, Math.max(pathLength(path) / 64, 1e-6)).map(({ point }) => point);
  const weights = points.map((_, i): number => (path.closed || (i > 0 && i < points.length - 1) ? 1 : 0.5));
  const total = points.length === 1 ? 1 : weights.reduce((a, b) => a + b);
  const mean = (value: (p: Point) => number) => points.reduce((sum, p, i) => sum + value(p) * (points.length === 1 ? 1 : weights[i]!), 0) / total;
  const centre = { x: mean(({ x }) => x), y: mean(({ y }) => y) };
  const [xx, xy, yy] = [mean(({ x }) => (x - centre.x) ** 2), mean(({ x, y }) => (x - centre.x) * (y - centre.y)), mean(({ y }) => (y - centre.y) ** 2)];
  const [middle, spread] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
  const turned = Math.atan2(2 * xy, xx - yy) / 2;
  const along = { x: Math.cos(turned), y: Math.sin(turned) };
  const own = widths && widths.length > 0 ? widths.reduce((sum, at) => sum + at.width, 0) / widths.length : width;
  // A dot's stroke is what its pen ran: with the pen's width it must be longer than wide to have a direction.
  const reaches = points.map((p) => (p.x - centre.x) * along.x + (p.y - centre.y) * along.y);
  const run = reaches.reduce((a, b) => Math.max(a, b)) - reaches.reduce((a, b) => Math.min(a, b));
  const slender = Math.sqrt(middle + spread) > LONGER * Math.sqrt(Math.max(0, middle - spread));
  return { centre, along: run > 0 && slender && run > (LONGER - 1) * (own ?? 0) ? along : undefined, length: run, width: own };
}

/** What is left of outlines once their dots are taken out, and the dots. */
export interface ShapeDots {
  readonly dots: readonly (Dot & { readonly source?: string })[];
  readonly rest: readonly Outline[];
}

/** A dot fills at least this share of the circle with its perimeter (a square fills 0.785). */
const COMPACT = 0.75;

/** Chords of a shape stray at most this share of the size that dots may have. */
const FINE = 1 / 1000;

/** Takes the small compact shapes without holes, up to `largest` mm across, out of outlines. Whoever has none passes untouched. */
export function shapeDots(outlines: readonly Outline[], largest: number): ShapeDots {
  const dots: (Dot & { source?: string })[] = [];
  const rest = outlines.flatMap((outline): Outline[] => {
    const region = regionFromLoops(outline.paths.map((path) => flattenPath(path, largest * FINE)), outline.fillRule);
    const parts = components(region);
    const found = parts.filter((part) => isDot(part, largest));
    if (found.length === 0) return [outline];
    const source = outline.source === undefined ? {} : { source: outline.source };
    dots.push(...found.map((part) => ({ ...shapeDot(part), ...source })));
    const others = parts.filter((part) => !found.includes(part));
    return others.length === 0 ? [] : [{ paths: others.flatMap(({ loops }) => loops.map((loop) => polylinePath(loop, true))), fillRule: 'nonzero', ...source }];
  });
  return { dots, rest };
}

function isDot(part: Region, largest: number): boolean {
  if (part.loops.length > 1) return false;
  const box = boxOfPoints(part.loops[0]!);
  if (box === undefined || Math.min(box.maxX - box.minX, box.maxY - box.minY) > largest) return false;
  const fills = (4 * Math.PI * regionArea(part)) / regionPerimeter(part) ** 2;
  return fills >= COMPACT && 2 * momentsOf(part).long <= largest;
}

function shapeDot(part: Region): Dot {
  const { centre, long, short, direction } = momentsOf(part);
  const along = long > LONGER * short ? { x: Math.cos(direction), y: Math.sin(direction) } : undefined;
  // A round pen of the dot's width would run this far.
  return { centre, along, length: 2 * (long - short), width: 2 * short };
}
