import { type Box, growBox } from '../../geometry/box.ts';
import type { Support } from '../job/holding.ts';
import type { Stock } from '../job/stock.ts';
import type { Tile, Tiling } from '../job/tiling.ts';
import { commonReach } from '../registration/links.ts';
import { type Beam, beamOf, clampedTip, type FreeOverhang, freeLength, freeOverhang, holdingForce, spanLength, spanSag } from './beam.ts';

/** The machine's bed in program coordinates, the same in every set-up. */
export type Bed = Box;

/** The bed: what the cutter's edge reaches in all set-ups together, and so far beyond it on every side, mm. */
export const bedOf = (tiling: Tiling, beyond: number): Bed => growBox(commonReach(tiling), beyond);

export type Side = 'left' | 'right' | 'front' | 'back';

/** How the sheet hangs over one side of the bed in one set-up. Millimetres. */
export interface SideOverhang {
  readonly setUp: number;
  readonly side: Side;
  readonly axis: 'x' | 'y';
  /** How far it reaches beyond the bed's edge, and how much of it lies on the bed and beyond its other edge. */
  readonly beyond: number;
  readonly onBed: number;
  /** Drawing coordinate of the bed's edge. */
  readonly edge: number;
  /** Extent of the sheet along the edge. */
  readonly across: number;
  /** The strip of sheet that bends. */
  readonly beam: Beam;
  /** Lying free, nothing under it beyond the edge. */
  readonly free: FreeOverhang;
  /** Held flat at the edge. */
  readonly clamped: number;
  /** Whether it would tip over the edge unless something held or carried it. */
  readonly tips: boolean;
}

const SIDES: readonly { readonly side: Side; readonly axis: 'x' | 'y'; readonly low: boolean }[] = [
  { side: 'left', axis: 'x', low: true }, { side: 'right', axis: 'x', low: false },
  { side: 'front', axis: 'y', low: true }, { side: 'back', axis: 'y', low: false },
];

/** Every side over which the sheet hangs, set-up by set-up. `modulus` in MPa. */
export function sideOverhangs(stock: Stock, tiles: readonly Pick<Tile, 'shift'>[], bed: Bed, modulus?: number): SideOverhang[] {
  return tiles.flatMap(({ shift }, setUp) => SIDES.flatMap((side) => hanging(stock, shift, bed, { ...side, setUp, ...(modulus !== undefined && { modulus }) })));
}

interface Hang {
  readonly side: Side;
  readonly axis: 'x' | 'y';
  readonly low: boolean;
  readonly setUp: number;
  readonly modulus?: number;
}

function hanging(stock: Stock, shift: readonly [number, number], bed: Bed, { side, axis, low, setUp, modulus }: Hang): SideOverhang[] {
  const [length, across, moved] = axis === 'x' ? [stock.width, stock.height, shift[0]] : [stock.height, stock.width, shift[1]];
  const [start, end] = axis === 'x' ? [bed.minX + moved, bed.maxX + moved] : [bed.minY + moved, bed.maxY + moved];
  const beyond = Math.min(length, low ? start : length - end);
  if (beyond <= 0) return [];
  const onBed = Math.max(0, Math.min(length, end) - Math.max(0, start));
  const beam = beamOf({ width: across, thickness: stock.thickness, density: stock.density, ...(modulus !== undefined && { modulus }) });
  return [{
    setUp, side, axis, beyond, onBed: length - beyond, edge: low ? start : end, across, beam,
    free: freeOverhang(beam, beyond, onBed), clamped: clampedTip(beam, beyond), tips: beyond > length / 2,
  }];
}

/** Distances beyond the edge, mm, for the fewest supports that keep every span and the tip from sagging by more than `sag` mm. */
export function supportDistances({ beyond, beam }: Pick<SideOverhang, 'beyond' | 'beam'>, sag: number): number[] {
  const [span, tail] = [spanLength(beam, sag), freeLength(beam, sag)];
  const count = Math.max(0, Math.ceil((beyond - tail) / span - 1e-9));
  // The tail carries as much as it may; what is left is shared evenly among the spans.
  return Array.from({ length: count }, (_, i) => ((beyond - Math.min(beyond, tail)) * (i + 1)) / count);
}

/** The supports for a side, in drawing coordinates. */
export const supportsFor = (hang: SideOverhang, sag: number): Support[] =>
  supportDistances(hang, sag).map((distance) => ({ setUp: hang.setUp, axis: hang.axis, at: hang.edge + outward(hang) * distance, length: hang.across }));

const outward = ({ side }: SideOverhang): 1 | -1 => (side === 'left' || side === 'front' ? -1 : 1);

/** Greatest sag of a side as it is carried, mm: between supports as a beam on two of them, beyond the last one as a free overhang. */
export function carriedSag(hang: SideOverhang, supports: readonly Support[]): number {
  const distances = supports.filter(({ setUp, axis }) => setUp === hang.setUp && axis === hang.axis)
    .map(({ at }) => outward(hang) * (at - hang.edge)).filter((distance) => distance > 0 && distance <= hang.beyond).sort((a, b) => a - b);
  const last = distances.at(-1);
  if (last === undefined) return hang.free.tip;
  const spans = distances.map((distance, i) => spanSag(hang.beam, distance - (distances[i - 1] ?? 0)));
  return Math.max(...spans, freeOverhang(hang.beam, hang.beyond - last, last + hang.onBed).tip);
}

/** Force a hold-down this far behind the edge, mm, must bear so that the sheet does not tip, N. */
export const tippingForce = ({ beam, beyond, onBed }: SideOverhang, behind: number): number => holdingForce(beam, beyond, onBed, behind);
