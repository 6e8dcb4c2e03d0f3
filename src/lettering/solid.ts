import { loopArea, type Point, type Region, regionArea } from '../geometry/index.ts';
import { type Track, trackLength } from './track.ts';

/** What a part of the lettering is: strokes, a dot, or a shape that no pen stroke makes. */
export type Kind = 'strokes' | 'dot' | 'solid';

/** An axis shorter than this many widths of its widest disc says little: the part is about as wide as it is long. */
const COMPACT = 1.2;

/** A compact part up to this many times the lettering's width is its dot, whatever its shape, and up to the second if it is round. */
const [DOT_SIZE, ROUND_DOT_SIZE] = [1.8, 4];

/** A ragged part no longer than this many times the lettering's width is a dot too: diamonds, drops, little stars. */
const DOT_LENGTH = 3.5;

/** Alone, or larger, it is a dot if its outline strays at most this share from the ellipse with the same moments. */
const ROUND = 0.05;

/** Or if its area is that of a pen's short bar: as much by its axis as this, in squares of the width. */
const BAR = 0.04;

/** Discs that grow or shrink by more than this per length, on average, are no pen's: letters of ten typefaces reach 0.21, hearts, drops and stars begin at 0.27. */
const RAGGED = 0.24;

/** Tells what a part is from its axis. `width` is the usual width of the lettering's strokes, mm; undefined when there are none. */
export function kindOf(region: Region, tracks: readonly Track[], width: number | undefined): Kind {
  const widest = 2 * tracks.reduce((most, { radius }) => radius.reduce((a, b) => Math.max(a, b), most), 0);
  const long = tracks.reduce((sum, track) => sum + trackLength(track), 0);
  const ragged = raggedness(tracks, long) > RAGGED;
  if (width !== undefined && widest < DOT_SIZE * width && region.loops.length === 1) {
    if (long < COMPACT * widest || (ragged && 2 * momentsOf(region).long < DOT_LENGTH * width)) return 'dot';
  }
  if (long >= COMPACT * widest) return ragged ? 'solid' : 'strokes';
  if (width !== undefined && widest > ROUND_DOT_SIZE * width) return 'solid';
  return region.loops.length === 1 && (offEllipse(region) < ROUND || isBar(region, tracks, { widest, long })) ? 'dot' : 'solid';
}

/** Greatest distance of a region's corners from the ellipse with its moments, as a share of the ellipse. */
function offEllipse(region: Region): number {
  const { centre, long, short, direction } = momentsOf(region);
  const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
  return region.loops[0]!.reduce((most, { x, y }) => {
    const [dx, dy] = [x - centre.x, y - centre.y];
    return Math.max(most, Math.abs(Math.hypot((dx * cos + dy * sin) / long, (dy * cos - dx * sin) / short) - 1));
  }, 0);
}

/** Whether the region is what a round pen leaves along its axis: an area of width times length and one disc. */
const isBar = (region: Region, tracks: readonly Track[], { widest, long }: { widest: number; long: number }): boolean =>
  tracks.length === 1 && raggedness(tracks, long) < BAR && Math.abs(regionArea(region) / widest ** 2 - Math.PI / 4 - long / widest) < BAR;

/** Mean change of the discs' radius per length. */
function raggedness(tracks: readonly Track[], long: number): number {
  let change = 0;
  for (const { radius } of tracks) {
    const stride = Math.max(1, Math.floor(radius.length / 16));
    for (let i = stride; i < radius.length; i += stride) change += Math.abs(radius[i]! - radius[i - stride]!);
  }
  return long > 0 ? change / long : 0;
}

/** Half-axes and direction (radians) of the ellipse that has a region's second moments, and its centre. */
export interface Moments {
  readonly centre: Point;
  readonly long: number;
  readonly short: number;
  readonly direction: number;
}

/** Second moments by Green's theorem, edge by edge. */
export function momentsOf({ loops }: Region): Moments {
  const area = regionArea({ loops });
  const origin = loops[0]![0]!;
  let [mx, my, xx, xy, yy] = [0, 0, 0, 0, 0];
  for (const loop of loops) {
    if (loopArea(loop) === 0) continue;
    loop.forEach((point, i) => {
      const after = loop[(i + 1) % loop.length]!;
      const [ax, ay, bx, by] = [point.x - origin.x, point.y - origin.y, after.x - origin.x, after.y - origin.y];
      const twice = ax * by - bx * ay;
      mx += (twice * (ax + bx)) / 6;
      my += (twice * (ay + by)) / 6;
      xx += (twice * (ax * ax + ax * bx + bx * bx)) / 12;
      yy += (twice * (ay * ay + ay * by + by * by)) / 12;
      xy += (twice * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by)) / 24;
    });
  }
  const [cx, cy] = [mx / area, my / area];
  const [vx, vy, vxy] = [xx / area - cx * cx, yy / area - cy * cy, xy / area - cx * cy];
  const [mean, spread] = [(vx + vy) / 2, Math.hypot((vx - vy) / 2, vxy)];
  const half = (value: number) => 2 * Math.sqrt(Math.max(0, value));
  return { centre: { x: origin.x + cx, y: origin.y + cy }, long: half(mean + spread), short: half(mean - spread), direction: Math.atan2(2 * vxy, vx - vy) / 2 };
}
