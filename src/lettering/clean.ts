import type { Outline } from '../artwork/artwork.ts';
import {
  boxOfPoints, components, distance, flattenPath, type Loop, loopPerimeter, type Path, type Point, pointInRegion, type Region, regionArea, regionBounds, regionFromLoops, regionPerimeter, simplifyLoop, unionRegions, withoutSpikes,
} from '../geometry/index.ts';

/** Chords of the first look stray at most this share of the drawing's size from its curves. */
const FIRST_LOOK = 1 / 4000;

/** Chords stray at most this share of the stroke width; a third of it again is spent on leaving out points. */
const FINE_SHARE = 0.001;

/** Hairs and slits thinner than this share of the stroke width are nothing a pen did: leftovers of drawing and joining. */
const THIN_SHARE = 0.002;

/** A part smaller than a disc this share of the stroke width across is a crumb, no lettering. */
const CRUMB_SHARE = 0.12;

/** A drawing's outlines as one region, its crumbs dropped. */
export interface Cleaned {
  readonly region: Region;
  /** Width of the lettering's strokes, roughly, mm: twice the area by the perimeter, a little under a band's. */
  readonly width: number;
  readonly crumbs: number;
  /** Which outline covers a point: the source it names, if any. */
  readonly sourceAt: (point: Point) => string | undefined;
}

/** The area that outlines fill, each by its own rule, overlapping letters joined. Undefined when it is nothing at all. */
export function cleanOutlines(outlines: readonly Outline[]): Cleaned | undefined {
  const size = sizeOf(outlines);
  if (!(size > 0)) return undefined;
  const first = roughWidth(regionOf(outlines, size * FIRST_LOOK));
  if (!(first > 0)) return undefined;
  const each = outlines.map((outline) => filled(outline, first * FINE_SHARE));
  const region = withoutContacts(plain(unionRegions(each), first), first * THIN_SHARE);
  const width = roughWidth(region);
  if (!(width > 0)) return undefined;
  const parts = components(region);
  const kept = parts.filter((part) => regionArea(part) > (Math.PI / 4) * (CRUMB_SHARE * width) ** 2);
  const whole = { loops: kept.flatMap(({ loops }) => loops.filter((loop) => loopPerimeter(loop) > CRUMB_SHARE * width)) };
  return kept.length === 0 ? undefined : { region: whole, width: roughWidth(whole), crumbs: parts.length - kept.length, sourceAt: sourcesOf(outlines, each) };
}

/** Twice the area by the perimeter, part by part, each as it weighs: thousands of crumbs must not make the lettering look thin. */
function roughWidth(region: Region): number {
  const parts = components(region).map((part) => ({ area: regionArea(part), perimeter: regionPerimeter(part) })).filter(({ area, perimeter }) => area > 0 && perimeter > 0);
  const whole = parts.reduce((sum, { area }) => sum + area, 0);
  return parts.reduce((sum, { area, perimeter }) => sum + (area / whole) * ((2 * area) / perimeter), 0);
}

function sizeOf(outlines: readonly Outline[]): number {
  const box = boxOfPoints(outlines.flatMap(({ paths }) => paths.flatMap(hullOf)));
  return box === undefined ? 0 : Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
}

const hullOf = (path: Path): Point[] => [path.start, ...path.segments.map(({ end }) => end)];

const filled = ({ paths, fillRule }: Outline, tolerance: number): Region => regionFromLoops(paths.map((path): Loop => flattenPath(path, tolerance)), fillRule);

const regionOf = (outlines: readonly Outline[], tolerance: number): Region => unionRegions(outlines.map((outline) => filled(outline, tolerance)));

function sourcesOf(outlines: readonly Outline[], regions: readonly Region[]): (point: Point) => string | undefined {
  const boxes = regions.map(regionBounds);
  return (point) => outlines.find((_, i) => {
    const box = boxes[i];
    const near = box !== undefined && point.x >= box.minX && point.x <= box.maxX && point.y >= box.minY && point.y <= box.maxY;
    return near && pointInRegion(regions[i]!, point) !== 'outside';
  })?.source;
}

/** The region without points it can do without and without what is too thin for any pen, for strokes of a width. */
function plain({ loops }: Region, width: number): Region {
  const simple = (loop: Loop): Loop => simplifyLoop(loop, (width * FINE_SHARE) / 3);
  const plainLoop = (loop: Loop): Loop => {
    const before = simple(loop);
    const after = withoutSpikes(before, width * THIN_SHARE);
    // Where a spike stood on a straight side its feet are left.
    return after.length < before.length ? simple(after) : after;
  };
  return { loops: loops.map(plainLoop).filter((loop) => loop.length > 2) };
}

/**
 * The region with its corners cut off where its loops touch one another, or themselves, in a vertex: at most `most` mm along their edges. A loop
 * leaves such a point on the side it came from, so the cuts never cross, and no two points coincide.
 */
function withoutContacts({ loops }: Region, most: number): Region {
  const shortest = shortestEdgesAt(loops);
  const cut = (point: Point, toward: Point): Point => {
    const [dx, dy] = [toward.x - point.x, toward.y - point.y];
    const share = Math.min(most, shortest.get(placeKey(point))!.edge / 3) / Math.hypot(dx, dy);
    return { x: point.x + share * dx, y: point.y + share * dy };
  };
  return { loops: loops.map((loop) => loop.flatMap((point, i) => (shortest.get(placeKey(point))!.times === 1 ? [point]
    : [cut(point, loop.at(i - 1)!), cut(point, loop[(i + 1) % loop.length]!)]))) };
}

const placeKey = ({ x, y }: Point): string => `${x} ${y}`;

/** For each place of the loops' vertices how many vertices lie there, and the shortest of all their edges. */
function shortestEdgesAt(loops: readonly Loop[]): Map<string, { times: number; edge: number }> {
  const found = new Map<string, { times: number; edge: number }>();
  for (const loop of loops) loop.forEach((point, i) => {
    const [key, before, after] = [placeKey(point), loop.at(i - 1)!, loop[(i + 1) % loop.length]!];
    const { times, edge } = found.get(key) ?? { times: 0, edge: Infinity };
    found.set(key, { times: times + 1, edge: Math.min(edge, distance(point, before), distance(point, after)) });
  });
  return found;
}
