import type { Outline } from '../../src/artwork/artwork.ts';
import { type Path, type Point, polylinePath } from '../../src/geometry/index.ts';
import { distancesOf, type Raster, rasters } from './raster.ts';
import { thin } from './thinning.ts';

/**
 * Centre lines as rasters give them, to measure ours against: fill pixels, thin them, link what is left into chains, drop chains that only
 * mirror corners, move each pixel to the ridge of the distances between its neighbours, and smooth. Chains end where they meet.
 */
export const rasterStrokes = (outlines: readonly Outline[], pixel: number): { readonly path: Path }[] => rasters(outlines, pixel).flatMap(strokesOf);

/** Smoothing reaches this share of the stroke's half-width along a chain, and so many pixels at least and at most: more would flatten bends. */
const SMOOTH_SHARE = 0.5, LEAST_REACH = 3, MOST_REACH = 8;

function strokesOf(raster: Raster): { path: Path }[] {
  const far = distancesOf(raster);
  const chains = chainsOf(withoutSpurs(thin(raster), raster, far), raster.columns);
  return chains.map(({ pixels, closed }) => ({ path: polylinePath(placed(smoothed(centred(pixels, closed, raster, far), closed, reachOf(pixels, far)), raster), closed) }));
}

interface Chain {
  readonly pixels: readonly number[];
  readonly closed: boolean;
  /** How many lines leave its first and its last pixel. */
  readonly degrees: readonly [number, number];
}

/** Links pixels into chains from fork or end to fork or end, and what is left into rings. */
function chainsOf(lines: Uint8Array, columns: number): Chain[] {
  const beside = [1, columns, -1, -columns], all = [1, columns + 1, columns, columns - 1, -1, -columns - 1, -columns, 1 - columns];
  const ways = [...beside, ...all.filter((step) => !beside.includes(step))];
  const next = (at: number) => ways.filter((step) => lines[at + step]).map((step) => at + step);
  const degree = (at: number) => all.filter((step, i) => lines[at + step] && !lines[at + all[(i + 7) % 8]!]).length;
  const pixels: number[] = [];
  for (let at = lines.indexOf(1); at >= 0; at = lines.indexOf(1, at + 1)) pixels.push(at);
  const degrees = new Map(pixels.map((at) => [at, degree(at)]));
  const used = new Set<number>();
  const chains: Chain[] = [];
  const follow = (from: number, to: number) => {
    const chain = [from, to];
    for (let at = to; degrees.get(at) === 2; ) {
      used.add(at);
      const open: number[] = next(at).filter((one) => !used.has(one) && one !== chain.at(-2) && (one !== from || chain.length > 3));
      const way = open.find((one) => degrees.get(one) !== 2) ?? open[0];
      if (way === undefined) break;
      chain.push(way);
      at = way;
    }
    chains.push({ pixels: chain, closed: degrees.get(from) === 2, degrees: [degrees.get(from)!, degrees.get(chain.at(-1)!)!] });
  };
  for (const at of pixels) if (degrees.get(at) !== 2) for (const to of next(at)) if (degrees.get(to) === 2 && !used.has(to)) follow(at, to);
  for (const at of pixels) {
    if (degrees.get(at) !== 2 || used.has(at)) continue;
    used.add(at);
    follow(at, next(at)[0]!);
  }
  return chains;
}

/** Without the chains with a loose end that hardly leave the disc they begin in; what they held apart is thinned again. */
function withoutSpurs(lines: Uint8Array, raster: Raster, far: Float32Array): Uint8Array {
  for (const { pixels, closed, degrees } of chainsOf(lines, raster.columns)) {
    if (closed || Math.min(...degrees) > 1 || Math.max(...degrees) < 3) continue;
    const outward = degrees[0] > degrees[1] ? pixels : [...pixels].reverse();
    if (pixels.length < 1.2 * far[outward[0]!]!) for (const at of outward.slice(1)) lines[at] = 0;
  }
  return thin({ ...raster, ink: lines });
}

function reachOf(pixels: readonly number[], far: Float32Array): number {
  const radius = pixels.map((at) => far[at]!).sort((a, b) => a - b)[pixels.length >> 1]!;
  return Math.min(MOST_REACH, Math.max(LEAST_REACH, SMOOTH_SHARE * radius));
}

/** Pixels' places, each moved across its chain to where the slopes of the distances on both sides meet. */
function centred(pixels: readonly number[], closed: boolean, { columns }: Raster, far: Float32Array): Point[] {
  const places = pixels.map((at): Point => ({ x: at % columns, y: Math.floor(at / columns) }));
  const ahead = 4;
  return places.map((place, i) => {
    const radius = far[pixels[i]!]!;
    const [a, b] = closed ? [places.at((i - ahead) % places.length)!, places[(i + ahead) % places.length]!] : [places[Math.max(0, i - ahead)]!, places[Math.min(places.length - 1, i + ahead)]!];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (radius < 3 || long === 0) return place;
    const [nx, ny] = [-(b.y - a.y) / long, (b.x - a.x) / long];
    const out = radius / 2;
    const shift = (between(far, columns, place.x + out * nx, place.y + out * ny) - between(far, columns, place.x - out * nx, place.y - out * ny)) / 2;
    return Math.abs(shift) > out ? place : { x: place.x + shift * nx, y: place.y + shift * ny };
  });
}

function between(far: Float32Array, columns: number, x: number, y: number): number {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const [u, v, at] = [x - column, y - row, row * columns + column];
  return (1 - v) * ((1 - u) * far[at]! + u * far[at + 1]!) + v * ((1 - u) * far[at + columns]! + u * far[at + columns + 1]!);
}

/** Each place as a weighted mean of its neighbours (a raised cosine), twice; loose ends stay. */
function smoothed(places: readonly Point[], closed: boolean, reach: number): Point[] {
  return once(once(places, closed, reach), closed, reach);
}

function once(places: readonly Point[], closed: boolean, wanted: number): Point[] {
  const count = places.length;
  return places.map((_, i) => {
    const reach = Math.floor(closed ? Math.min(wanted, (count - 1) / 2) : Math.min(wanted, i, count - 1 - i));
    let [x, y, sum] = [0, 0, 0];
    for (let k = -reach; k <= reach; k++) {
      const weight = 1 + Math.cos((Math.PI * k) / (reach + 1));
      const place = places[(i + k + count) % count]!;
      [x, y, sum] = [x + weight * place.x, y + weight * place.y, sum + weight];
    }
    return { x: x / sum, y: y / sum };
  });
}

const placed = (places: readonly Point[], { pixel, x0, y0 }: Raster): Point[] => places.map(({ x, y }) => ({ x: x0 + x * pixel, y: y0 + y * pixel }));
