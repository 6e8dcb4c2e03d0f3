import type { Outline, Stroke } from '../../artwork/artwork.ts';
import {
  components, makeRegionIndex, pathLength, type Point, type Region, regionArea, regionBounds, intersectRegions, subtractRegion, unionRegions,
} from '../../geometry/index.ts';
import { type Cleaned, cleanOutlines } from '../clean.ts';
import { widthsOf } from '../edit/carry.ts';
import { stretchesOf } from '../edit/landings.ts';
import { openSlots } from '../skeleton.ts';
import { skeletonOf } from '../trace.ts';
import { drawnRegion } from './drawn.ts';

/** A distance in mm and the place where it was found. */
export interface Off {
  readonly distance: number;
  readonly at: Point;
}

/** What strokes cover of the artwork, and what of them lies beside it. */
export interface Coverage {
  /** Shares from 0 to 1: of the artwork's area that is covered, of the drawn area that lies outside the artwork. */
  readonly covered: number;
  readonly outside: number;
  readonly uncoveredRegion: Region;
  readonly outsideRegion: Region;
  /** How far artwork reaches beyond what was drawn, and what was drawn beyond the artwork. */
  readonly beyondStrokes: Off;
  readonly beyondArtwork: Off;
}

/** The artwork's own centre, its medial axis without what only corners make, against the strokes. */
export interface CentreMissed {
  readonly length: number;
  /** Share from 0 to 1 that is farther from every stroke than allowed. */
  readonly missed: number;
  readonly farthest: Off;
}

export interface Comparison {
  readonly strokes: Coverage;
  readonly channel?: Coverage;
  readonly centre: CentreMissed;
  /** Strokes that state no width and were drawn as wide as the artwork is on average. */
  readonly widthless: number;
}

export interface CompareOptions {
  /** The artwork's centre is missed where it is farther from every stroke than this share of the width there. */
  readonly far: number;
  /** A groove of one width along the strokes, looked at as well. */
  readonly channel?: Region;
}

/** Regions are right to within this share of the artwork's width. */
const FINE_SHARE = 0.001;

/** Compares strokes with the outlines they stand for. Undefined when the outlines have no area. */
export function compareWithArtwork(strokes: readonly Stroke[], outlines: readonly Outline[], options: CompareOptions, checkpoint: (done: number) => void = () => undefined): Comparison | undefined {
  const artwork = cleanOutlines(outlines);
  if (artwork === undefined) return undefined;
  const tolerance = FINE_SHARE * artwork.width;
  let widthless = 0;
  const drawn = strokes.map(({ path, ...rest }, i) => {
    checkpoint((0.5 * i) / strokes.length);
    const length = pathLength(path);
    const stated = widthsOf({ path, ...rest }, length);
    if (stated.length === 0) widthless++;
    return drawnRegion(path, stated.length > 0 ? stated : [{ along: 0, width: artwork.width }], tolerance);
  });
  const size = sizeOf(artwork.region);
  const covering = coverageOf(artwork, unionRegions(drawn), size);
  checkpoint(0.7);
  return {
    strokes: covering, widthless,
    ...(options.channel && { channel: coverageOf(artwork, options.channel, size) }),
    centre: centreMissed(strokes, artwork, options.far, size),
  };
}

function sizeOf(region: Region): number {
  const { minX, minY, maxX, maxY } = regionBounds(region)!;
  return Math.hypot(maxX - minX, maxY - minY);
}

function coverageOf({ region, width }: Cleaned, drawn: Region, size: number): Coverage {
  const [artwork, all] = [regionArea(region), regionArea(drawn)];
  const shared = regionArea(intersectRegions(region, drawn));
  const [uncoveredRegion, outsideRegion] = [subtractRegion(region, drawn), subtractRegion(drawn, region)];
  return {
    covered: share(shared, artwork), outside: share(all - shared, all), uncoveredRegion, outsideRegion,
    beyondStrokes: farthest(uncoveredRegion, drawn, width / LOOKS, size), beyondArtwork: farthest(outsideRegion, region, width / LOOKS, size),
  };
}

const share = (part: number, whole: number) => (whole > 0 ? Math.min(1, Math.max(0, part / whole)) : 0);

/** Places along boundaries looked at per width of the artwork. */
const LOOKS = 10;

/** The place on the boundary of what lies outside a region that is farthest from it; `size` where there is no region at all. */
function farthest(outside: Region, region: Region, spacing: number, size: number): Off {
  const index = makeRegionIndex(region);
  let most: Off = { distance: 0, at: outside.loops[0]?.[0] ?? { x: 0, y: 0 } };
  for (const loop of outside.loops) {
    loop.forEach((to, i) => {
      const from = loop.at(i - 1)!;
      const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / spacing));
      for (let k = 1; k <= pieces; k++) {
        const at = { x: from.x + ((to.x - from.x) * k) / pieces, y: from.y + ((to.y - from.y) * k) / pieces };
        const distance = Math.min(size, index.distanceToBoundary(at));
        if (distance > most.distance) most = { distance, at };
      }
    });
  }
  return most;
}

function centreMissed(strokes: readonly Stroke[], { region, width }: Cleaned, far: number, size: number): CentreMissed {
  const { index } = stretchesOf(strokes, FINE_SHARE * width);
  let [length, missed] = [0, 0];
  let most: Off = { distance: 0, at: { x: 0, y: 0 } };
  const look = (at: Point, radius: number, weight: number) => {
    const distance = index.nearest(at, size)?.distance ?? size;
    length += weight;
    if (distance > far * 2 * radius) missed += weight;
    if (distance > most.distance) most = { distance, at };
  };
  for (const part of components(region)) axisPlaces(part, width, look);
  return { length, missed: share(missed, length), farthest: most };
}

/** Visits all places of a part's axis with the radius there and half the length to their neighbours; its lone place, if it is nothing longer, with its radius. */
function axisPlaces(part: Region, width: number, visit: (at: Point, radius: number, length: number) => void): void {
  const { graph, alive } = skeletonOf(part, width);
  const { x, y, radius, neighbours } = graph;
  for (let node = 0; node < alive.length; node++) {
    if (!alive[node]) continue;
    const lengths = openSlots(graph, alive, node).map((slot) => neighbours[slot]!).map((to) => Math.hypot(x[node]! - x[to]!, y[node]! - y[to]!));
    visit({ x: x[node]!, y: y[node]! }, radius[node]!, lengths.length === 0 ? radius[node]! : lengths.reduce((a, b) => a + b) / 2);
  }
}
